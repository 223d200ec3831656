/**
 * Long work done in short turns, so that everything else is answered in between.
 */
import type { Steps } from "../../grammar/steps.ts";

interface Turns {
  /** Asked between turns: whether nobody waits for it any more. */
  stop?: () => boolean;
  /** All the time there is, ms. */
  time?: number;
  /** Longest stretch at one go, ms; a single step may take longer. */
  turn?: number;
}

/** The value of work that was finished, or what was known when it was broken off: nothing before its first step. */
type Outcome<T, Known> = { whole: true; value: T } | { whole: false; known?: Known };

/** In Node a timer of no time set by a timer may be called again before anything is read; what is set for the next round is not. */
const nextRound: (then: () => void) => unknown = globalThis.setImmediate ?? ((then) => setTimeout(then, 0));

/** Work that rests, in the order in which it goes on. */
const resting: (() => void)[] = [];

/**
 * Lets everything that waits be answered. Of all the work that rests only one goes on in a round: reading a request and writing its
 * answer take some rounds, and each of them is to last one turn, however much work there is.
 */
export function rest(): Promise<void> {
  return new Promise((resolve) => {
    resting.push(resolve);
    if (resting.length === 1) nextRound(goOn);
  });
}

function goOn(): void {
  resting.shift()?.();
  if (resting.length > 0) nextRound(goOn);
}

/** Longest stretch at one go, ms. */
const TURN = 12;

/**
 * Runs work to its end, or as far as the time reaches or somebody waits for it. What takes no longer than one turn is done when this
 * returns; work that is broken off is closed.
 */
export async function inTurns<T, Known>(
  steps: Steps<T, Known>,
  { stop = () => false, time = Number.POSITIVE_INFINITY, turn = TURN }: Turns = {},
): Promise<Outcome<T, Known>> {
  const begun = performance.now();
  const cut: Outcome<T, Known> = { whole: false };
  for (let since = begun; !stop(); since = performance.now()) {
    do {
      const next = steps.next();
      if (next.done) return { whole: true, value: next.value };
      cut.known = next.value;
    } while (performance.now() - since < turn);
    if (performance.now() - begun >= time) break;
    await rest();
  }
  steps.return(undefined as never);
  return cut;
}

/** The value of work in turns; nothing when `stop` says that nobody waits for it any more. */
export async function finishInTurns<T>(
  steps: Steps<T, unknown>,
  stop?: () => boolean,
): Promise<T | undefined> {
  const outcome = await inTurns(steps, stop && { stop });
  return outcome.whole ? outcome.value : undefined;
}
