import { finish, type Steps } from "../../grammar/steps.ts";
import { drawnOnce } from "./drawn-once.ts";
import type { SeenLine } from "./hidden-lines.ts";
import type { Point } from "./sheet.ts";

/** Straights of one body and kind, joined end to end. */
interface Chain {
  body: number;
  is: SeenLine["is"];
  points: Point[];
}

/** Ends nearer than this meet, mm. */
const MEET = 1e-3;
/** A corner nearer than this to the straight past it is left out, mm. */
const STRAIGHT = 2e-3;

/** Lines drawn once each and joined where just two of the same body and kind meet, so that a curve is one polyline. */
export const chainsOf = (lines: readonly SeenLine[]): Chain[] => finish(chainSteps(lines));

/** The same, resting now and then. */
export function* chainSteps(lines: readonly SeenLine[]): Steps<Chain[]> {
  const groups = new Map<number, SeenLine[]>();
  for (const line of yield* drawnOnce(lines)) {
    const key = 2 * line.body + Number(line.is === "edge");
    const group = groups.get(key);
    if (group) group.push(line);
    else groups.set(key, [line]);
  }
  yield;
  return [...groups.values()].flatMap((group) => chainsOfGroup(group));
}

function chainsOfGroup(lines: readonly SeenLine[]): Chain[] {
  const meeting = new Map<number, number[]>();
  for (const [index, { a, b }] of lines.entries()) {
    for (const end of [a, b]) {
      const key = keyOf(end);
      const there = meeting.get(key);
      if (there) there.push(index);
      else meeting.set(key, [index]);
    }
  }
  const used = new Set<number>();
  const next = (from: Point, index: number): number | undefined => {
    const there = meeting.get(keyOf(from))!;
    if (there.length !== 2) return undefined;
    const other = there[0] === index ? there[1]! : there[0]!;
    return used.has(other) ? undefined : other;
  };
  const follow = (start: Point, index: number): Point[] => {
    const points: Point[] = [];
    let end = start;
    for (let at = next(end, index); at !== undefined; at = next(end, at)) {
      used.add(at);
      const { a, b } = lines[at]!;
      end = keyOf(a) === keyOf(end) ? b : a;
      points.push(end);
    }
    return points;
  };
  const chains: Chain[] = [];
  for (const [index, { body, is, a, b }] of lines.entries()) {
    if (used.has(index)) continue;
    used.add(index);
    const ahead = follow(b, index);
    const behind = follow(a, index).reverse();
    chains.push({ body, is, points: withoutStraights([...behind, a, b, ...ahead]) });
  }
  return chains;
}

/** One whole number for a place: places up to 16 m out, to a thousandth. */
const keyOf = (p: Point): number => Math.round(p[0] / MEET) * 2 ** 25 + Math.round(p[1] / MEET);

/** The polyline without corners that lie on the straight between their neighbours. */
function withoutStraights(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const [index, p] of points.entries()) {
    const a = kept[kept.length - 1];
    const b = points[index + 1];
    if (!a || !b || !liesBetween(p, a, b)) kept.push(p);
  }
  return kept;
}

function liesBetween(p: Point, a: Point, b: Point): boolean {
  const x = b[0] - a[0];
  const y = b[1] - a[1];
  const size = Math.sqrt(x * x + y * y);
  if (size < STRAIGHT) return false;
  const off = Math.abs(x * (p[1] - a[1]) - y * (p[0] - a[0])) / size;
  const along = (x * (p[0] - a[0]) + y * (p[1] - a[1])) / size;
  return off < STRAIGHT && along > 0 && along < size;
}
