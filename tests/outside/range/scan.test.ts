/**
 * Ranges against a plain scan: at every place of a fine scan the findings are those whose bands hold the place. All samples and random
 * chairs at 400 places are `npm run prove ranges`; here a share of them.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Range } from "../../../server/range/bands.ts";
import { choicesOf, edited, exactly, rewrite } from "../../../server/range/choice.ts";
import { knownBy } from "../../../server/range/findings.ts";
import { rangeOf, samples, studied } from "../../server/range/files.ts";
import { chairs } from "../joinery/random-chairs.ts";

const whole = process.env.SEATWRIGHT_PROVE === "ranges";
const places = whole ? 400 : 40;
/** ms. */
const time = whole ? 3 * 3_600_000 : 300_000;

/** Places of a scan whose findings are not those of the bands there. */
function strays(text: string, range: Range): string[] {
  const { choice, low, high, bands, tried } = range;
  const step = (high - low) / places;
  const gap = (high - low) / (tried - 1);
  const near = (place: number) =>
    bands.some(({ from, to }) => Math.min(Math.abs(place - from), Math.abs(place - to)) <= choice.step / 20);
  const found = new Map<string, number[]>();
  for (let k = 0; k <= places; k++) {
    const place = low + k * step;
    if (near(place)) continue;
    const here = knownBy(studied(edited(text, [rewrite(choice, exactly(choice, place))])).problems);
    const told = bands.filter(({ from, to }) => place > from && place < to);
    const keys = new Set(told.map(({ code, subject }) => `${code}|${subject}`));
    const names = new Set([...here.values()].map(({ code, subject }) => `${code}|${subject}`));
    for (const key of [...keys, ...names])
      if (keys.has(key) !== names.has(key)) found.set(key, [...(found.get(key) ?? []), place]);
  }
  // What is narrower than one gap may be missed, as every range says.
  return [...found].flatMap(([key, at]) =>
    runsOf(at, 2.5 * step)
      .filter((run) => run.at(-1)! - run[0]! >= gap - step)
      .map((run) => `${choice.name}: ${key} at ${run.join(", ")}`),
  );
}

/** Rising places in runs: each stands no further than `most` from the one before. */
function runsOf(places: readonly number[], most: number): number[][] {
  const runs: number[][] = [];
  for (const place of places) {
    const run = runs.at(-1);
    if (run && place - run.at(-1)! <= most) run.push(place);
    else runs.push([place]);
  }
  return runs;
}

const some = whole
  ? Object.entries(samples)
  : Object.entries(samples).filter(([name]) => name === "joined-stool.chair");

describe("ranges against a scan", () => {
  it.each(some)(
    "%s",
    (_, text) => {
      const { tree, design } = studied(text);
      const lets = choicesOf(tree, design).filter(({ bounded }) => bounded);
      expect(lets.flatMap(({ name }) => strays(text, rangeOf(text, name)))).toEqual([]);
    },
    time,
  );

  it(
    "random chairs",
    () => {
      fc.assert(
        fc.property(chairs, fc.nat(), (text, pick) => {
          const { tree, design } = studied(text);
          const figures = choicesOf(tree, design).filter(
            ({ kind, plain }) => plain && (kind === "up" || kind === "foot"),
          );
          const choice = figures[pick % figures.length];
          if (choice) expect(strays(text, rangeOf(text, choice.name))).toEqual([]);
        }),
        { numRuns: whole ? 50 : 1, seed: 16 },
      );
    },
    time,
  );
});
