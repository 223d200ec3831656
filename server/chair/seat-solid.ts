import { boundingBox, boxesMeet, clip, intersect, prism } from "../geometry/convex.ts";
import { flipped } from "../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../geometry/solid.ts";
import { along } from "../geometry/vec.ts";
import type { Post } from "./chair.ts";
import type { SeatOutline } from "./seat-outline.ts";

/** A slab of a seat, from one depth below the sitting surface to another, mm. */
export interface SeatLayer {
  outline: SeatOutline;
  from: number;
  to: number;
}

/** The slabs as convex pieces, cut out around the posts that pass through them. */
export function seatSolids(layers: readonly SeatLayer[], plane: Plane, posts: Iterable<Post>): Convex[] {
  let pieces = layers.flatMap((layer) => slab(layer, plane));
  for (const post of posts) {
    for (const piece of post.pieces) pieces = pieces.flatMap((slabPiece) => less(slabPiece, piece.solid));
  }
  return pieces;
}

function slab({ outline, from, to }: SeatLayer, plane: Plane): Convex[] {
  const { front, back } = outline;
  const pieces: Convex[] = [];
  for (let k = 0; k + 1 < front.length; k++) {
    const ring = [front[k]!, back[k]!, back[k + 1]!, front[k + 1]!];
    const at = (depth: number): Vec3[] => ring.map((p) => along(p, plane.normal, -depth));
    pieces.push(prism(at(to), at(from)));
  }
  return pieces;
}

/** What is left of a solid outside another, as convex pieces. */
function less(solid: Convex, tool: Convex): Convex[] {
  if (!boxesMeet(boundingBox(solid), boundingBox(tool)) || !intersect(solid, tool)) return [solid];
  const left: Convex[] = [];
  let rest: Convex | null = solid;
  for (const plane of tool.planes) {
    if (!rest) break;
    const outside: Convex | null = clip(rest, flipped(plane));
    if (outside) left.push(outside);
    rest = clip(rest, plane);
  }
  return left;
}
