import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Steps } from "../../../grammar/steps.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Fault } from "../../chair/fault.ts";
import { railsAndSlats } from "../../chair/member.ts";
import { bothNames } from "../../design/identity.ts";
import { printQuantity } from "../../design/units.ts";
import { type Bounds, boundsOf, boxesMeet, sharedVolume } from "../../geometry/convex.ts";
import type { Convex } from "../../geometry/solid.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { designOf, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { type Finding, tell } from "../machinery/say.ts";

/** Parts that one is found to pass through, of those that come after it; where there are more, they are all in one place. */
const MOST_OTHERS = 8;

export const partsPassThrough: Rule = {
  code: "parts-pass-through",
  severity: "error",
  title: "Parts that pass through each other",
  explanation:
    "Two members take up the same space, other than a tenon in its own mortise. Set one of them higher, lower or further in, or join it to the other instead. The seat is left out, since it is fitted to its rails and posts. `limit parts-pass-through` does not change it: an overlap of less than an arris planed off is passed over.",
  source: sourcesOf("shared-wood"),
  *find({ chair }) {
    const solids = yield* solidsOf(chair);
    const together = joinedPairs(chair);
    const through = new Map<string, number>();
    const shared = new Map<string, { a: Solid; b: Solid; volume: number }>();
    for (const [a, b] of inOrder(solids, yield* solidsThatMeet(solids))) {
      yield;
      if (a.part === b.part || together.has(pairKey(a.part, b.part))) continue;
      if (a.into === b.part || b.into === a.part || (a.into !== undefined && b.into !== undefined)) continue;
      const key = pairKey(a.part, b.part);
      const others = through.get(a.part) ?? 0;
      if (others >= MOST_OTHERS && !shared.has(key)) continue;
      const volume = sharedBetween(a, b);
      if (volume > 0 && !shared.has(key)) through.set(a.part, others + 1);
      const before = shared.get(key);
      if (volume > (before?.volume ?? 0)) shared.set(key, { a, b, volume });
    }
    const findings: Finding[] = [];
    for (const { a, b, volume } of shared.values()) {
      yield;
      if (volume > most("shared-wood")) findings.push(finding(chair, a, b, volume));
    }
    return findings;
  },
};

function finding(chair: Chair, a: Solid, b: Solid, volume: number): Finding {
  const [first, second] = inText(chair, a.part, b.part);
  const found = printQuantity({ number: volume, dimension: "volume" }, chair.design.units);
  const through =
    a.into === undefined && b.into === undefined ? "parts-pass-through" : "parts-pass-through.tenon";
  const twins = plain(first) === plain(second);
  return tell(partsPassThrough, placeOf(chair.design, [designOf(chair, second), designOf(chair, first)]), {
    message: sentence(through, {
      // Of two of a pair each is called by its side.
      One: twins ? named(chair, second).replace(plain(second), second) : named(chair, second),
      other: twins ? first : plain(first),
      shared: found,
    }),
    otherwise: sentence("parts-pass-through.otherwise"),
    subject: bothNames(second, first),
    found,
    allowed: sentence("found.no-shared-wood"),
    badness: volume,
  });
}

interface Solid {
  part: string;
  /** The member that a tenon goes into. */
  into?: string;
  pieces: { solid: Convex; box: Bounds }[];
  box: Bounds;
}

function* solidsOf(chair: Chair): Steps<Solid[]> {
  const solids: Solid[] = [];
  const add = (part: string, pieces: readonly Convex[], into?: string) => {
    if (pieces.length === 0) return;
    const boxed = pieces.map((solid) => ({ solid, box: boundsOf(solid.points) }));
    const box = boundsOf(boxed.flatMap(({ box: own }) => [own.low, own.high]));
    solids.push({ part, pieces: boxed, box, ...(into === undefined ? {} : { into }) });
  };
  for (const part of chair.members.values()) {
    if (part.is !== "seat") add(part.name, part.body.pieces);
    yield;
  }
  for (const joint of chair.joints.values())
    if (joint.kind !== "passing") add(joint.part, joint.tenon, joint.entered.name);
  yield;
  return solids;
}

/** For each solid the later ones whose boxes meet its own: swept from left to right, so that a long bench costs little more. */
function* solidsThatMeet(solids: readonly Solid[]): Steps<number[][]> {
  const fromLeft = solids
    .map((solid, index) => ({ solid, index }))
    .sort((a, b) => a.solid.box.low[0] - b.solid.box.low[0]);
  const later: number[][] = solids.map(() => []);
  for (const [k, { solid: a, index }] of fromLeft.entries()) {
    for (let next = k + 1; next < fromLeft.length; next++) {
      const other = fromLeft[next]!;
      if (other.solid.box.low[0] > a.box.high[0]) break;
      if (boxesMeet(a.box, other.solid.box))
        later[Math.min(index, other.index)]!.push(Math.max(index, other.index));
    }
    yield;
  }
  return later;
}

/** Pairs in the order of the chair, one at a time: there may be a great many. */
function* inOrder(solids: readonly Solid[], later: readonly number[][]): Iterable<[Solid, Solid]> {
  for (const [index, others] of later.entries())
    for (const other of others.sort((a, b) => a - b)) yield [solids[index]!, solids[other]!];
}

function sharedBetween(a: Solid, b: Solid): number {
  let sum = 0;
  for (const one of a.pieces) {
    if (!boxesMeet(one.box, b.box)) continue;
    for (const other of b.pieces) {
      if (boxesMeet(one.box, other.box)) sum += sharedVolume(one.solid, other.solid);
    }
  }
  return sum;
}

const pairKey = (a: string, b: string): string => (a < b ? `${a}|${b}` : `${b}|${a}`);

/** Members that meet on purpose: what a rail enters or lies over, what a post stands on or goes into; ends already reported. */
function joinedPairs(chair: Chair): Set<string> {
  const pairs = new Set<string>();
  for (const rail of railsAndSlats(chair)) {
    for (const end of rail.ends) if (end.entered) pairs.add(pairKey(rail.name, end.entered.name));
  }
  for (const joint of chair.joints.values()) pairs.add(pairKey(joint.part, joint.entered.name));
  const towards = (fault: Fault) => ("towards" in fault ? fault.towards : undefined);
  for (const fault of chair.faults) {
    const other = towards(fault);
    if (other !== undefined) pairs.add(pairKey(fault.part, other));
  }
  return pairs;
}

/** Two parts in the order in which the text names them. */
function inText(chair: Chair, a: string, b: string): [string, string] {
  const at = (part: string) => designOf(chair, part)?.at.start ?? 0;
  return at(a) <= at(b) ? [a, b] : [b, a];
}
