import { describe, expect, test } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { wantedProblems } from "../../../server/design/wanted.ts";
import { deg, read } from "./read.ts";
import { sample } from "./sample.ts";

test("the sample is read without a word", () => {
  expect(parse(sample, vocabulary).problems).toEqual([]);
  const design = read(sample);
  expect(design.problems).toEqual([]);
  expect(design.wanted.size).toBe(0);
  expect([...design.names.keys()]).toEqual([
    "seat-height",
    "back-lean",
    "rail-tenon",
    "crest-tenon",
    "slat-tenon",
    "front",
    "back",
    "seat-front",
    "seat-side",
    "seat-back",
    "side-stretcher",
    "back-lower",
    "crest",
    "back-slat",
    "back-rake",
  ]);
});

test("its lets move what depends on them", () => {
  const lower = read(sample.replace("= 440 within", "= 425 within"));
  expect(lower.posts.get("front")?.height?.value).toBe(413);
  expect(lower.rails.get("seat-side")?.ups[0]?.value).toBe(413);
  const knee = read(sample.replace("= 6.5deg", "= 8deg"))
    .posts.get("back")
    ?.knees.find(({ value }) => value.word === "rake");
  expect(knee?.value.slope).toBeCloseTo(deg(8), 12);
});

/** Every how many characters the text is cut off; 1 for a thorough look. */
const step = 5;

/** Reads a broken text and looks that every problem stands inside it. */
function survive(text: string): void {
  const design = read(text);
  for (const problem of [...design.problems, ...wantedProblems(design, [])]) {
    expect(problem.start).toBeGreaterThanOrEqual(0);
    expect(problem.end).toBeGreaterThanOrEqual(problem.start);
    expect(problem.end).toBeLessThanOrEqual(text.length);
    expect(problem.message).toMatch(/[.?]$/);
    for (const { edits } of problem.fixes ?? []) {
      for (const edit of edits) expect(edit.end).toBeLessThanOrEqual(text.length);
    }
  }
}

describe("a broken text always has a design", { timeout: 60_000 }, () => {
  test("cut off anywhere", () => {
    for (let end = 0; end <= sample.length; end += step) survive(sample.slice(0, end));
  });

  test("with any one word left out", () => {
    for (const { index, 0: word } of sample.matchAll(/[\w.-]+|[^\s\w]/g)) {
      survive(sample.slice(0, index) + sample.slice(index + word.length));
    }
  });

  test("with any line left out, the other lines' facts stay", () => {
    const lines = sample.split("\n");
    lines.forEach((_, at) => {
      survive(lines.filter((__, other) => other !== at).join("\n"));
    });
    const design = read(sample.replace("  splay", "").replace("section 40 x 40", "section 40 x"));
    expect(design.posts.get("front")?.section).toBeUndefined();
    expect(design.posts.get("front")?.height?.value).toBe(428);
    expect(design.posts.get("front")?.tapers).toHaveLength(1);
  });

  test("of nonsense", () => {
    for (const text of [
      "}{",
      "let let = let",
      "post {\n",
      "let a = ((((((",
      "rail r { up up up }",
      "like like",
      '"',
      "seat",
      "trim",
      "\u0000",
    ]) {
      survive(text);
    }
    const deep = `let a = ${"(".repeat(10_000)}1${")".repeat(10_000)}\n`;
    survive(deep);
    survive(`let a = ${"-".repeat(2_000)}1\n`);
    survive(`let a = 1${" + 1".repeat(20_000)}\n`);
    const count = 3000;
    const forward = Array.from({ length: count }, (_, n) => `let a${n + 1} = a${n} + 1\n`).join("");
    const long = read(
      `let a0 = 1\n${forward}${"post p {\n  section 40 x 40\n  foot out 0, back 0\n  height a"}${count}\n}\n`,
    );
    expect(long.posts.get("p")?.height?.value).toBe(count + 1);
    expect(long.lets.get("a7")?.value?.value).toEqual({ number: 8, dimension: "length" });
    const backward = Array.from({ length: count }, (_, n) => `let b${n} = b${n + 1} + 1\n`).join("");
    survive(`${backward}let b${count} = b0\n`);
  });
});

test("a large text full of faults stops looking for near names, so that its cost stays in hand", () => {
  const parts = Array.from(
    { length: 1000 },
    (_, n) => `rail part${n} {\n  across prat${n}\n  round 20\n  up 100\n}\n`,
  );
  const { problems } = read(parts.join(""));
  const unknown = problems.filter(({ code }) => code === "unknown-name");
  expect(unknown).toHaveLength(1000);
  expect(unknown[0]?.fixes).toHaveLength(1);
  expect(unknown[999]?.fixes).toBeUndefined();
  // The other is of the rails beyond the 400 parts that a chair may have: one fault, one finding.
  const others = problems.filter(({ code }) => code !== "unknown-name");
  expect(others.map(({ code }) => code)).toEqual(["impossible-size"]);
  expect(others[0]?.message).toMatch(/\b400\b.*\b599 more\b/);
});
