/**
 * Tells where one move of a rule ends and the next begins: a drag ends when it is let go, a run of arrow keys when the maker turns to
 * something else or rests.
 */

/**
 * How long no key comes before a run counts as over, and how often a value that is held still is told again, ms. A file that saves itself
 * waits until nothing has changed for a while, a second unless the maker chose otherwise, and a save would part a move into two steps
 * to undo: both are shorter than that.
 */
export const PAUSE = 600;
export const HOLD = 400;

export interface Run {
  /** The value was moved to here. */
  moved(value: number): void;
  /** The pointer is down on the rule, or is up again. */
  pressed(): void;
  released(): void;
  /** Whether a move is going on: drawings on their way must not pull the rule back. */
  readonly going: boolean;
}

/** Nothing moved yet; `tell` hears of each place and, with `done`, of the last one once more. */
export function createRun(tell: (value: number, done: boolean) => void): Run {
  let last: number | undefined;
  let down = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let holding: ReturnType<typeof setInterval> | undefined;

  function end() {
    clearTimeout(timer);
    clearInterval(holding);
    down = false;
    if (last === undefined) return;
    const value = last;
    last = undefined;
    tell(value, true);
  }

  return {
    moved(value) {
      last = value;
      clearTimeout(timer);
      clearInterval(holding);
      if (down) holding = setInterval(() => tell(value, false), HOLD);
      else timer = setTimeout(end, PAUSE);
      tell(value, false);
    },
    pressed() {
      end();
      down = true;
    },
    released: end,
    get going() {
      return down || last !== undefined;
    },
  };
}
