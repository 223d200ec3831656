/**
 * A fixed share of `npm run prove mends`.
 */
import { describe, expect, it } from "vitest";
import { exampleCases, movedSamples, randomCases } from "../../proofs/mended-texts.ts";
import { outcomeOf, roundAndRound } from "../../proofs/mends-hold.ts";

const share = <T>(cases: Iterable<T>, every: number): T[] =>
  [...cases].filter((_, at) => at % every === 7 % every);

describe("every mend holds", { timeout: 120_000 }, () => {
  const kinds = {
    "over rules' examples": share(exampleCases(), 20),
    "over samples with one number moved": share(movedSamples(), 700),
    "over random chairs": randomCases(3),
  };
  for (const [kind, cases] of Object.entries(kinds)) {
    it(kind, () => {
      const outcomes = cases.map(outcomeOf);
      expect(outcomes.flatMap(({ failures }) => failures)).toEqual([]);
      expect(outcomes.reduce((sum, { mends }) => sum + mends, 0)).toBeGreaterThan(0);
    });
  }

  it("and following them comes to rest", () => {
    expect(share(movedSamples(), 1600).flatMap((each) => roundAndRound(each) ?? [])).toEqual([]);
  });
});
