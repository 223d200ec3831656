import { clip, intersect, prism } from "../geometry/convex.ts";
import { flipped, height, offsetBy } from "../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../geometry/solid.ts";
import { along, between } from "../geometry/vec.ts";
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
  const all = [...posts];
  return layers.flatMap((layer) => {
    let pieces = slab(layer, plane);
    for (const post of all) {
      const tool = stretchWithin(post, layer, plane);
      if (tool) pieces = pieces.flatMap((piece) => less(piece, tool));
    }
    return pieces;
  });
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

/** The stretch of a post within a slab as one straight piece, a little longer than the slab; undefined when the post ends below it. */
function stretchWithin(post: Post, layer: SeatLayer, plane: Plane): Convex | undefined {
  const low = sectionIn(post, offsetBy(plane, -layer.to));
  if (!low) return undefined;
  const high = sectionIn(post, offsetBy(plane, -layer.from));
  if (high) return prism(extend(high, low), extend(low, high));
  // It ends within the slab: what it has there is notched right through.
  const up = low.map((p) => along(p, plane.normal, layer.to - layer.from));
  return height(plane, post.top) > -layer.to + 1e-3 ? prism(extend(up, low), extend(low, up)) : undefined;
}

const extend = (from: readonly Vec3[], to: readonly Vec3[]): Vec3[] =>
  from.map((p, k) => between(p, to[k]!, 1.05));

/** The corners of a post's section where its corner lines cross a plane; undefined when the post does not cross it. */
function sectionIn(post: Post, plane: Plane): Vec3[] | undefined {
  for (const { solid } of post.pieces) {
    const count = solid.points.length / 2;
    const ring: Vec3[] = [];
    for (let k = 0; k < count; k++) {
      const a = solid.points[k]!;
      const b = solid.points[count + k]!;
      const [below, above] = [height(plane, a), height(plane, b)];
      if (below > 1e-9 || above < -1e-9 || above - below < 1e-9) break;
      ring.push(between(a, b, below / (below - above)));
    }
    if (ring.length === count && count >= 3) return ring;
  }
  return straddled(post, plane);
}

/** The same where the plane crosses from one piece to the next within the section: the piece nearest the middle runs on. */
function straddled(post: Post, plane: Plane): Vec3[] | undefined {
  const piece = post.pieces.find((p) => height(plane, p.start) <= 0 && height(plane, p.end) > 0);
  if (!piece) return undefined;
  const count = piece.solid.points.length / 2;
  return Array.from({ length: count }, (_, k) => {
    const a = piece.solid.points[k]!;
    const b = piece.solid.points[count + k]!;
    const [below, above] = [height(plane, a), height(plane, b)];
    return between(a, b, below / (below - above));
  });
}

/** What is left of a solid outside another, as convex pieces. */
function less(solid: Convex, tool: Convex): Convex[] {
  if (!intersect(solid, tool)) return [solid];
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
