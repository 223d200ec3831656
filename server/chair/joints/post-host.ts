import { height, lineMeets, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { angleBetween, dot, norm, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { FaceName, Post, PostPiece } from "../chair.ts";
import { facePlane } from "../posts/post-frame.ts";
import { centreAt, directionAt, pieceAt, radiusAt } from "../posts/post-query.ts";
import { fallBackOf, type Host, type ShoulderCheck } from "./host.ts";
import { squaredWood, turnedWood, type Wood } from "./wood.ts";

/** Faces that turn by less than this are flat enough for a shoulder, radians. */
const FLAT_ENOUGH = (0.1 * Math.PI) / 180;

/** A post as a host; where it is met is told by the height. */
export function postHost(post: Post): Host {
  return {
    entered: { kind: "post", name: post.name },
    pieces: post.body.pieces,
    wood: (near) => postWood(post, near),
    centre: (z) => centreAt(post, z),
    chord: (top, bottom) => chordOf(post, top, bottom),
    face: (look, around, but) => faceOf(pieceAround(post, around), look, around, but),
    check: (corners, shoulder) => checkPost(post, corners, shoulder),
    fallBack: (half, around) => {
      const piece = pieceAround(post, around);
      return piece.radii ? fallBackOf(radiusNear(piece, around), half) : 0;
    },
  };
}

function chordOf(post: Post, top: number, bottom: number): Vec3 {
  return Math.abs(top - bottom) < 1e-9
    ? pieceAt(post, top).direction
    : unit(sub(centreAt(post, Math.max(top, bottom)), centreAt(post, Math.min(top, bottom))));
}

/** The piece of a post a point stands beside: its foot on the centre line decides, not its own height. */
function pieceAround(post: Post, point: Vec3): PostPiece {
  let z = point[2];
  let piece = pieceAt(post, z);
  for (let round = 0; round < 4; round++) {
    z = piece.start[2] + dot(sub(point, piece.start), piece.direction) * piece.direction[2];
    const next = pieceAt(post, z);
    if (next === piece) break;
    piece = next;
  }
  return piece;
}

const FACES: FaceName[] = ["front", "back", "left", "right"];

function faceOf(piece: PostPiece, look: Vec3, around: Vec3, but?: Plane): Plane {
  if (piece.faces) {
    let best: Plane | undefined;
    for (const name of FACES) {
      const face = piece.faces[name];
      if (but && (face === but || dot(face.normal, but.normal) > 0.999)) continue;
      if (!best || dot(face.normal, look) > dot(best.normal, look)) best = face;
    }
    return best!;
  }
  return tangentPlane(piece, look, around);
}

/** The plane that touches a turned piece along the line that looks most along `look`. */
function tangentPlane(piece: PostPiece, look: Vec3, around: Vec3): Plane {
  const d = piece.direction;
  const normal = unit(squareTo(look, d));
  const length = norm(sub(piece.end, piece.start));
  if (norm(normal) < 0.5) return planeAt(around, look);
  const [start, end] = piece.radii!;
  return facePlane(normal, { direction: d, left: normal, back: normal }, piece.start, length, { start, end });
}

function radiusNear(piece: PostPiece, point: Vec3): number {
  const share = dot(sub(point, piece.start), piece.direction) / norm(sub(piece.end, piece.start));
  const [start, end] = piece.radii!;
  return start + (end - start) * Math.min(1, Math.max(0, share));
}

function checkPost(post: Post, corners: readonly Vec3[], shoulder: Plane): ShoulderCheck {
  const heights = corners.map((c) => c[2]);
  const low = Math.min(...heights);
  const high = Math.max(...heights);
  const foot = post.pieces[0]!.solid;
  const top = post.pieces[post.pieces.length - 1]!.solid;
  if (low > post.top[2] + 1e-6 && corners.every((c) => height(top.planes[1]!, c) > 1e-6)) {
    return { off: 0, gap: low - post.top[2] };
  }
  if (high < post.foot[2] - 1e-6 && corners.every((c) => height(foot.planes[0]!, c) > 1e-6)) {
    return { off: 0, gap: post.foot[2] - high };
  }
  const found: ShoulderCheck = { off: Math.max(high - topAt(post, corners), bottomAt(post, corners) - low) };
  for (const corner of corners) {
    const piece = pieceAround(post, corner);
    if (piece.faces) {
      for (const face of Object.values(piece.faces)) {
        if (dot(face.normal, shoulder.normal) < 0.7) found.off = Math.max(found.off, height(face, corner));
      }
    } else {
      const across = squareTo(squareTo(sub(corner, piece.start), piece.direction), shoulder.normal);
      found.off = Math.max(found.off, norm(across) - radiusNear(piece, corner));
    }
  }
  return { ...found, ...unevenness(post, corners, shoulder) };
}

/** Heights of the post's own ends, each tested where its cut is level enough to have one. */
const topAt = (post: Post, corners: readonly Vec3[]): number => {
  const plane = post.pieces[post.pieces.length - 1]!.solid.planes[1]!;
  return Math.min(...corners.map((c) => lineMeets(plane, c, [0, 0, 1])?.[2] ?? Infinity));
};
const bottomAt = (post: Post, corners: readonly Vec3[]): number => {
  const plane = post.pieces[0]!.solid.planes[0]!;
  return Math.max(...corners.map((c) => lineMeets(plane, c, [0, 0, 1])?.[2] ?? -Infinity));
};

/** Whether the face is flat over the shoulder's reach along the post. */
function unevenness(
  post: Post,
  corners: readonly Vec3[],
  shoulder: Plane,
): Pick<ShoulderCheck, "curve" | "knee"> {
  const pieces = corners.map((corner) => post.pieces.indexOf(pieceAround(post, corner)));
  const first = Math.min(...pieces);
  const last = Math.max(...pieces);
  for (let k = first; k <= last; k++) {
    const piece = post.pieces[k]!;
    // Turned work has no flat for a shoulder anyway: only a turn of its axis is a knee.
    const way = (each: PostPiece) =>
      each.faces ? faceOf(each, shoulder.normal, each.start).normal : each.direction;
    const turn = piece.faces
      ? angleBetween(way(piece), shoulder.normal)
      : angleBetween(piece.direction, post.pieces[first]!.direction);
    if (turn <= FLAT_ENOUGH) continue;
    // Another curve that only touches the shoulder's reach is none of its business.
    const bent = post.pieces.slice(first, last + 1).filter((p) => p.curved);
    const nearest = bent.sort((a, b) => away(post, a, k) - away(post, b, k))[0];
    if (nearest) {
      const [from, to] = curveAround(post, nearest);
      return { curve: { from, to } };
    }
    const below = post.pieces[Math.max(first, k - 1)]!;
    const at = angleBetween(way(below), way(piece)) > FLAT_ENOUGH ? piece.from : piece.to;
    return { knee: { height: at, turn } };
  }
  return {};
}

const away = (post: Post, piece: PostPiece, at: number): number => Math.abs(post.pieces.indexOf(piece) - at);

/** The heights between which the curve that holds a piece runs. */
function curveAround(post: Post, piece: PostPiece): [number, number] {
  let first = post.pieces.indexOf(piece);
  let last = first;
  while (first > 0 && post.pieces[first - 1]!.curved) first--;
  while (last + 1 < post.pieces.length && post.pieces[last + 1]!.curved) last++;
  return [post.pieces[first]!.from, post.pieces[last]!.to];
}

/** A post's wood about a point. */
function postWood(post: Post, near: Vec3): Wood {
  const grain = directionAt(post, near[2]);
  const radius = radiusAt(post, near[2]);
  if (radius === undefined) return squaredWood(post.body.pieces, grain);
  return turnedWood(grain, { axis: pieceAt(post, near[2]).start, radius });
}
