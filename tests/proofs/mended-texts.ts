/**
 * The texts over which mends are proved.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { parse } from "../../grammar/parser.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { everyValue } from "../../grammar/walk.ts";
import { chairs } from "../outside/joinery/random-chairs.ts";
import { examples } from "../rule-examples.ts";
import { projectFile } from "./project-file.ts";

export interface Case {
  name: string;
  text: string;
}

const folder = projectFile("samples");

/** The sample files by name, which chairs name as `use`. */
export const samples: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder).map((file) => [file, readFileSync(projectFile(`samples/${file}`), "utf8")]),
);

/** Each rule's own example. */
export const exampleCases = (): Case[] =>
  examples.map(({ code, example }) => ({ name: `example of ${code}`, text: example }));

const shifts = [-60, -20, -5, 5, 20, 60];

/** Every sample with each of its numbers moved by each share, one at a time. */
export function* movedSamples(): Iterable<Case> {
  for (const [file, text] of Object.entries(samples)) {
    const literals = [...everyValue(parse(text, vocabulary))].filter(
      (value) => value.is === "number" || value.is === "quantity",
    );
    for (const literal of literals) {
      const { start, end } = literal;
      const unit = literal.is === "quantity" ? literal.unit : "";
      for (const shift of shifts) {
        const number = Number((literal.number * (1 + shift / 100)).toFixed(3));
        yield {
          name: `${file}:${text.slice(0, start).split("\n").length} ${text.slice(start, end)} moved by ${shift} %`,
          text: `${text.slice(0, start)}${number}${unit}${text.slice(end)}`,
        };
      }
    }
  }
}

/** Random chairs, always the same. */
export const randomCases = (count: number): Case[] =>
  fc.sample(chairs, { numRuns: count, seed: 12 }).map((text, at) => ({ name: `random chair ${at}`, text }));
