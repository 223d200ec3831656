/**
 * Several changes at once, against a structural difference taken on its own: both texts are read into plain JSON line by line, without
 * the language's reader, and the two objects are compared key by key.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compare } from "../../../server/compare/compare.ts";
import { study } from "../../../server/study.ts";
import { figureChanged, linesOf, lineTaken, nowhere, pick, placeOf, randomFrom } from "./random-changes.ts";

const samples = ["boathouse-mess-chair", "joined-stool", "mess-armchair"].map((name) =>
  readFileSync(new URL(`../../../samples/${name}.chair`, import.meta.url), "utf8"),
);
const sideOf = (text: string) => ({
  study: study({ text, address: "file:///mess/here.chair", files: nowhere }),
  files: nowhere,
});

/** A text as JSON: parts, each with its properties and the words of each. */
function asJson(text: string): Record<string, Record<string, string[]>> {
  const parts: Record<string, Record<string, string[]>> = {};
  for (const line of linesOf(text)) {
    const place = placeOf(line);
    if (!place) continue;
    parts[place.part] ??= {};
    const properties = parts[place.part]!;
    properties[place.property] = [...(properties[place.property] ?? []), place.shown];
  }
  return JSON.parse(JSON.stringify(parts));
}

/** Part and property of everything that differs between two JSON texts. */
function differences(old: ReturnType<typeof asJson>, now: ReturnType<typeof asJson>): string[] {
  const found = new Set<string>();
  for (const part of new Set([...Object.keys(old), ...Object.keys(now)])) {
    const [before, after] = [old[part] ?? {}, now[part] ?? {}];
    for (const property of new Set([...Object.keys(before), ...Object.keys(after)])) {
      if (JSON.stringify(before[property]) !== JSON.stringify(after[property]))
        found.add(`${part} ${property}`);
    }
  }
  return [...found].sort();
}

describe("several changes at once", () => {
  it.each(samples.map((text, k) => [k, text] as const))(
    "are those of a structural difference of both texts as JSON (sample %i)",
    (k, text) => {
      const random = randomFrom(1970 + k);
      const before = sideOf(text);
      let told = 0;
      for (let run = 0; run < 6; run++) {
        let changed = text;
        for (let left = 5; left > 0; left--)
          changed = pick(random, [figureChanged, figureChanged, lineTaken])(changed, random)?.text ?? changed;
        const { chosen } = compare(before, sideOf(changed));
        const places = [...new Set(chosen.map(({ part, property }) => `${part} ${property}`))].sort();
        expect(places).toEqual(differences(asJson(text), asJson(changed)));
        told += places.length;
      }
      expect(told).toBeGreaterThan(18);
    },
  );
});
