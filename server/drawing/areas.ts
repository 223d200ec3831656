import { type Hider, TOUCH } from "./hider.ts";
import type { Point } from "./sheet.ts";

type Segment = readonly [Point, Point];

/** What counts as touching, mm. */
const NEAR = 0.02;
/** Half of it: how far aside of a line it is asked what covers it. */
const ASIDE = NEAR / 2;

/**
 * Closed outlines of what some convex solids cover together, as seen; holes are filled. Where the outlines cannot be joined up, those
 * of the solids one by one.
 */
export function outlinesOf(hiders: readonly Hider[]): Point[][] {
  const outer = outermost(hiders);
  if (outer.length === 1) return [outer[0]!.outline];
  const loops = joined(outer.flatMap((_, index) => outerLines(outer, index)))?.filter(
    (loop) => area(loop) > 0,
  );
  return loops?.length ? loops : outer.map(({ outline }) => outline);
}

/** The solids whose outlines do not lie within another's. */
function outermost(hiders: readonly Hider[]): Hider[] {
  const bySize = [...hiders].sort((a, b) => boxSize(b) - boxSize(a));
  const kept: Hider[] = [];
  for (const hider of bySize) {
    if (!kept.some((other) => holds(other, hider))) kept.push(hider);
  }
  return kept;
}

const boxSize = ({ left, right, low, high }: Hider): number => (right - left) * (high - low);

function holds(outer: Hider, { left, right, low, high, outline }: Hider): boolean {
  if (left < outer.left - NEAR || right > outer.right + NEAR) return false;
  if (low < outer.low - NEAR || high > outer.high + NEAR) return false;
  return outline.every((p) => {
    for (let k = 0; k < outer.outline.length; k++) if (outside(outer, k, p) > ASIDE) return false;
    return true;
  });
}

/** How far a place is outside the k-th side of an outline, mm. */
function outside({ planes }: Hider, k: number, p: Point): number {
  return planes[4 * k]! * p[0] + planes[4 * k + 1]! * p[1] - planes[4 * k + 3]! + TOUCH;
}

/** The parts of one solid's outline that no other covers; of outlines that run along each other the earlier one's stays. */
function outerLines(hiders: readonly Hider[], own: number): Segment[] {
  const hider = hiders[own]!;
  const { outline } = hider;
  const lines: Segment[] = [];
  for (let k = 0; k < outline.length; k++) {
    const b = outline[k]!;
    const a = outline[(k + outline.length - 1) % outline.length]!;
    const out: Point = [hider.planes[4 * k]! * ASIDE, hider.planes[4 * k + 1]! * ASIDE];
    const covered: [number, number][] = [];
    for (let index = 0; index < hiders.length; index++) {
      const other = hiders[index]!;
      if (index === own || apart(other, a, b)) continue;
      const beyond = coveredBy(other, [a[0] + out[0], a[1] + out[1]], [b[0] + out[0], b[1] + out[1]]);
      if (beyond) covered.push(beyond);
      if (index > own) continue;
      const within = coveredBy(other, [a[0] - out[0], a[1] - out[1]], [b[0] - out[0], b[1] - out[1]]);
      if (within) covered.push(within);
    }
    addRest(a, b, covered, lines);
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

/** The part of a → b within an outline, as shares of its length. */
function coveredBy(hider: Hider, a: Point, b: Point): [number, number] | undefined {
  let from = 0;
  let to = 1;
  for (let k = 0; k < hider.outline.length; k++) {
    const start = outside(hider, k, a);
    const end = outside(hider, k, b);
    if (start > 0) {
      if (end >= 0) return undefined;
      from = Math.max(from, start / (start - end));
    } else if (end > 0) to = Math.min(to, start / (start - end));
    if (from >= to) return undefined;
  }
  return [from, to];
}

function addRest(a: Point, b: Point, covered: [number, number][], lines: Segment[]): void {
  const at = (t: number): Point =>
    t === 0 ? a : t === 1 ? b : [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  const run = Math.hypot(b[0] - a[0], b[1] - a[1]);
  let from = 0;
  for (const [start, end] of covered.sort((p, q) => p[0] - q[0])) {
    if ((start - from) * run > NEAR) lines.push([at(from), at(start)]);
    if (end > from) from = end;
  }
  if ((1 - from) * run > NEAR) lines.push([at(from), b]);
}

/** Lines joined end to start into closed outlines; undefined when one stays open. */
function joined(lines: readonly Segment[]): Point[][] | undefined {
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

function nearest(end: Point, lines: Iterable<Segment>): Segment | undefined {
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
