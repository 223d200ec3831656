import { expect, test } from "vitest";
import { formatText } from "../../grammar/format.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { errorsOf, meanings, problemsOf, read } from "./fixtures/reading.ts";
import { messChair } from "./fixtures/texts.ts";
import { holds } from "./fixtures/whole-tree.ts";

const rows = meanings(read(messChair));

test.each([
  ["carriage return and line feed", messChair.replaceAll("\n", "\r\n")],
  ["carriage returns alone", messChair.replaceAll("\n", "\r")],
  ["a byte order mark", `\uFEFF${messChair}`],
  ["tabs", messChair.replaceAll("  ", "\t")],
  ["spaces that do not break", messChair.replace(/^ +/gm, (blank) => "\u00A0".repeat(blank.length))],
  ["no line end at the end", messChair.trimEnd()],
])("%s change nothing", (_, text) => {
  const tree = read(text);
  holds(tree);
  expect(errorsOf(tree)).toEqual([]);
  expect(meanings(tree)).toEqual(rows);
});

test("letters of other scripts make names, and characters beyond the first plane stand in text and comments", () => {
  const text = 'chair "Café 🪑"\n# 🪑 größer\nlet größe = 440\nlet ύψος = größe - 12\n';
  expect(problemsOf(text)).toEqual([]);
  expect(read(text).statements.map(({ word, start }) => [word?.text, start])).toEqual([
    ["chair", 0],
    ["let", 28],
    ["let", 44],
  ]);
});

test("a character beyond the first plane outside text is reported whole", () => {
  expect(problemsOf("units mm 🪑")).toEqual(['unreadable "🪑"']);
});

test("marks of a merge leave both versions readable", () => {
  const text = "<<<<<<< mine\nlet a = 3\n=======\nlet a = 4\n>>>>>>> theirs\nlet b = 5\n";
  expect(meanings(read(text)).filter((one) => one.startsWith("let"))).toHaveLength(3);
  expect(problemsOf(text)).toHaveLength(3);
});

test("ten thousand parentheses in one another", () => {
  const text = `let a = ${"(".repeat(10_000)}1${")".repeat(10_000)}\nlet b = 2\n`;
  const tree = read(text);
  holds(tree);
  expect(errorsOf(tree).map(({ code }) => code)).toEqual(["too-deep"]);
  expect(meanings(tree)[1]).toBe("let name=b, value=2");
  holds(read("(".repeat(10_000)));
  holds(read(`let a = ${"f(".repeat(10_000)}`));
});

test("ten thousand blocks in one another", () => {
  const text = "post a {\n".repeat(10_000);
  holds(read(text));
  const closed = `${text}${"}\n".repeat(10_000)}units mm\n`;
  const tree = read(closed);
  holds(tree);
  expect(meanings(tree).at(-1)).toBe("units unit=mm");
});

test("an expression of ten thousand values, and ten thousand minus signs", () => {
  for (const text of [`let a = 1${" + 1".repeat(10_000)}\n`, `let a = ${"- ".repeat(10_000)}1\n`]) {
    const tree = read(text);
    holds(tree);
    expect(errorsOf(tree).length).toBe(1);
  }
});

/** A file of chairs a megabyte long, and a fifth of that of what is hard to read. */
test.each([
  ["chairs", messChair, 1_000_000],
  ["headers never closed", "post a {\n  section 40 x 40\n", 100_000],
  ["braces that close nothing", "}\n", 100_000],
  ["quotes never closed", 'chair "a\n', 100_000],
  ["misplaced lines in one block", "  let a = 3\n", 100_000],
  ["indented lines of no block", "  section 40 x 40\n", 100_000],
  ["waste", "@ ! ? & $ \u0000 ☃\n", 100_000],
  ["commas", ",,,,,,", 100_000],
  ["one long word", "abcdefghij", 100_000],
  ["hyphens", "a-", 100_000],
  ["digits", "1234567890", 100_000],
  ["marks of a merge", "<<<<<<< a\nunits mm\n=======\nunits in\n>>>>>>> b\n", 100_000],
])("a long file of %s is read whole", { timeout: 30_000 }, (_, piece, length) => {
  // Reading in steps of the square of the length would run into the timeout; how fast it is, `npm run bench` prints.
  holds(read(piece.repeat(Math.ceil(length / piece.length))));
});

test("the same text gives the same tree, however often and after whatever else", () => {
  const before = JSON.stringify(problemsOf(messChair));
  read("post {{{ ((( “");
  expect(JSON.stringify(problemsOf(messChair))).toBe(before);
  expect(meanings(read(messChair))).toEqual(rows);
  expect(formatText(messChair, vocabulary)).toBe(messChair);
});
