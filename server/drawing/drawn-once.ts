import type { Steps } from "../../grammar/steps.ts";
import type { SeenLine } from "./hidden-lines.ts";
import { type PictureGrid, pictureGrid } from "./picture-grid.ts";
import type { Point } from "./sheet.ts";

/** Lines nearer than this are seen as one, mm. */
const SAME = 0.02;
/** Numbers kept for each line: its start and its unit run, its length. */
const STRIDE = 5;

/** Lines looked at between two rests. */
const BATCH = 200;

/** The lines without what an earlier one, or a heavier one, already covers. */
export function* drawnOnce(lines: readonly SeenLine[]): Steps<SeenLine[]> {
  const kept: SeenLine[] = [];
  const facts: Facts = {
    at: new Float64Array(STRIDE * (lines.length + 16)),
    count: 0,
    grid: pictureGrid(lines.length, boxOf(lines)),
  };
  for (const is of ["outline", "edge"] as const) {
    for (const [index, line] of lines.entries()) {
      if (line.is === is) keep(line, 0, kept, facts);
      if (index % BATCH === BATCH - 1) yield;
    }
  }
  return kept;
}

/** Keeps what is left of a line beside those kept so far, from the given one on. */
function keep(line: SeenLine, from: number, kept: SeenLine[], facts: Facts): void {
  const covering = lyingOn(facts, line.a, line.b, from);
  if (covering === undefined) {
    kept.push(line);
    note(facts, line.a, line.b);
    return;
  }
  for (const [a, b] of beside(line, kept[covering]!)) keep({ ...line, a, b }, covering + 1, kept, facts);
}

/** What is left of a line beside another that lies on it. */
function beside(line: SeenLine, { a, b }: SeenLine): [Point, Point][] {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const size = Math.sqrt(x * x + y * y);
  const along = (p: Point) => (x * (p[0] - a[0]) + y * (p[1] - a[1])) / size;
  const [from, to] = [along(line.a), along(line.b)];
  const [first, last] = from < to ? [line.a, line.b] : [line.b, line.a];
  const left: [Point, Point][] = [];
  if (Math.min(from, to) < -SAME) left.push([first, a]);
  if (Math.max(from, to) > size + SAME) left.push([b, last]);
  return left;
}

/** Figures of the lines kept so far, side by side so that looking through them is fast, and where they lie. */
interface Facts {
  at: Float64Array;
  count: number;
  grid: PictureGrid;
}

function boxOf(lines: readonly SeenLine[]) {
  const box = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  for (const { a, b } of lines) {
    box.left = Math.min(box.left, a[0], b[0]);
    box.right = Math.max(box.right, a[0], b[0]);
    box.low = Math.min(box.low, a[1], b[1]);
    box.high = Math.max(box.high, a[1], b[1]);
  }
  return box;
}

function note(facts: Facts, a: Point, b: Point): void {
  const start = facts.count * STRIDE;
  if (start + STRIDE > facts.at.length) {
    const larger = new Float64Array(facts.at.length * 2);
    larger.set(facts.at);
    facts.at = larger;
  }
  const { at } = facts;
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const size = Math.sqrt(x * x + y * y);
  at[start] = a[0];
  at[start + 1] = a[1];
  at[start + 2] = x / size;
  at[start + 3] = y / size;
  at[start + 4] = size;
  facts.count++;
  facts.grid.put(a, b);
}

/** The first line, from the given one on, that lies along a part of a → b. */
function lyingOn({ at, grid }: Facts, a: Point, b: Point, from: number): number | undefined {
  let first: number | undefined;
  for (const k of grid.near(a, b, SAME)) {
    if (k < from || (first !== undefined && k > first)) continue;
    const i = k * STRIDE;
    const x = at[i + 2]!;
    const y = at[i + 3]!;
    const ax = a[0] - at[i]!;
    const ay = a[1] - at[i + 1]!;
    if (Math.abs(x * ay - y * ax) > SAME) continue;
    const bx = b[0] - at[i]!;
    const by = b[1] - at[i + 1]!;
    if (Math.abs(x * by - y * bx) > SAME) continue;
    const start = x * ax + y * ay;
    const end = x * bx + y * by;
    if (Math.min(start, end) < at[i + 4]! - SAME && Math.max(start, end) > SAME) first = k;
  }
  return first;
}
