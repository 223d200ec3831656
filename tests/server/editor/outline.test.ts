import { expect, test } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { declarations } from "../../../server/editor/names/mentions.ts";
import { outlineOf } from "../../../server/editor/names/outline.ts";
import { wholeChairs } from "../../grammar/fixtures/texts.ts";

test.each(wholeChairs())("%s: the names read off its words are those that are declared", (_, text) => {
  const { declared, title } = outlineOf(text, vocabulary);
  const places = (all: Iterable<{ name: string; start: number; end: number }>) =>
    [...all].map(({ name, start, end }) => ({ name, start, end }));
  expect(places(declared.values())).toEqual(places(declarations(parse(text, vocabulary)).values()));
  if (title !== undefined) expect(text).toContain(`chair "${title}"`);
});

test("files, what is taken away, and names in the midst of a line", () => {
  const text =
    'like "a.chair"; use "b \\"c\\".chair" # use "d.chair"\nwithout seat, front.left\nfoot post x\n';
  const { links, without, declared } = outlineOf(text, vocabulary);
  expect(links).toEqual([
    { word: "like", path: "a.chair" },
    { word: "use", path: 'b "c".chair' },
  ]);
  expect([...without]).toEqual(["seat", "front"]);
  expect(declared.size).toBe(0);
});

test("a text far too long for a chair has none", () => {
  expect(outlineOf("let a = 1\n".repeat(150_000), vocabulary).declared.size).toBe(0);
});
