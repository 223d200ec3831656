import type { Point } from "./sheet.ts";

/** Corners nearer to the straight than this are left out, mm. */
const STRAIGHT = 1e-6;

/** The convex outline of some points, anticlockwise with y up; fewer than three when they lie in line. */
export function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const hull: Point[] = [];
  const chain = (from: number, to: number, step: 1 | -1, least: number) => {
    for (let k = from; k !== to; k += step) {
      const p = sorted[k]!;
      while (hull.length > least && turn(hull[hull.length - 2]!, hull[hull.length - 1]!, p) <= 0) hull.pop();
      hull.push(p);
    }
  };
  chain(0, sorted.length, 1, 1);
  chain(sorted.length - 2, -1, -1, hull.length);
  hull.pop();
  return hull;
}

/** How far p lies to the left of the line a → b, mm, less what counts as straight. */
function turn(a: Point, b: Point, p: Point): number {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const area = x * (p[1] - a[1]) - y * (p[0] - a[0]);
  return area - STRAIGHT * (Math.abs(x) + Math.abs(y));
}
