import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along } from "../../geometry/vec.ts";
import type { FaceName, Post, PostPiece } from "../chair.ts";

/** The piece of a post that holds a plumb height of its centre line; the nearest one beyond its ends. */
export function pieceAt(post: Post, z: number): PostPiece {
  for (const piece of post.pieces) if (z < piece.to) return piece;
  return post.pieces[post.pieces.length - 1]!;
}

/** The point of a post's centre line at a plumb height; beyond its ends the end pieces run on. */
export function centreAt(post: Post, z: number): Vec3 {
  const piece = pieceAt(post, z);
  return along(piece.start, piece.direction, (z - piece.start[2]) / piece.direction[2]);
}

/** Unit, going up. */
export const directionAt = (post: Post, z: number): Vec3 => pieceAt(post, z).direction;

/** Outward planes of a squared post's faces at a plumb height; undefined for a turned one. */
export const facesAt = (post: Post, z: number): Record<FaceName, Plane> | undefined => pieceAt(post, z).faces;

/** Radius of a turned post at a plumb height; undefined for a squared one. */
export function radiusAt(post: Post, z: number): number | undefined {
  const piece = pieceAt(post, z);
  if (!piece.radii) return undefined;
  const share = (z - piece.from) / (piece.to - piece.from);
  return piece.radii[0] + (piece.radii[1] - piece.radii[0]) * Math.min(1, Math.max(0, share));
}
