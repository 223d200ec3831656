/**
 * The sheets are proved by cutting from them: a cutter that reads nothing but the printed figures makes every part of every sample with
 * manifold-3d 3.5.4 (Apache-2.0), an independent library of exact set operations on solids, and what it makes is the part: nothing is left
 * standing and nothing cut away by more than 0.3 mm, in inch files by more than a step.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studied } from "../../check.ts";
import { sampleNames, studiedSample } from "../samples.ts";
import { allowed, breaksOut, readSheets, straysOf } from "./proof.ts";
import { chairs } from "./random.ts";

/** Random chairs: a fixed share of those that `npm run prove sheets` makes. */
const RUNS = Number(process.env.SEATWRIGHT_RUNS ?? 4);
/** And every third part of the samples. */
const EVERY = process.env.SEATWRIGHT_RUNS ? 1 : 3;

describe.each(sampleNames)("the sheets of %s", (name) => {
  it("are enough to cut each part by", { timeout: 120_000 }, () => {
    const { chair } = studiedSample(name);
    const sheets = readSheets(chair);
    // A stool has few parts: three of them at least are cut.
    const every = Math.max(1, Math.min(EVERY, Math.floor(sheets.parts.length / 3)));
    const strays = straysOf(chair, sheets, every);
    expect(strays.length).toBeGreaterThan(2);
    expect(strays.filter(({ proud, missing }) => Math.max(proud, missing) > allowed(sheets))).toEqual([]);
  });
});

it(`the sheets of ${RUNS} random chairs are enough to cut each part by`, { timeout: 3_600_000 }, () => {
  let parts = 0;
  let worst = { part: "", by: 0 };
  fc.assert(
    fc.property(chairs, (text) => {
      const { chair } = studied(text);
      // There is no face to set out on what breaks out; a finding tells of it.
      fc.pre(!breaksOut(chair));
      const sheets = readSheets(chair);
      for (const { part, proud, missing } of straysOf(chair, sheets)) {
        const by = Math.max(proud, missing);
        if (by > worst.by) worst = { part, by };
        expect(by, `${part}: ${proud} proud, ${missing} missing`).toBeLessThanOrEqual(allowed(sheets));
        parts++;
      }
    }),
    { numRuns: RUNS, seed: 20260731, endOnFailure: true },
  );
  expect(parts).toBeGreaterThan(3 * RUNS);
  console.log(
    `${parts} parts of ${RUNS} random chairs; the worst strays ${worst.by.toFixed(2)} mm (${worst.part})`,
  );
});
