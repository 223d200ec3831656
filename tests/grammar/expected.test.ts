import { describe, expect, test } from "vitest";
import { expectedAt } from "../../grammar/expected.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { describe as inWords } from "../../grammar/wording.ts";
import { read } from "./fixtures/reading.ts";
import { messChair } from "./fixtures/texts.ts";

/** What could stand at the `|` of a text. */
function at(marked: string) {
  const offset = marked.indexOf("|");
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  return expectedAt(read(text), offset, vocabulary);
}

/** A text with the cursor, what kind of place it is in which block, and what could stand there. */
const goesOn: [string, string, string[]][] = [
  ["post a {\n  section 40 |", "part in post", ["`x`"]],
  ["post a {\n  section 40|\n}", "unit in post", []],
  ["post a {\n  foot out 20, |\n}", "part in post", ["`back`"]],
  ["post a {\n  foot out 20, b|\n}", "part in post", ["`back`"]],
  ["post a {\n  foot out - |", "value in post", ["a length"]],
  ["rail a {\n  up 3 + |\n}", "value in rail", ["a length"]],
  ["rail a {\n  up max(3, se|)\n}", "value in rail", ["a length"]],
  ["rail a {\n  face |\n}", "part in rail", ["`flush`", "`inset`", "`centred`"]],
  ["joint a {\n  tenon thick 1/3 of |\n}", "share in joint", ["`rail`", "`post`"]],
  ["seat |", "part in file", ["`drop-in`", "`board`", "`woven`", "`upholstered`", "`solid`"]],
  ["accept tenon-too-thin on back-slat |", "part in file", ["`to`", "`because`"]],
  [
    "angle a {\n  between seat, |\n  limit 4deg to 5deg\n}",
    "part in angle",
    ["the name of a part", "`seat`", "`floor`"],
  ],
  ["rail b {\n  end x {\n    set |", "part in end", ["`centred`", "a length"]],
  ["units |\nsitter adult", "part in file", ["`mm`", "`cm`", "`in`"]],
  ["note |", "part in file", ["a date such as `2026-03-14`"]],
  ["require seat.|", "part in file", ["a value"]],
  ['use "joi|"', "text in file", ['text in quotes `"…"`']],
  ["units mm # a com|ment", "comment in file", []],
  ["unknown stuff |", "part in file", []],
  ["post front |{\n}", "part in file", ["`pair`"]],
];

test.each(goesOn)("%j: %s", (marked, place, shapes) => {
  const found = at(marked);
  expect(`${found.at} in ${found.kind}`).toBe(place);
  expect(inWords(found.shapes)).toEqual(shapes);
});

describe("a word that begins a line", () => {
  const words = (marked: string) => at(marked).rows.map(({ word }) => word);

  test("belongs to the block it stands in, closed or not", () => {
    for (const marked of [
      "post a {\n  |\n}",
      "post a {\n  |",
      "post a {\n  se|\n\nrail b {\n}",
      "post a {\n |}",
    ]) {
      expect(words(marked)).toContain("kick");
      expect(words(marked)).not.toContain("post");
    }
    expect(words("post a {\n}\n|")).toContain("rail");
    expect(words("post a { section 3 x 3; |")).toContain("kick");
  });

  test("stands in the block that a header is about to have", () => {
    expect(words("post a pair\n  |")).toContain("kick");
    expect(words("post a pair\n\n|")).toContain("post");
  });

  test("is not offered when its question is answered, unless the cursor is in that answer", () => {
    expect(words("post a {\n  round 30\n  |\n}")).not.toContain("section");
    expect(words("post a {\n  rou|nd 30\n}")).toContain("section");
    expect(words("units mm\n|")).not.toContain("units");
    expect(words("let a = 3\n|")).toContain("let");
  });

  test("says what has been typed and what would be replaced", () => {
    const found = at("post a {\n  sec|tion 3 x 3\n}");
    expect(found.typed).toBe("sec");
    expect(found.span).toEqual({ start: 11, end: 18 });
    expect(at("require seat.sl|").typed).toBe("seat.sl");
  });
});

test("a number knows which slot a unit would belong to", () => {
  expect(at("post a {\n  rake 4|").number?.slot).toBe("angle");
  expect(at("post a {\n  rake 4 |").number?.slot).toBe("angle");
  expect(at("post a {\n  rake 4deg |").number).toBeUndefined();
});

test("a whole line says so, and whether a block may open", () => {
  expect(at("post a |")).toMatchObject({ complete: true, opens: true });
  expect(at("post a {\n  foot out 3 |")).toMatchObject({ complete: true, opens: false });
  expect(at("let a = 3 + |").complete).toBe(false);
});

test("at every place of a whole chair the word that stands there is among what could", () => {
  const tree = read(messChair);
  const missed: string[] = [];
  const units = vocabulary.words.filter(({ sort }) => sort === "unit").map((unit) => unit.word);
  for (const { 0: word, index } of messChair.matchAll(/[a-z][a-z-]*/g)) {
    const found = expectedAt(tree, index + 1, vocabulary);
    if (found.at === "comment" || found.at === "text" || found.typed === "") continue;
    if (found.number !== undefined && [...units, "of"].includes(word)) continue;
    const words = [
      ...found.rows.map((row) => row.word),
      ...found.shapes.flatMap((shape) =>
        shape.is === "word" ? [shape.word] : shape.is === "slot" ? (shape.words ?? []) : [],
      ),
    ];
    const takesName = found.shapes.some((shape) => shape.is === "slot" && shape.slot !== "word");
    if (!words.includes(word) && !takesName) missed.push(`${word} at ${index}`);
  }
  expect(missed).toEqual([]);
});
