import type { Hider } from "./hider.ts";
import type { Point } from "./sheet.ts";

type Line = readonly [Point, Point];

/** What counts as touching, mm. */
const NEAR = 0.02;

/**
 * Closed outlines of what some convex solids cover together, as seen; holes are filled. Where the outlines cannot be joined up, those
 * of the solids one by one.
 */
export function outlinesOf(hiders: readonly Hider[]): Point[][] {
  const loops = joined(hiders.flatMap((_, index) => outerLines(hiders, index)));
  const outer = loops?.filter((loop) => area(loop) > 0);
  return outer?.length ? outer : hiders.map(({ outline }) => outline);
}

/** The parts of one solid's outline that no other covers. */
function outerLines(hiders: readonly Hider[], own: number): Line[] {
  const { outline } = hiders[own]!;
  const lines: Line[] = [];
  for (const [k, a] of outline.entries()) {
    const b = outline[(k + 1) % outline.length]!;
    const covered: [number, number][] = [];
    for (const [index, other] of hiders.entries()) {
      if (index === own || apart(other, a, b)) continue;
      // Of two outlines that run along each other the earlier one's stays.
      const part = coveredBy(other, a, b, index < own ? -NEAR : NEAR);
      if (part) covered.push(part);
    }
    lines.push(...rest(a, b, covered));
  }
  return lines;
}

function apart(other: Hider, a: Point, b: Point): boolean {
  return (
    other.left > Math.max(a[0], b[0]) + NEAR ||
    other.right < Math.min(a[0], b[0]) - NEAR ||
    other.low > Math.max(a[1], b[1]) + NEAR ||
    other.high < Math.min(a[1], b[1]) - NEAR
  );
}

/** The part of a → b within an outline drawn in by `by`; for lines that run along it, within it drawn out. */
function coveredBy({ outline }: Hider, a: Point, b: Point, by: number): [number, number] | undefined {
  let from = 0;
  let to = 1;
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
  let before = outline[outline.length - 1]!;
  for (const corner of outline) {
    const x = corner[0] - before[0];
    const y = corner[1] - before[1];
    const size = Math.hypot(x, y);
    const outside = (p: Point) => (y * (p[0] - before[0]) - x * (p[1] - before[1])) / size;
    const [start, end] = [outside(a), outside(b)];
    before = corner;
    const alongIt = Math.abs(start) < NEAR && Math.abs(end) < NEAR;
    if (alongIt) {
      // Side by side, back to back, the line is a seam; the same way round, the earlier solid keeps it.
      const against = x * (b[0] - a[0]) + y * (b[1] - a[1]) < 0;
      if (against || by < 0) continue;
      return undefined;
    }
    if (start > 0 && end > 0) return undefined;
    if (start > 0) from = Math.max(from, start / (start - end));
    else if (end > 0) to = Math.min(to, start / (start - end));
  }
  return (to - from) * run > NEAR ? [from, to] : undefined;
}

function rest(a: Point, b: Point, covered: [number, number][]): Line[] {
  const at = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const lines: Line[] = [];
  let from = 0;
  for (const [start, end] of covered.sort((p, q) => p[0] - q[0])) {
    if ((start - from) * run > NEAR) lines.push([at(from), at(start)]);
    if (end > from) from = end;
  }
  if ((1 - from) * run > NEAR) lines.push([at(from), b]);
  return lines;
}

/** Lines joined end to start into closed outlines; undefined when one stays open. */
function joined(lines: readonly Line[]): Point[][] | undefined {
  const left = new Set(lines);
  const loops: Point[][] = [];
  for (const first of lines) {
    if (!left.delete(first)) continue;
    const loop: Point[] = [first[0]];
    let end = first[1];
    while (!meet(end, first[0])) {
      loop.push(end);
      const next = nearest(end, left);
      if (!next) return undefined;
      left.delete(next);
      end = next[1];
    }
    loops.push(loop);
  }
  return loops;
}

const meet = (p: Point, q: Point): boolean =>
  Math.abs(p[0] - q[0]) < 3 * NEAR && Math.abs(p[1] - q[1]) < 3 * NEAR;

function nearest(end: Point, lines: Iterable<Line>): Line | undefined {
  for (const line of lines) if (meet(line[0], end)) return line;
  return undefined;
}

/** Positive when anticlockwise with y up. */
function area(loop: readonly Point[]): number {
  let sum = 0;
  let a = loop[loop.length - 1]!;
  for (const b of loop) {
    sum += a[0] * b[1] - a[1] * b[0];
    a = b;
  }
  return sum / 2;
}
