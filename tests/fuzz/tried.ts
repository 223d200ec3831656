/**
 * Random cases, each made from a seed: a fixed few in `npm test`, as many as the time allows in `npm run fuzz`.
 */
import { expect, test } from "vitest";
import { seeded } from "../grammar/fixtures/random.ts";

/** Where the cases begin, the same every day in `npm test`. */
const seed = Number(process.env.SEATWRIGHT_SEED ?? 20260314);
/** How long each fuzzer goes on, s; when absent it tries its share of cases. */
const time = process.env.SEATWRIGHT_TIME === undefined ? undefined : Number(process.env.SEATWRIGHT_TIME);

/**
 * A fuzzer: `one` tries a case and gives nothing when all is well, or else what went wrong. Each case has a seed of its own, which is
 * printed: SEATWRIGHT_SEED with it tries that case first.
 */
export function fuzz(
  name: string,
  share: number,
  one: (random: () => number) => unknown | Promise<unknown>,
): void {
  const limit = time === undefined ? 240_000 : time * 1000 + 240_000;
  test(
    `${name}: ${time === undefined ? `${share} cases` : `${time} s`} from seed ${seed}`,
    async () => {
      const begun = performance.now();
      for (let at = 0; time === undefined ? at < share : performance.now() - begun < time * 1000; at++) {
        const wrong = await one(seeded(seed + at));
        expect(wrong, `SEATWRIGHT_SEED=${seed + at}`).toBeUndefined();
      }
    },
    limit,
  );
}

/** A whole number from 0 up to, not including, `end`. */
export const below = (random: () => number, end: number): number => Math.floor(random() * end);

/** One of these. */
export function oneOf<T>(random: () => number, list: readonly T[]): T {
  return list[below(random, list.length)]!;
}
