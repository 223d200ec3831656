import type { Point } from "./sheet.ts";

/** Half a tick's reach along each axis, mm on a full-size sheet. */
const HALF = 6;

/** Short strokes across both ends of a measured line, leaning as a draughtsman's do; `half` is half their reach along each axis. */
export function tickLines([a, b]: [Point, Point], half = HALF): [Point, Point][] {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const x = (b[0] - a[0]) / length;
  const y = (b[1] - a[1]) / length;
  const lean: Point = [half * (x + y), half * (y - x)];
  const tick = (at: Point): [Point, Point] => [
    [at[0] - lean[0], at[1] - lean[1]],
    [at[0] + lean[0], at[1] + lean[1]],
  ];
  return [tick(a), tick(b)];
}
