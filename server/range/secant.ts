/**
 * Finds where a function that can only be asked reaches a figure, by secants kept within bounds; where they stray, by halving.
 */
import type { Steps } from "../../grammar/steps.ts";

interface Search {
  /** Where the search begins and what the function is there. */
  from: number;
  at: number;
  aim: number;
  low: number;
  high: number;
  /** A place this near to the one before is as good. */
  fine: number;
  /** The first step away from where it begins. */
  step: number;
  /** Most times that the function may be asked. */
  most: number;
}

interface Place {
  x: number;
  y: number;
}

interface Outcome {
  /** The place nearest to the aim; not yet asked of the function where `guessed`. */
  best: Place;
  /** Where the last line through two places meets the aim, within the bounds; unrounded. */
  guess: number;
  asked: number;
  /** Whether the function moved at all. */
  moves: boolean;
}

/** Asks `f` at few places; `f` gives nothing where it has no figure. */
export function* searchSteps(search: Search, f: (x: number) => Steps<number | undefined>): Steps<Outcome> {
  const { aim, low, high, fine, most } = search;
  const within = (x: number) => Math.min(high, Math.max(low, x));
  const places: Place[] = [{ x: search.from, y: search.at }];
  let asked = 0;
  const outcome = (guess: number, moves = true): Outcome => ({
    best: nearest(places, aim),
    guess,
    asked,
    moves,
  });
  let next = within(search.from + search.step);
  if (next === search.from) next = within(search.from - search.step);
  while (asked < most && next !== places.at(-1)?.x) {
    const y = yield* f(next);
    asked++;
    if (y === undefined) return outcome(nearest(places, aim).x, places.length > 1);
    places.push({ x: next, y });
    if (places.every((place) => Math.abs(place.y - search.at) < STILL)) {
      if (places.length > 2) return outcome(search.from, false);
      // A step that moves nothing may only be too short, such as on a flat stretch: one long one.
      next = within(Math.abs(high - search.from) > Math.abs(low - search.from) ? high : low);
      continue;
    }
    const guess = within(meet(places, aim));
    const last = places.at(-1)?.x ?? guess;
    if (Math.abs(guess - last) <= fine) return outcome(guess);
    next = guess;
  }
  return outcome(next);
}

/** Movements smaller than this count as none: mm, rad or plain. */
const STILL = 1e-9;

/** Where the figure should be met: between two places on either side of the aim when there are some, else along the last secant. */
function meet(places: readonly Place[], aim: number): number {
  const sorted = [...places].sort((a, b) => a.x - b.x);
  for (const [k, b] of sorted.entries()) {
    const a = sorted[k - 1];
    if (a && (a.y - aim) * (b.y - aim) <= 0 && a.y !== b.y) {
      const straight = a.x + ((aim - a.y) * (b.x - a.x)) / (b.y - a.y);
      const edge = Math.min(straight - a.x, b.x - straight) / (b.x - a.x);
      // Hugging one end again and again is the sign of a bend: the middle then.
      return places.length > 4 && edge < 0.02 ? (a.x + b.x) / 2 : straight;
    }
  }
  const [a, b] = places.slice(-2);
  if (!a || !b || a.y === b.y) return b?.x ?? a?.x ?? 0;
  return b.x + ((aim - b.y) * (b.x - a.x)) / (b.y - a.y);
}

const nearest = (places: readonly Place[], aim: number): Place =>
  places.reduce((a, b) => (Math.abs(b.y - aim) < Math.abs(a.y - aim) ? b : a));
