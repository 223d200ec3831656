/**
 * Tells where one move of a rule ends and the next begins: a drag ends when it is let go, a run of arrow keys when the maker turns to
 * something else or rests.
 */

/** How long no key comes before a run counts as over, ms. */
export const PAUSE = 1000;

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

  function end() {
    clearTimeout(timer);
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
      if (!down) timer = setTimeout(end, PAUSE);
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
