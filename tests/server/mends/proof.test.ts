/**
 * A fixed share of `npm run prove mends`.
 */
import { describe, expect, it } from "vitest";
import { isLateFinding } from "../../../server/rules/late-findings.ts";
import { type Case, exampleCases, movedSamples, randomCases } from "../../proofs/mended-texts.ts";
import { outcomeOf, roundAndRound } from "../../proofs/mends-hold.ts";

const share = (cases: Iterable<Case>, every: number): Case[] =>
  [...cases].filter((_, at) => at % every === 7 % every);

/** Without the bow armchair: a trial of one works out its strength anew, and the whole proof has it. */
const quickSamples = (): Case[] => [...movedSamples()].filter(({ name }) => !name.startsWith("bow-"));

describe("every mend holds", { timeout: 120_000 }, () => {
  const kinds = {
    "over rules' examples": share(exampleCases(), 25),
    "over samples with one number moved": share(quickSamples(), 900),
    "over random chairs": randomCases(2),
  };
  for (const [kind, cases] of Object.entries(kinds)) {
    it(kind, () => {
      const outcomes = cases.map((each) => outcomeOf(each));
      expect(outcomes.flatMap(({ failures }) => failures)).toEqual([]);
      expect(outcomes.reduce((sum, { mends }) => sum + mends, 0)).toBeGreaterThan(0);
    });
  }

  it("of what strength finds of a stool whose tenons are made smaller", () => {
    const smaller = [...movedSamples()].filter(({ name }) =>
      /^slip-stool\.chair:13 .* moved by -60 %$/.test(name),
    );
    const outcomes = smaller.map((each) => outcomeOf(each, isLateFinding));
    expect(outcomes.flatMap(({ failures }) => failures)).toEqual([]);
    expect(outcomes.reduce((sum, { mends }) => sum + mends, 0)).toBeGreaterThan(0);
  });

  it("and following them comes to rest", () => {
    expect(share(quickSamples(), 1600).flatMap((each) => roundAndRound(each) ?? [])).toEqual([]);
  });
});
