import fc from "fast-check";
import { expect, test } from "vitest";
import { distance, nearest } from "../../grammar/nearest.ts";

/** Pairs worked in the literature on string distances: kitten and sitting (Levenshtein), CA and ABC (optimal string alignment, 3). */
test.each([
  ["kitten", "sitting", 3],
  ["CA", "ABC", 3],
  ["sunday", "saturday", 3],
  ["abcdef", "badcfe", 3],
  ["", "abc", 3],
  ["rail", "rail", 0],
])("%s to %s takes %i slips", (from, to, slips) => {
  expect(distance(from, to)).toBe(slips);
});

/** The definition itself, by recursion, to compare with. */
function byDefinition(from: string, to: string): number {
  if (from === "" || to === "") return from.length + to.length;
  const same = from.at(-1) === to.at(-1) ? 0 : 1;
  const less = [from.slice(0, -1), to.slice(0, -1)] as const;
  const options = [
    byDefinition(less[0], to) + 1,
    byDefinition(from, less[1]) + 1,
    byDefinition(less[0], less[1]) + same,
  ];
  if (from.length > 1 && to.length > 1 && from.at(-1) === to.at(-2) && from.at(-2) === to.at(-1)) {
    options.push(byDefinition(from.slice(0, -2), to.slice(0, -2)) + 1);
  }
  return Math.min(...options);
}

test("agrees with the definition, and with itself when it may stop early", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 6 });
  fc.assert(
    fc.property(word, word, fc.integer({ min: 0, max: 6 }), (from, to, limit) => {
      const slips = byDefinition(from, to);
      expect(distance(from, to)).toBe(slips);
      expect(distance(from, to, limit)).toBe(slips <= limit ? slips : limit + 1);
    }),
    { numRuns: 300, seed: 5 },
  );
});

test("offers the likest word and nothing far-fetched", () => {
  const words = ["section", "splay", "shape", "stand", "rake", "round"];
  expect(nearest("sectoin", words)).toBe("section");
  expect(nearest("Rake", words)).toBe("rake");
  expect(nearest("spaly", words)).toBe("splay");
  expect(nearest("upholstery", words)).toBeUndefined();
  expect(nearest("rake", words)).toBeUndefined();
  expect(nearest("x", ["y", "in"])).toBeUndefined();
});
