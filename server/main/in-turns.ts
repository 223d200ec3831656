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
  /** Nobody asked for it: whatever somebody waits for goes on first. */
  behind?: boolean;
}

/** The value of work that was finished, or what was known when it was broken off: nothing before its first step. */
type Outcome<T, Known> = { whole: true; value: T } | { whole: false; known?: Known };

/** In Node a timer of no time set by a timer may be called again before anything is read; what is set for the next round is not. */
const nextRound: (then: () => void) => unknown = globalThis.setImmediate ?? ((then) => setTimeout(then, 0));

/**
 * Rounds of the event loop from one turn to the next. Reading a request, handing it over and writing its answer take a round each, so that
 * a request which came during one turn is answered before the next begins. Elsewhere than in Node a round takes some ms.
 */
const ROUNDS = "setImmediate" in globalThis ? 6 : 1;

/** Work that rests, in the order in which it goes on; what somebody waits for goes on first. */
const resting: (() => void)[] = [];
const restingBehind: (() => void)[] = [];

/**
 * Lets everything that waits be answered. Of all the work that rests only one goes on at a time, however much work there is. Work
 * that nobody asked for stays behind all other.
 */
export function rest(behind = false): Promise<void> {
  return new Promise((resolve) => {
    (behind ? restingBehind : resting).push(resolve);
    if (resting.length + restingBehind.length === 1) afterRounds(ROUNDS);
  });
}

function afterRounds(rounds: number): void {
  nextRound(() => (rounds > 1 ? afterRounds(rounds - 1) : goOn()));
}

function goOn(): void {
  (resting.shift() ?? restingBehind.shift())?.();
  if (resting.length + restingBehind.length > 0) afterRounds(ROUNDS);
}

/** Longest stretch at one go, ms. */
const TURN = 12;

/**
 * Runs work to its end, or as far as the time reaches or somebody waits for it. What takes no longer than one turn is done when this
 * returns; work that is broken off is closed.
 */
export async function inTurns<T, Known>(
  steps: Steps<T, Known>,
  { stop = () => false, time = Number.POSITIVE_INFINITY, turn = TURN, behind }: Turns = {},
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
    await rest(behind);
  }
  steps.return(undefined as never);
  return cut;
}

/** The value of work in turns; nothing when `stop` says that nobody waits for it any more. */
export async function finishInTurns<T>(
  steps: Steps<T, unknown>,
  stop?: () => boolean,
  behind = false,
): Promise<T | undefined> {
  const outcome = await inTurns(steps, { ...(stop && { stop }), behind });
  return outcome.whole ? outcome.value : undefined;
}
