/**
 * Simple closed outlines, as seen, y up: what people and marks are drawn from.
 */
import type { Point } from "./sheet.ts";

/** Steps of a whole circle. */
const STEPS = 32;

/** A circle. */
export const circle = ([x, y]: Point, radius: number, steps = STEPS): Point[] =>
  oval([x, y], radius, radius, 0, steps);

/** An oval of half so wide and half so high, turned to the left by an angle. */
export function oval([x, y]: Point, across: number, up: number, turned: number, steps = STEPS): Point[] {
  const [cos, sin] = [Math.cos(turned), Math.sin(turned)];
  return Array.from({ length: steps }, (_, k): Point => {
    const bearing = (2 * Math.PI * k) / steps;
    const [a, b] = [across * Math.cos(bearing), up * Math.sin(bearing)];
    return [x + a * cos - b * sin, y + a * sin + b * cos];
  });
}

/** The outline around two circles: a limb that tapers. */
export function limb(from: Point, thick: number, to: Point, thin: number): Point[] {
  const run: Point = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(...run);
  if (length <= Math.abs(thick - thin)) return thick > thin ? circle(from, thick) : circle(to, thin);
  const along = Math.atan2(run[1], run[0]);
  // The common tangents touch both circles at this bearing from the line between them.
  const touch = Math.acos((thick - thin) / length);
  const half = STEPS / 2;
  const arc = ([x, y]: Point, radius: number, start: number, end: number): Point[] =>
    Array.from({ length: half + 1 }, (_, k): Point => {
      const bearing = start + ((end - start) * k) / half;
      return [x + radius * Math.cos(bearing), y + radius * Math.sin(bearing)];
    });
  return [
    ...arc(to, thin, along - touch, along + touch),
    ...arc(from, thick, along + touch, along + 2 * Math.PI - touch),
  ];
}
