/**
 * How often a chair may be sat down on before something gives out: a wide range with its grounds, never a promise.
 */

import type { CaseResult } from "./case-result.ts";
import { repeatedShare } from "./resistance.ts";

export interface Lasting {
  /** The joint or part that gives out first. */
  name: string;
  /** Sittings: the fewest and the most, by how stiff joints are and how far tests scatter. */
  fewest: number;
  most: number;
  /** How much of the standard's push on its back each sitting comes with: less than 1 where all of it would tip it over. */
  pushed: number;
}

/** Most sittings that are told by number: nobody has tested further. */
export const MOST_SITTINGS = 10_000_000;

/**
 * Single results of tests lie this far to either side of their mean, as shares of it: the deviation of 353 ± 48 N·m (BioResources 11(3),
 * 2016; seen).
 */
const SCATTER = 48 / 353;

/** The case of sitting down again and again, looked at again; nothing where it was not solved. */
export function lastingOf(cases: readonly CaseResult[]): Lasting | undefined {
  const sitting = cases.filter(({ load }) => load.name === "repeated-sitting");
  const worst = sitting.map(({ joints, members, load, share }) => {
    const all = [...joints, ...members];
    const [name, demand] = all.reduce((a, b) => (b[1] > a[1] ? b : a), ["", 0]);
    // What is asked of it each time, over what it bears once.
    return { name, share, once: demand * repeatedShare(load.times) };
  });
  const middle = worst[Math.floor(worst.length / 2)];
  if (!middle || worst.some(({ name }) => name === "")) return undefined;
  const once = worst.map((each) => each.once);
  return {
    name: middle.name,
    pushed: middle.share,
    fewest: sittingsAt(Math.max(...once) * (1 + SCATTER)),
    most: sittingsAt(Math.min(...once) * (1 - SCATTER)),
  };
}

/** How often a load may come that is this share of what breaks a thing at once: where `repeatedShare` has come down to it. */
export function sittingsAt(share: number): number {
  if (share >= repeatedShare(1)) return 0;
  let [low, high] = [0, Math.log10(MOST_SITTINGS)];
  if (repeatedShare(MOST_SITTINGS) >= share) return MOST_SITTINGS;
  for (let k = 0; k < 40; k++) {
    const middle = (low + high) / 2;
    if (repeatedShare(10 ** middle) >= share) low = middle;
    else high = middle;
  }
  return Math.round(10 ** low);
}
