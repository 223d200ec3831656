/**
 * A range against a plain scan: at every place of a fine scan the findings are those whose bands hold the place.
 */
import fc from "fast-check";
import type { Range } from "../../../server/range/bands.ts";
import { choicesOf, edited, exactly, rewrite } from "../../../server/range/choice.ts";
import { knownBy } from "../../../server/range/findings.ts";
import { rangeOf, studied } from "../../server/range/files.ts";
import { chairs } from "../joinery/random-chairs.ts";

/** A chair and one choice of it. */
export interface Case {
  called: string;
  text: string;
  choice: string;
}

/** Every choice of a chair with a range of its own. */
export function boundedCases(called: string, text: string): Case[] {
  const { tree, design } = studied(text);
  return choicesOf(tree, design).flatMap(({ bounded, name }) =>
    bounded ? [{ called, text, choice: name }] : [],
  );
}

/** Random chairs, of each one figure that says where a post stands or a rail lies; always the same. */
export function randomCases(count: number): Case[] {
  return fc.sample(fc.tuple(chairs, fc.nat()), { numRuns: count, seed: 16 }).map(([text, pick], k) => {
    const { tree, design } = studied(text);
    const figures = choicesOf(tree, design).filter(
      ({ kind, plain }) => plain && (kind === "up" || kind === "foot"),
    );
    const choice = figures[pick % figures.length];
    if (!choice) throw new Error(`no figure to move in ${text}`);
    return { called: `random chair ${k + 1}`, text, choice: choice.name };
  });
}

/** Where a scan of so many places finds other things than the range says, over more than the gap that every range may miss. */
export function strays({ text, choice: name }: Case, places: number): string[] {
  const range = rangeOf(text, name);
  const { choice, low, high, bands, tried } = range;
  const step = (high - low) / places;
  const gap = (high - low) / (tried - 1);
  const found = new Map<string, number[]>();
  for (let k = 0; k <= places; k++) {
    const place = low + k * step;
    if (atAnEdge(range, place)) continue;
    const here = knownBy(studied(edited(text, [rewrite(choice, exactly(choice, place))])).problems);
    const told = bands.filter(({ from, to }) => place > from && place < to);
    const keys = new Set(told.map(({ code, subject }) => `${code}|${subject}`));
    const names = new Set([...here.values()].map(({ code, subject }) => `${code}|${subject}`));
    for (const key of [...keys, ...names])
      if (keys.has(key) !== names.has(key)) found.set(key, [...(found.get(key) ?? []), place]);
  }
  return [...found].flatMap(([key, at]) =>
    runsOf(at, 2.5 * step)
      .filter((run) => run.at(-1)! - run[0]! >= gap - step)
      .map((run) => `${choice.name}: ${key} at ${run.join(", ")}`),
  );
}

/** Whether a place is no further from an edge than edges are found to. */
const atAnEdge = ({ bands, choice }: Range, place: number): boolean =>
  bands.some(({ from, to }) => Math.min(Math.abs(place - from), Math.abs(place - to)) <= choice.step / 20);

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
