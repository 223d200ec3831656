import type { Convex, Vec3 } from "../geometry/solid.ts";
import { hullOf } from "./hull.ts";
import type { Point } from "./sheet.ts";

/**
 * What a convex solid hides from the eye: the solid swept away from the eye, a convex set behind the faces that look at the eye and
 * within the outline. All in places as seen (right, up, towards the eye).
 */
export interface Hider {
  /** Four numbers a plane: hidden places have a·right + b·up + c·towards ≤ d for all of them. */
  planes: Float64Array;
  outline: Point[];
  left: number;
  right: number;
  low: number;
  high: number;
  /** Its nearest place: nothing in front of that is hidden. */
  near: number;
}

/**
 * What counts as touching, mm. Lines on a face that looks at the eye are in front of it; lines along the outline are behind it, so that of
 * two lines that are seen as one only the nearer is drawn.
 */
export const TOUCH = 0.01;
/** Faces that look at the eye by less than this (the cosine) are seen on edge. */
export const ON_EDGE = 1e-5;

/** What a solid, given as seen, hides; undefined when it is seen as a mere line. */
export function hiderOf({ points, planes: faces }: Convex): Hider | undefined {
  const outline = hullOf(points as unknown as Point[]);
  if (outline.length < 3) return undefined;
  const planes: number[] = [];
  let left = Infinity;
  let right = -Infinity;
  let low = Infinity;
  let high = -Infinity;
  let before = outline[outline.length - 1]!;
  for (const corner of outline) {
    const x = corner[0] - before[0];
    const y = corner[1] - before[1];
    const size = Math.sqrt(x * x + y * y);
    planes.push(y / size, -x / size, 0, (y * corner[0] - x * corner[1]) / size + TOUCH);
    if (corner[0] < left) left = corner[0];
    if (corner[0] > right) right = corner[0];
    if (corner[1] < low) low = corner[1];
    if (corner[1] > high) high = corner[1];
    before = corner;
  }
  for (const { normal, offset } of faces) {
    if (normal[2] > ON_EDGE) planes.push(normal[0], normal[1], normal[2], offset - TOUCH);
  }
  let near = -Infinity;
  for (const p of points) if (p[2] > near) near = p[2];
  return { planes: Float64Array.from(planes), outline, left, right, low, high, near };
}

/** The part of the straight a → b that a solid hides, as shares of its length; undefined when it hides none. */
export function hiddenBy({ planes }: Hider, a: Vec3, b: Vec3): [from: number, to: number] | undefined {
  let from = 0;
  let to = 1;
  for (let k = 0; k < planes.length; k += 4) {
    const u = planes[k]!;
    const v = planes[k + 1]!;
    const w = planes[k + 2]!;
    const d = planes[k + 3]!;
    const start = u * a[0] + v * a[1] + w * a[2] - d;
    const end = u * b[0] + v * b[1] + w * b[2] - d;
    if (start > 0) {
      if (end >= 0) return undefined;
      const t = start / (start - end);
      if (t > from) from = t;
    } else if (end > 0) {
      const t = start / (start - end);
      if (t < to) to = t;
    }
    if (from >= to) return undefined;
  }
  return [from, to];
}
