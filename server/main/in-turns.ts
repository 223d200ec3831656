/**
 * Long work done in short turns, so that everything else is answered in between.
 */
import type { Steps } from "../../grammar/steps.ts";

export interface Turns {
  /** All the time there is, ms. */
  time: number;
  /** Longest stretch at one go, ms; a single step may take longer. */
  turn?: number;
  /** Asked between turns: whether nobody waits for it any more. */
  stop?: () => boolean;
}

/** In Node a timer of no time set by a timer may be called again before anything is read; what is set for the next round is not. */
const nextRound: (then: () => void) => unknown = globalThis.setImmediate ?? ((then) => setTimeout(then, 0));

/** Lets everything that waits be answered. */
export const rest = (): Promise<void> => new Promise((resolve) => nextRound(resolve));

/** Longest stretch at one go, ms. */
const TURN = 12;

/**
 * Asks `step` again and again, resting in between, until it says that all is done or `stop` that nobody waits any more. What takes
 * no longer than one turn is done when this returns.
 */
export async function stepping(step: () => boolean, stop: () => boolean): Promise<void> {
  while (!stop()) {
    for (const since = performance.now(); performance.now() - since < TURN; ) if (step()) return;
    await rest();
  }
}

/** The value of long work, resting in between; nothing when `stop` says that nobody waits for it any more. */
export async function finishInTurns<T>(steps: Steps<T>, stop: () => boolean): Promise<T | undefined> {
  let finished: { value: T } | undefined;
  await stepping(() => {
    const { value, done } = steps.next();
    if (done) finished = { value };
    return done === true;
  }, stop);
  return finished?.value;
}

export interface Outcome<T> {
  /** What was known last; nothing when not even the first step was done. */
  known?: T;
  whole: boolean;
}

/** Runs a generator to its end, or as far as the time reaches. */
export async function inTurns<T>(
  steps: Generator<T, T>,
  { time, turn = 8, stop = () => false }: Turns,
): Promise<Outcome<T>> {
  const begun = performance.now();
  const outcome: Outcome<T> = { whole: false };
  for (let since = begun; !stop(); since = performance.now()) {
    do {
      const { value, done } = steps.next();
      outcome.known = value;
      if (done) return { known: value, whole: true };
    } while (performance.now() - since < turn);
    if (performance.now() - begun >= time) break;
    await rest();
  }
  steps.return(undefined as T);
  return outcome;
}
