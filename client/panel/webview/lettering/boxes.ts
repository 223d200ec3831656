/**
 * Upright boxes and straights in pixels, y down, and which of many straights go through a box.
 */
import type { Point } from "../../../../server/drawing/sheet.ts";

export interface Box {
  left: number;
  right: number;
  top: number;
  foot: number;
}

/** Whether two share a place, or come nearer than `air`. */
export const meet = (a: Box, b: Box, air = 0): boolean =>
  a.left < b.right + air && b.left < a.right + air && a.top < b.foot + air && b.top < a.foot + air;

export const holds = (outer: Box, inner: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.top >= outer.top &&
  inner.foot <= outer.foot;

export const boxAround = ([x, y]: Point, [wide, high]: Point): Box => ({
  left: x - wide,
  right: x + wide,
  top: y - high,
  foot: y + high,
});

export const NOWHERE: Box = { left: Infinity, right: -Infinity, top: Infinity, foot: -Infinity };

/** The box around places. */
export function boxOf(points: Iterable<Point>): Box {
  const box = { ...NOWHERE };
  for (const [x, y] of points) {
    if (x < box.left) box.left = x;
    if (x > box.right) box.right = x;
    if (y < box.top) box.top = y;
    if (y > box.foot) box.foot = y;
  }
  return box;
}

export const union = (a: Box, b: Box): Box => ({
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
  top: Math.min(a.top, b.top),
  foot: Math.max(a.foot, b.foot),
});

/** Whether a straight goes through a box. */
export function crosses(from: Point, to: Point, { left, right, top, foot }: Box): boolean {
  let start = 0;
  let end = 1;
  for (const [a, b, low, high] of [
    [from[0], to[0], left, right],
    [from[1], to[1], top, foot],
  ] as const) {
    if (a === b) {
      if (a < low || a > high) return false;
      continue;
    }
    const [one, other] = [(low - a) / (b - a), (high - a) / (b - a)];
    start = Math.max(start, Math.min(one, other));
    end = Math.min(end, Math.max(one, other));
  }
  return start <= end;
}

/** Side of a square of the grid. */
const CELL = 32;

export interface Lines {
  put(a: Point, b: Point): void;
  /** Puts the straights through these places. */
  putAll(points: readonly Point[]): void;
  /** How many go through a box; it stops counting at `most`. */
  through(box: Box, most?: number): number;
}

/** No straights yet. */
export function createLines(): Lines {
  const cells = new Map<number, number[]>();
  const all: [Point, Point][] = [];
  /** In which round of counting each was met last. */
  const seen: number[] = [];
  let round = 0;
  const keyOf = (i: number, j: number) => (i + 4096) * 8192 + j + 4096;
  const cellOf = (at: number) => Math.floor(at / CELL);

  function put(a: Point, b: Point) {
    const index = all.push([a, b]) - 1;
    seen.push(0);
    // Square by square along the longer way: what it touches beside is within one square of it.
    const steps = Math.max(1, Math.ceil(Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])) / CELL));
    let last = Number.NaN;
    for (let k = 0; k <= steps; k++) {
      const key = keyOf(
        cellOf(a[0] + ((b[0] - a[0]) * k) / steps),
        cellOf(a[1] + ((b[1] - a[1]) * k) / steps),
      );
      if (key === last) continue;
      last = key;
      const there = cells.get(key);
      if (there) there.push(index);
      else cells.set(key, [index]);
    }
  }

  return {
    put,
    putAll(points) {
      for (let k = 1; k < points.length; k++) put(points[k - 1]!, points[k]!);
    },
    through(box, most = Infinity) {
      round++;
      let count = 0;
      for (let i = cellOf(box.left) - 1; i <= cellOf(box.right) + 1; i++) {
        for (let j = cellOf(box.top) - 1; j <= cellOf(box.foot) + 1; j++) {
          const here = cells.get(keyOf(i, j));
          if (!here) continue;
          for (const index of here) {
            if (seen[index] === round) continue;
            seen[index] = round;
            if (crosses(all[index]![0], all[index]![1], box) && ++count >= most) return count;
          }
        }
      }
      return count;
    },
  };
}
