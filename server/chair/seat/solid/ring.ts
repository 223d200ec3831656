import type { Spot } from "./edge.ts";

/** The whole ring of an outline, anticlockwise, from the middle of the front edge. */
export const ringOf = (half: readonly Spot[]): Spot[] =>
  [
    ...half.slice(1),
    ...half
      .map(([x, s]): Spot => [-x, s])
      .reverse()
      .slice(1),
  ].filter(([x, s], k, all) => {
    const [u, v] = all[(k + 1) % all.length]!;
    return Math.hypot(x - u, s - v) > 1e-6;
  });
