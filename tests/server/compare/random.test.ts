/**
 * A chair edited by random sensible changes: each is told, and nothing else. `npm run prove compare` does a thousand.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type Comparison, compare } from "../../../server/compare/compare.ts";
import { study } from "../../../server/study.ts";
import {
  type Change,
  figureChanged,
  lineTaken,
  noteAdded,
  nowhere,
  pick,
  randomFrom,
  reordered,
  rewritten,
} from "./random-changes.ts";

const runs = Number(process.env.SEATWRIGHT_RUNS ?? 24);
const samples = ["boathouse-mess-chair", "joined-stool"].map((name) =>
  readFileSync(new URL(`../../../samples/${name}.chair`, import.meta.url), "utf8"),
);
const sideOf = (text: string) => ({
  study: study({ text, address: "file:///mess/here.chair", files: nowhere }),
  files: nowhere,
});
const before = samples.map(sideOf);

const toldOf = ({ chosen }: Comparison) =>
  chosen.map(({ part, property, old, new: now }) => ({ part, property, old, new: now }));

describe("random changes", () => {
  it(`are each told, and nothing else (${runs})`, () => {
    const random = randomFrom(15);
    for (let run = 0; run < runs; run++) {
      const k = Math.floor(random() * samples.length);
      const made: Change | undefined = pick(random, [figureChanged, figureChanged, lineTaken, noteAdded])(
        samples[k]!,
        random,
      );
      if (made === undefined) continue;
      const { text, ...fact } = made;
      const written = rewritten(random() < 0.3 ? reordered(text, random) : text, random);
      const there = compare(before[k]!, sideOf(written));
      expect({ run, written, told: toldOf(there) }).toEqual({ run, written, told: [fact] });
      expect(there.same).toBe(false);
    }
  }, 600_000);

  it(`tell nothing where only layout, comments and order differ (${runs})`, () => {
    const random = randomFrom(51);
    for (let run = 0; run < runs / 3; run++) {
      const k = Math.floor(random() * samples.length);
      const written = rewritten(reordered(samples[k]!, random), random);
      const { chosen, follows, anew, same } = compare(before[k]!, sideOf(written));
      expect({ run, written, chosen, follows, anew, same }).toEqual({
        run,
        written,
        chosen: [],
        follows: [],
        anew: [],
        same: true,
      });
    }
  }, 600_000);
});
