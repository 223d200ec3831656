/**
 * When open files are looked at again after a change: soon, once for a burst of keystrokes, and never so often that a
 * large file keeps the server from answering.
 */

export interface Schedule {
  /** This file has changed. */
  touch(uri: string): void;
  /** This file needs no look any more. */
  drop(uri: string): void;
  dispose(): void;
}

export interface Timing {
  /**
   * Least wait after a change, ms. Requests that come with the keystroke are answered within it; with the look itself it stays under
   * a frame of the screen, so that a drawing follows a value that is dragged.
   */
  wait: number;
  /** Longest wait, ms, for files that take long to work out. */
  longest: number;
}

const timing: Timing = { wait: 8, longest: 400 };

/**
 * Runs `look` for each file touched, one file a turn of the event loop; a look that gives a promise lasts until it is kept. The wait starts with the first change of a burst and is
 * not put off by further ones, so that fast typing is followed while it lasts; it is at least as long as the last look took.
 */
export function createSchedule(
  look: (uri: string) => Promise<void> | void,
  { wait, longest }: Timing = timing,
): Schedule {
  const timers = new Map<string, ReturnType<typeof setTimeout>>();
  const took = new Map<string, number>();

  function run(uri: string) {
    timers.delete(uri);
    const begun = performance.now();
    const measured = () => void took.set(uri, performance.now() - begun);
    const looking = look(uri);
    if (looking) void looking.finally(measured);
    else measured();
  }

  return {
    touch(uri) {
      if (timers.has(uri)) return;
      const delay = Math.min(longest, Math.max(wait, took.get(uri) ?? 0));
      timers.set(
        uri,
        setTimeout(() => run(uri), delay),
      );
    },
    drop(uri) {
      clearTimeout(timers.get(uri));
      timers.delete(uri);
      took.delete(uri);
    },
    dispose() {
      for (const timer of timers.values()) clearTimeout(timer);
      timers.clear();
    },
  };
}
