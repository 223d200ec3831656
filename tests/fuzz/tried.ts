/**
 * Random cases, each made from a seed: a fixed few in `npm test`, as many as the time allows in `npm run fuzz`, so many in a proof.
 */
import { expect, test } from "vitest";
import { seeded } from "../grammar/fixtures/random.ts";

/** Where the cases begin, the same every day in `npm test`. */
const seed = Number(process.env.SEATWRIGHT_SEED ?? 20260314);
/** How long each fuzzer goes on, s; when absent it tries its share of cases. */
const time = process.env.SEATWRIGHT_TIME === undefined ? undefined : Number(process.env.SEATWRIGHT_TIME);
/** How many cases each tries instead. */
const runs = process.env.SEATWRIGHT_RUNS === undefined ? undefined : Number(process.env.SEATWRIGHT_RUNS);
/** Told before a fuzzer gives up. */
const MOST_WRONG = 5;

/**
 * A fuzzer: `one` tries a case and gives nothing when all is well, or else what went wrong. Each case has a seed of its own, which is
 * printed: SEATWRIGHT_SEED with it tries that case first.
 */
export function fuzz(
  name: string,
  share: number,
  one: (random: () => number) => unknown | Promise<unknown>,
): void {
  const count = runs ?? share;
  const hour = 3_600_000;
  test(`${name}: ${time === undefined ? `${count} cases` : `${time} s`} from seed ${seed}`, {
    timeout: time === undefined ? (runs === undefined ? 240_000 : 24 * hour) : time * 1000 + 240_000,
  }, async () => {
    const begun = performance.now();
    const more = (at: number) => (time === undefined ? at < count : performance.now() - begun < time * 1000);
    const wrong: unknown[] = [];
    let tried = 0;
    for (; more(tried) && wrong.length < MOST_WRONG; tried++) {
      const found = await one(seeded(seed + tried));
      if (found !== undefined) wrong.push({ SEATWRIGHT_SEED: seed + tried, found });
    }
    if (runs !== undefined || time !== undefined)
      console.info(`${name}: ${tried} cases, ${wrong.length} wrong`);
    expect(wrong).toEqual([]);
  });
}

/** A whole number from 0 up to, not including, `end`. */
export const below = (random: () => number, end: number): number => Math.floor(random() * end);

/** One of these. */
export function oneOf<T>(random: () => number, list: readonly T[]): T {
  return list[below(random, list.length)]!;
}
