/**
 * How far a choice may go: the stretches of its range where nothing is found, and the stretch of each finding. Places are tried evenly
 * over the range; where two neighbours differ, the edge between them is searched for.
 */
import type { Steps } from "../../grammar/steps.ts";
import { workedValue } from "../chair/values/values.ts";
import type { Rule } from "../rules/machinery/rule.ts";
import type { Study } from "../study.ts";
import { type Subject, textSteps } from "./attempt.ts";
import type { Choice } from "./choice.ts";
import { foundBetween, rulesThatDiffer } from "./differing.ts";
import { edgesWithin, type Tried } from "./edges.ts";
import { type Known, knownBy } from "./findings.ts";
import { movingTextSteps } from "./moving.ts";

/** A stretch of the range in which one thing is found. */
export interface Band extends Known {
  from: number;
  to: number;
}

export interface Range {
  choice: Choice;
  /** In the choice's unit. */
  low: number;
  high: number;
  /** How many places were tried, evenly, both ends among them; something narrower than one gap can be missed. */
  tried: number;
  /** Stretches where nothing is found. */
  free: [number, number][];
  /** Errors first, then by where they begin. */
  bands: Band[];
  /** Worked-out values at the places tried; nothing where one cannot be worked out. */
  values: { name: string; at: (number | undefined)[] }[];
}

interface Asking {
  subject: Subject;
  choice: Choice;
  /** Other ends than the choice's own. */
  low?: number;
  high?: number;
  places?: number;
  /** Worked-out values to follow over the range. */
  of?: readonly string[];
}

/** How many places are tried unless said. */
export const PLACES = 25;

/** Edges are found to this part of the choice's step. */
const FINENESS = 1 / 20;

/** Tries the range; rests between studies. */
export function* rangeSteps({ subject, choice, places = PLACES, of = [], ...ends }: Asking): Steps<Range> {
  const { low = choice.low, high = choice.high } = ends;
  const values = of.map((name): Range["values"][number] => ({ name, at: [] }));
  const fine = Math.max(choice.step * FINENESS, (high - low) * 1e-6);
  const moving = yield* movingTextSteps(subject.text, [{ choice, low, high }]);
  let earlier = subject.earlier;
  function* studyAt(place: number, some?: readonly Rule[]): Steps<Study> {
    const study = yield* textSteps({ ...subject, ...(earlier && { earlier }) }, moving([place]), some);
    earlier = study.chair;
    return study;
  }
  function* triedAt(place: number, a: Tried, b: Tried): Steps<Tried> {
    const some = subject.late ? undefined : rulesThatDiffer(a.found, b.found);
    const judged = knownBy((yield* studyAt(place, some)).problems);
    return { place, found: some ? foundBetween(a.found, b.found, some, judged) : judged };
  }

  const even: Tried[] = [];
  for (let k = 0; k < places; k++) {
    const place = places === 1 ? choice.now : low + ((high - low) * k) / (places - 1);
    const study = yield* studyAt(place);
    even.push({ place, found: knownBy(study.problems) });
    for (const { name, at } of values) at.push(workedValue(study.chair, name)?.number);
    yield;
  }

  const all: Tried[] = [];
  for (const [k, next] of even.entries()) {
    const before = even[k - 1];
    const gap = before && { before: even[k - 2], a: before, b: next, after: even[k + 1] };
    if (gap) all.push(...(yield* edgesWithin(gap, { fine, triedAt })));
    all.push(next);
  }
  const bands = bandsOf(all, new Set(even), choice.now);
  return { choice, low, high, tried: places, free: freeOf(bands, low, high), bands, values };
}

/** Each finding's stretches; one begins halfway between the last place without it and the first with it. */
function bandsOf(all: readonly Tried[], even: ReadonlySet<Tried>, now: number): Band[] {
  const bands: Band[] = [];
  for (const key of new Set(all.flatMap(({ found }) => [...found.keys()]))) {
    let begun: number | undefined;
    for (let k = 0; k <= all.length; k++) {
      const here = k < all.length && all[k]?.found.has(key);
      if (here && begun === undefined) begun = k;
      if (here || begun === undefined) continue;
      // Right at its edge a finding's figure is printed as the one that is allowed, so what it says is taken from an even place where there is one.
      const told = all.slice(begun, k).filter((each) => even.has(each));
      const inside = told.length > 0 ? told : all.slice(begun, k);
      const from = edgeBetween(all[begun - 1], all[begun]);
      const to = edgeBetween(all[k - 1], all[k]);
      const nearest = inside.reduce((a, b) => (Math.abs(b.place - now) < Math.abs(a.place - now) ? b : a));
      const known = nearest.found.get(key);
      if (known) bands.push({ ...known, from, to });
      begun = undefined;
    }
  }
  const weight = ({ severity }: Band) => (severity === "error" ? 0 : 1);
  return bands.sort((a, b) => weight(a) - weight(b) || a.from - b.from || (a.code < b.code ? -1 : 1));
}

function edgeBetween(a: Tried | undefined, b: Tried | undefined): number {
  if (!a || !b) return neat((a ?? b)?.place ?? 0);
  return neat((a.place + b.place) / 2);
}

/** What no band covers. */
function freeOf(bands: readonly Band[], low: number, high: number): [number, number][] {
  const free: [number, number][] = [];
  let reached = low;
  for (const { from, to } of [...bands].sort((a, b) => a.from - b.from)) {
    if (from > reached) free.push([neat(reached), neat(from)]);
    reached = Math.max(reached, to);
  }
  if (bands.length === 0 || high > reached) free.push([neat(reached), neat(high)]);
  return free;
}

const neat = (n: number): number => Number(n.toFixed(6));
