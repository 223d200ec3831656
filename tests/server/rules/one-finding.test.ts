/**
 * One fault, one finding, with its cure: the whole sample with one slip each.
 */
import { expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { messageOf } from "../../../server/mends/words.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { plainView } from "../editor/view.ts";

const mess = samples["boathouse-mess-chair.chair"]!;

function foundIn(text: string): string[] {
  const { study, files } = plainView(text, "file:///samples/chair.chair", { ...samples });
  mend(study, files, { each: 8, all: 16 });
  return study.problems.map((problem) => `${problem.code}: ${messageOf(problem)}`);
}

it("the sample itself has none", () => expect(foundIn(mess)).toEqual([]));

it.each([
  ["a missing `pair`", /^post front pair \{/m, "post front {", [/^not-a-pair: .*make front a pair/]],
  [
    "a rail of one side between pairs",
    /^rail seat-side pair \{/m,
    "rail seat-side {",
    [/^which-side: .*front\.left or front\.right/],
  ],
  [
    "a wrong unit",
    /^units mm/m,
    "units in",
    [/^impossible-size: 11 lengths .*`units in` does not fit them, `units mm` does\.$/],
  ],
  [
    "a length over ten metres",
    /foot out 175,/,
    "foot out 17500,",
    [/^impossible-size: This comes to 17500 mm/],
  ],
  ["an open frame", /^rail seat-back \{[^}]*\}/m, "", [/^unknown-name: .*seat-back/]],
  [
    "a comment of another language",
    /^units mm/m,
    "units mm // all of it",
    [/^sign-spelling: A comment begins with `#`/],
  ],
  [
    "a part of something misspelt",
    /1\/3 of rail/,
    "1/3 of rial",
    [/^unknown-name: .*not of rial; write rail\.$/],
  ],
  [
    "a wood with several species",
    /^timber white-ash/m,
    "timber ash",
    [/^unknown-species: ash may be white-ash or european-ash; which one is meant\?/],
  ],
] as const)("%s", (_, from, to, expected) => {
  expect(mess).toMatch(from);
  const found = foundIn(mess.replace(from, to));
  expect(found).toEqual(expected.map((each) => expect.stringMatching(each)));
});

it("one foot of a pair trimmed: both are offered, and nothing is said of tipping", () => {
  const found = foundIn(
    mess.replace(/^trim back 10.*$/m, "trim back.left 3").replace(/^require seat.*$/m, ""),
  );
  expect(found).toEqual([expect.stringMatching(/^foot-hangs: .*What works: trim both feet of back alike/)]);
});

it("density and moisture in either order come to the same chair", () => {
  const one = mess.replace(/^timber .*$/m, "timber white-ash moisture 9% density 700");
  const other = mess.replace(/^timber .*$/m, "timber white-ash density 700 moisture 9%");
  const weigh = (text: string) =>
    plainView(text, "file:///samples/chair.chair").study.chair.values.get("weight")?.number;
  expect(foundIn(one)).toEqual(foundIn(other));
  expect(weigh(one)).toBeCloseTo(weigh(other)!, 12);
  expect(weigh(one)).not.toBeCloseTo(weigh(mess)!, 2);
});
