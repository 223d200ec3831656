/**
 * What is open comes together, in half a second; at once for those who want less motion.
 */

/** ms */
const LASTS = 500;

interface Closing {
  /** From so far apart to closed, then `done`. */
  run(from: number, done: () => void): void;
  /** Where it is, without `done`. */
  stop(): void;
}

/** `moved` hears how far apart it is. */
export function createClosing(moved: (apart: number) => void): Closing {
  let frame: number | undefined;

  function stop() {
    if (frame !== undefined) cancelAnimationFrame(frame);
    frame = undefined;
  }

  return {
    stop,
    run(from, done) {
      stop();
      if (from === 0 || matchMedia("(prefers-reduced-motion: reduce)").matches) return done();
      const begun = performance.now();
      const step = () => {
        const share = Math.min(1, (performance.now() - begun) / LASTS);
        moved(from * (1 - share));
        frame = share < 1 ? requestAnimationFrame(step) : undefined;
        if (share === 1) done();
      };
      frame = requestAnimationFrame(step);
    },
  };
}
