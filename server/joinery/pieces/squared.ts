/**
 * Squared stuff of any kind, seen the same way: straight stretches with four faces, in the order in which the stick is rolled over.
 */
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, negate, scale } from "../../geometry/vec.ts";

/** A straight stretch between two cuts. */
export interface Stretch {
  solid: Convex;
  /** Along the stick, in the order of the stretches. */
  direction: Vec3;
  /** Its four faces, looking out. */
  planes: readonly [Plane, Plane, Plane, Plane];
  /** Part of a curve. */
  curved: boolean;
  /** On its centre line, at its start. */
  start: Vec3;
}

export interface SquaredStick {
  stretches: Stretch[];
  /** Names of the faces, each the next one down the page when the stick is rolled away. */
  names: readonly [string, string, string, string];
  /** Which face is the face side and which the face edge. */
  side: number;
  edge: number;
}

/** The faces a stick is gauged from on one of its faces: the face edge on its two sides, the face side on its two edges. */
export const gaugeOf = (stick: SquaredStick, face: number): number =>
  (face - stick.side) % 2 === 0 ? stick.edge : stick.side;

/** Normals in rolling order from the first face: each next one lies down the page. */
export function rolled(normal: Vec3, direction: Vec3): [Vec3, Vec3, Vec3, Vec3] {
  const next = negate(cross(normal, direction));
  return [normal, next, negate(normal), negate(next)];
}

/** The plane of a solid that looks most along a direction. */
export function planeTowards(solid: Convex, look: Vec3): Plane {
  return solid.planes.reduce((best, plane) =>
    dot(plane.normal, look) > dot(best.normal, look) ? plane : best,
  );
}

/**
 * The side of a stretch that looks along a direction, ends apart. Where a slanting end has cut all of a side away, the plane through the
 * corner that reaches farthest stands for it.
 */
export function sideTowards(solid: Convex, look: Vec3, direction: Vec3): Plane {
  const sides = solid.planes.filter(
    ({ normal }) => dot(normal, look) > Math.SQRT1_2 && Math.abs(dot(normal, direction)) < Math.SQRT1_2,
  );
  const [first, ...rest] = sides;
  if (!first) return { normal: look, offset: Math.max(...solid.points.map((p) => dot(p, look))) };
  return rest.reduce(
    (best, plane) => (dot(plane.normal, look) > dot(best.normal, look) ? plane : best),
    first,
  );
}

/** The corners of the solid's side in a plane; undefined when it has none there. */
export function sideIn(solid: Convex, plane: Plane): Vec3[] | undefined {
  let best = -1;
  let most = 1 - 1e-9;
  for (const [k, other] of solid.planes.entries()) {
    const same = dot(other.normal, plane.normal);
    if (same > most && Math.abs(other.offset - plane.offset) < 1e-3) {
      most = same;
      best = k;
    }
  }
  return best < 0 ? undefined : solid.faces[best]!.map((k) => solid.points[k]!);
}

/** The middle of some points. */
export function middleOf(points: readonly Vec3[]): Vec3 {
  return scale(
    points.reduce((sum, p) => along(sum, p, 1), [0, 0, 0] as Vec3),
    1 / points.length,
  );
}
