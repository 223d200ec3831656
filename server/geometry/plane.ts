import type { Plane, Vec3 } from "./solid.ts";
import { along, cross, dot, negate, norm, sub, unit } from "./vec.ts";

/** The plane through a point with that normal (made unit). */
export function planeAt(point: Vec3, normal: Vec3): Plane {
  const n = unit(normal);
  return { normal: n, offset: dot(n, point) };
}

/** The plane through three points, normal by the right-hand rule a → b → c; undefined when they lie in line. */
export function planeThrough(a: Vec3, b: Vec3, c: Vec3): Plane | undefined {
  const n = cross(sub(b, a), sub(c, a));
  return norm(n) > 1e-12 ? planeAt(a, n) : undefined;
}

/** The level plane at that height, looking up. */
export const levelAt = (height: number): Plane => ({ normal: [0, 0, 1], offset: height });

/** How far a point is outside the plane, mm; negative inside. */
export const height = (plane: Plane, point: Vec3): number => dot(plane.normal, point) - plane.offset;

/** The plane moved `by` mm along its normal. */
export const offsetBy = (plane: Plane, by: number): Plane => ({
  normal: plane.normal,
  offset: plane.offset + by,
});

/** The same plane looking the other way. */
export const flipped = (plane: Plane): Plane => ({ normal: negate(plane.normal), offset: -plane.offset });

/** The foot of the perpendicular from a point. */
export const dropOnto = (plane: Plane, point: Vec3): Vec3 =>
  along(point, plane.normal, -height(plane, point));

/** Where the line from `point` along `direction` meets the plane; undefined when it runs along it. */
export function lineMeets(plane: Plane, point: Vec3, direction: Vec3): Vec3 | undefined {
  const rate = dot(plane.normal, direction);
  if (Math.abs(rate) < 1e-12 * norm(direction)) return undefined;
  return along(point, direction, -height(plane, point) / rate);
}

/** The point where three planes meet; undefined when two of them are parallel or all hold one line (to 1e-12). */
export function threePlanes(a: Plane, b: Plane, c: Plane): Vec3 | undefined {
  const bc = cross(b.normal, c.normal);
  const det = dot(a.normal, bc);
  if (Math.abs(det) < 1e-12) return undefined;
  const ca = cross(c.normal, a.normal);
  const ab = cross(a.normal, b.normal);
  const at = (i: 0 | 1 | 2) => (a.offset * bc[i] + b.offset * ca[i] + c.offset * ab[i]) / det;
  return [at(0), at(1), at(2)];
}

/** The line two planes share: a point on it (nearest the origin) and its unit direction; undefined when they are parallel. */
export function twoPlanes(a: Plane, b: Plane): { point: Vec3; direction: Vec3 } | undefined {
  const d = cross(a.normal, b.normal);
  if (norm(d) < 1e-12) return undefined;
  const direction = unit(d);
  const point = threePlanes(a, b, { normal: direction, offset: 0 });
  return point && { point, direction };
}
