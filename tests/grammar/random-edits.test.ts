import { test } from "vitest";
import { expectedAt } from "../../grammar/expected.ts";
import { applyEdits, formatTree } from "../../grammar/format.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { countOf, time } from "../share.ts";
import { seeded, spliced } from "./fixtures/random.ts";
import { lost, meanings, read } from "./fixtures/reading.ts";
import { messChair, wholeChairs } from "./fixtures/texts.ts";
import { holds } from "./fixtures/whole-tree.ts";

/** How many random edits are tried; the seed makes them the same every time. */
const count = countOf(6000, 100_000);

/** Some lines of a whole chair, so that many edits can be tried in little time. */
function passage(random: () => number, chairs: readonly string[][]): string {
  const lines = chairs[Math.floor(random() * chairs.length)]!;
  const from = Math.floor(random() * lines.length);
  return lines.slice(from, from + 3 + Math.floor(random() * 25)).join("\n");
}

test(`${count} random edits: a whole tree, an answer to completion, a lasting format`, {
  timeout: time,
}, () => {
  const random = seeded(20260314);
  const chairs = wholeChairs().map(([, text]) => text.split("\n"));
  for (let edit = 0; edit < count; edit++) {
    const text = spliced(passage(random, chairs), random);
    const tree = read(text);
    holds(tree);
    if (edit % 5 !== 0) continue;
    expectedAt(tree, Math.floor(random() * (text.length + 1)), vocabulary);
    const edits = formatTree(tree);
    if (edits.length === 0) continue;
    const once = applyEdits(text, edits);
    const again = read(once);
    if (formatTree(again).length > 0) throw new Error(`not formatted at once: ${JSON.stringify(text)}`);
    if (lost(meanings(tree), meanings(again)).length > 0)
      throw new Error(`meaning changed: ${JSON.stringify(text)}`);
    if (comments(once) !== comments(text)) throw new Error(`comments changed: ${JSON.stringify(text)}`);
  }
});

test("whole chairs with random edits give whole trees", () => {
  const random = seeded(7);
  for (let edit = 0; edit < 400; edit++) {
    holds(read(spliced(messChair, random)));
  }
});

/** The comments of a text, without the blanks behind them. */
function comments(text: string): string {
  return read(text)
    .comments.map((comment) => comment.text)
    .join("\n");
}
