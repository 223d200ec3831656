/**
 * A share of a list of cases in `npm test`, the same on every day; all of them in `npm run prove damage`.
 */
import { seeded } from "./grammar/fixtures/random.ts";

const whole = process.env.SEATWRIGHT_PROVE === "damage";

/** One in so many of a list, drawn by a fixed seed, in the order of the list. At least one, when there are any. */
export function shareOf<T>(list: readonly T[], oneIn: number): readonly T[] {
  if (whole || list.length === 0) return list;
  const random = seeded(20260314);
  const drawn = list.filter(() => random() * oneIn < 1);
  return drawn.length > 0 ? drawn : list.slice(0, 1);
}

/** How large the share is, for the name of a test. */
export const shareName = (oneIn: number): string => (whole ? "all" : `one in ${oneIn}`);

/** So many cases in `npm test`, so many in the whole proof. */
export const countOf = (few: number, all: number): number => (whole ? all : few);

/** How long a test may take, ms: a share as long as any test, the whole an hour. */
export const time = whole ? 3_600_000 : undefined;
