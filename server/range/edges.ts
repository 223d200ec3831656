/**
 * Where in a range a finding begins or ends: between two neighbouring places that differ, more are tried until the edge is known finely.
 */
import type { Steps } from "../../grammar/steps.ts";
import { type Known, sameFound } from "./findings.ts";

/** A place of the range and what is found there. */
export interface Tried {
  place: number;
  found: ReadonlyMap<string, Known>;
}

/** Two neighbours, with those beyond them where there are any. */
export interface Gap {
  before: Tried | undefined;
  a: Tried;
  b: Tried;
  after: Tried | undefined;
}

interface Search {
  /** Edges are found to this. */
  fine: number;
  /** Tries a place between two that differ. */
  triedAt: (place: number, a: Tried, b: Tried) => Steps<Tried>;
}

/** How the next place in a gap is chosen: guessed from what is measured, a stretch on from a guess at one of its ends, or halfway. */
type Next = "guessed" | "halfway" | { from: number; reach: number };

/**
 * The places that close in on every edge between two neighbours, in order. A finding that says how far past its limit it is lets the edge be
 * guessed by a straight line through two places that have it; the next places lie a little beyond the guess. Other gaps are halved.
 */
export function* edgesWithin(gap: Gap, search: Search, next: Next = "guessed"): Steps<Tried[]> {
  const { before, a, b, after } = gap;
  if (sameFound(a.found, b.found) || b.place - a.place <= search.fine) return [];
  const place = placeIn(gap, search.fine, next);
  const between = yield* search.triedAt(place ?? (a.place + b.place) / 2, a, b);
  yield;
  const [below, above] =
    place === undefined ? (["halfway", "halfway"] as const) : sides(between.place, search.fine, next);
  return [
    ...(yield* edgesWithin({ before, a, b: between, after: b }, search, below)),
    between,
    ...(yield* edgesWithin({ before: a, a: between, b, after }, search, above)),
  ];
}

/** Where the next place lies, unless it is halfway. */
function placeIn(gap: Gap, fine: number, next: Next): number | undefined {
  if (next === "halfway") return undefined;
  if (next === "guessed") return besideTheEdge(gap, fine);
  const place = next.from === gap.a.place ? next.from + next.reach : next.from - next.reach;
  return place > gap.a.place && place < gap.b.place ? place : undefined;
}

/** How to go on below and above a place that did not come by halving: further the same way, wider; back over what was passed by halving. */
function sides(place: number, fine: number, next: Next): readonly [Next, Next] {
  if (next === "guessed" || next === "halfway") {
    const on: Next = { from: place, reach: 2 * NEAR * fine };
    return [on, on];
  }
  const on: Next = next.reach < WIDEST * fine ? { from: place, reach: WIDER * next.reach } : "halfway";
  return place > next.from ? ["halfway", on] : [on, "halfway"];
}

/** Rules let a little past their limits go, so an edge may lie just beyond the guess; the stretches that are tried there widen so, up to this many times what edges are found to. */
const WIDER = 3;
const WIDEST = 1;

/** A little less than half of what edges are found to: places so far on either side of an edge enclose it. */
const NEAR = 0.45;

/** A place close to where one of the findings that differ begins or ends; nothing where that cannot be told. */
function besideTheEdge({ before, a, b, after }: Gap, fine: number): number | undefined {
  const inside = (place: number) => place > a.place && place < b.place;
  const keys = [...a.found.keys(), ...b.found.keys()];
  for (const key of keys) {
    if (a.found.has(key) === b.found.has(key)) continue;
    const [has, beyond, lacks] = a.found.has(key) ? [a, before, b] : [b, after, a];
    const limit = edgeOf(key, has, beyond);
    if (limit === undefined) continue;
    // The edge lies between the two, wherever the limit is.
    const edge = Math.min(Math.max(limit, a.place), b.place);
    if (Math.abs(limit - edge) > fine) continue;
    const towards = Math.sign(has.place - lacks.place) * NEAR * fine;
    // Rules let a little past their limits go, so the edge is more likely on the side that has the finding.
    const place = Math.abs(has.place - edge) > (1 - NEAR) * fine ? edge + towards : edge - towards;
    if (inside(place)) return place;
  }
  return undefined;
}

/** Where a finding would be at its limit, by the straight line through two places that have it. */
function edgeOf(key: string, has: Tried, beyond: Tried | undefined): number | undefined {
  const [here, there] = [has.found.get(key)?.badness, beyond?.found.get(key)?.badness];
  if (here === undefined || there === undefined || !beyond || !(here > 0 && there > here)) return undefined;
  return has.place - (here * (beyond.place - has.place)) / (there - here);
}
