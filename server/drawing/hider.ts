import type { Convex, Motion } from "../geometry/solid.ts";
import { hullOf } from "./hull.ts";
import type { Point } from "./sheet.ts";

/**
 * What a convex solid hides from the eye: the solid swept away from the eye, a convex set behind the faces that look at the eye and
 * within the outline. All in places as seen (right, up, towards the eye).
 */
export interface Hider {
  /**
   * Four numbers a plane: hidden places have a·right + b·up + c·towards ≤ d for all of them. First the sides of the outline, side k
   * ending at its corner k, then the faces.
   */
  planes: Float64Array;
  /** Anticlockwise. */
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

/** Corners are put on a grid this fine, parts of a millimetre, so that those that should be seen as one are. */
const GRID = 2 ** 20;

let xs = new Float64Array(64);
let ys = new Float64Array(64);

/** What a solid hides, seen as `into` carries it; undefined when it is seen as a mere line. */
export function hiderOf(solid: Convex, into: Motion): Hider | undefined {
  const near = project(solid, into);
  const hull = hullOf(xs, ys, solid.points.length);
  if (hull.length < 3) return undefined;
  const towards = into.rotation[2];
  let faces = 0;
  for (const { normal } of solid.planes) if (cosine(normal, towards) > ON_EDGE) faces++;
  const planes = new Float64Array(4 * (hull.length + faces));
  const outline: Point[] = [];
  const hider = { planes, outline, left: Infinity, right: -Infinity, low: Infinity, high: -Infinity, near };
  let before = hull[hull.length - 1]!;
  let at = 0;
  for (const corner of hull) {
    const u = xs[corner]!;
    const v = ys[corner]!;
    const x = u - xs[before]!;
    const y = v - ys[before]!;
    const size = Math.sqrt(x * x + y * y);
    planes[at] = y / size;
    planes[at + 1] = -x / size;
    planes[at + 3] = (y * u - x * v) / size + TOUCH;
    at += 4;
    outline.push([u, v]);
    if (u < hider.left) hider.left = u;
    if (u > hider.right) hider.right = u;
    if (v < hider.low) hider.low = v;
    if (v > hider.high) hider.high = v;
    before = corner;
  }
  for (const { normal, offset } of solid.planes) {
    if (cosine(normal, towards) <= ON_EDGE) continue;
    const u = cosine(normal, into.rotation[0]);
    const v = cosine(normal, into.rotation[1]);
    const w = cosine(normal, towards);
    planes[at] = u;
    planes[at + 1] = v;
    planes[at + 2] = w;
    planes[at + 3] = offset + u * into.shift[0] + v * into.shift[1] + w * into.shift[2] - TOUCH;
    at += 4;
  }
  return hider;
}

/** Puts the solid's corners as seen into `xs` and `ys`; gives the nearest. */
function project({ points }: Convex, { rotation: [right, up, towards], shift }: Motion): number {
  if (points.length > xs.length) {
    xs = new Float64Array(points.length * 2);
    ys = new Float64Array(points.length * 2);
  }
  let near = -Infinity;
  for (let k = 0; k < points.length; k++) {
    const p = points[k]!;
    xs[k] = Math.round((cosine(right, p) + shift[0]) * GRID) / GRID;
    ys[k] = Math.round((cosine(up, p) + shift[1]) * GRID) / GRID;
    const w = cosine(towards, p) + shift[2];
    if (w > near) near = w;
  }
  return near;
}

type Triple = readonly [number, number, number];

const cosine = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** The part of the straight a → b (as seen) that a solid hides, as shares of its length; undefined when it hides none. */
export function hiddenBy({ planes }: Hider, a: Triple, b: Triple): [from: number, to: number] | undefined {
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

/** What the rounding of places may lift off a face that they lie on, mm. */
const ROUNDED = 0.0005;

/** Whether a place is behind what a solid shows of itself, however near. */
export function liesBehind({ planes, outline }: Hider, p: Triple): boolean {
  const sides = 4 * outline.length;
  for (let k = 0; k < planes.length; k += 4) {
    const beyond = planes[k]! * p[0] + planes[k + 1]! * p[1] + planes[k + 2]! * p[2] - planes[k + 3]!;
    if (beyond > (k < sides ? -TOUCH : TOUCH) - ROUNDED) return false;
  }
  return true;
}

/** Whether a place lies beside what a solid shows of itself, if only by as much as counts as touching. */
export function liesBeside({ planes, outline }: Hider, x: number, y: number): boolean {
  for (let k = 0; k < 4 * outline.length; k += 4)
    if (planes[k]! * x + planes[k + 1]! * y - planes[k + 3]! > ROUNDED - TOUCH) return true;
  return false;
}
