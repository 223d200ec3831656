/**
 * How far one number of the text has to move until a finding is gone.
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Movable } from "./literals.ts";
import type { Verdict } from "./trial.ts";

/** Tries the number; nothing when there are no trials left. */
type Try = (number: number) => Steps<Verdict | undefined>;

interface Moved {
  number: number;
  verdict: Verdict;
}

/** Trials in one direction. */
const MOST = 5;

/**
 * The least movement found after which the finding is gone and nothing new is found. Where the finding measures how bad it is, that
 * tells the direction and how far; where it does not, movements are doubled.
 */
export function* searched(
  movable: Movable,
  badness: number,
  attempt: Try,
  ways: readonly (1 | -1)[] = [1, -1],
): Steps<Moved | undefined> {
  for (const way of ways) {
    const { moved, still } = yield* oneWay(movable, way, badness, attempt);
    if (moved) return moved;
    if (still) return undefined;
  }
  return undefined;
}

function* oneWay(
  { number, step, first, most, write }: Movable,
  way: 1 | -1,
  badness: number,
  attempt: Try,
): Steps<{ moved?: Moved; still?: true }> {
  let by = first;
  let best: (Moved & { by: number }) | undefined;
  let short = 0;
  for (let k = 0; k < MOST; k++) {
    if (by > most) break;
    const steps = Math.ceil(by / step - 1e-6);
    const moved = number + way * steps * step;
    if (best && write(best.number) === write(moved)) break;
    const verdict = yield* attempt(moved);
    if (!verdict) break;
    if (verdict.gone && verdict.clean) {
      best = { number: moved, verdict, by };
      // Perhaps less is enough.
      by = (by + short) / 2;
      continue;
    }
    if (best) {
      short = by;
      by = (by + best.by) / 2;
      continue;
    }
    // Gone, but something else is found now: further on that may be gone too.
    if (verdict.gone) {
      short = by;
      by *= 2;
      continue;
    }
    const gained = badness - verdict.badness;
    if (badness > 0 && Math.abs(gained) < 1e-9 * Math.max(1, badness)) return k === 0 ? { still: true } : {};
    if (badness > 0 && gained < 0) break;
    short = by;
    by = badness > 0 ? Math.max((by * badness) / gained, by + step) : by * 2;
  }
  return best ? { moved: best } : {};
}
