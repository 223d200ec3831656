/**
 * Laws of the fixes of reading, on damaged chairs: a fix changes whole words only; all of them at once leave fewer errors than before and
 * change no line that had none; a second time changes nothing; a fix that is offered makes no circle of values.
 */
import { applyEdits } from "../../grammar/format.ts";
import { parse } from "../../grammar/parser.ts";
import type { Problem } from "../../grammar/problem.ts";
import { finish } from "../../grammar/steps.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { evaluate } from "../../server/design/evaluate.ts";
import { changedLines } from "../../server/editor/changed-lines.ts";
import { errorsIn, fixedText } from "../../server/editor/fix-all.ts";
import { spliced } from "../grammar/fixtures/random.ts";
import { wholeChairs } from "../grammar/fixtures/texts.ts";
import { below, fuzz, oneOf } from "./tried.ts";

const files = { resolve: (_from: string, path: string) => path, read: () => undefined };

/** What reading finds: of spelling, of names and of units. */
function found(text: string): Problem[] {
  const tree = parse(text, vocabulary);
  return [...tree.problems, ...evaluate({ tree, address: "chair", files }).problems];
}

function* reread(text: string) {
  yield;
  return found(text);
}

const fixed = (text: string, problems: readonly Problem[]) => finish(fixedText({ text, problems, reread }));
const chairs = wholeChairs().map(([, text]) => text.split("\n"));

/** What people type wrongly, beside what random edits make of a text. */
const slips: readonly ((random: () => number) => [RegExp, string])[] = [
  (random) => [
    /(\d)\b/,
    `$1${oneOf(random, ["dg", "degkg", ".5", "..5", "/7.5", ".3.2026", "°", '"', "½", ",5", "-3"])}`,
  ],
  () => [/, (\d)/, " $1"],
  () => [/ - /, " "],
  () => [/ - /, " -"],
  () => [/^let .*\n/m, ""],
  () => [/^(post|rail|joint|slat) .*\{\n/m, ""],
  () => [/(\d+) x (\d+)/, "$1x$2mm"],
  () => [/deg/, ""],
  () => [/ (to|above|from|below) /, " "],
  (random) => [/\n {2}([a-z])/, `\n  ${oneOf(random, ["x", "$1$1", "", "-"])}`],
];

fuzz("certain fixes keep their laws", 150, (random) => {
  const lines = oneOf(random, chairs);
  const from = below(random, lines.length);
  const passage = lines.slice(from, from + 3 + below(random, 25)).join("\n");
  const slip = oneOf(random, slips)(random);
  const text = random() < 0.5 ? spliced(passage, random) : passage.replace(...slip);
  const problems = found(text);
  const once = fixed(text, problems);
  if (once === text) return undefined;
  const after = found(once);
  const laws: Record<string, boolean> = {
    "twice is once": fixed(once, after) === once,
    "fewer errors": errorsIn(after) < errorsIn(problems) || after.length < problems.length,
    "no line without a finding is changed": linesWithout(text, problems).every((line) => once.includes(line)),
    "the edits make the text": applyEdits(text, changedLines(text, once)) === once,
    "no new circle": circles(after) <= circles(problems),
  };
  const broken = Object.keys(laws).filter((law) => !laws[law]);
  return broken.length === 0 ? undefined : { broken, text: JSON.stringify(text), once: JSON.stringify(once) };
});

const circles = (problems: readonly Problem[]) =>
  problems.filter(({ code }) => code === "circular-value").length;

/** The lines, with their line ends, in which nothing was found. */
function linesWithout(text: string, problems: readonly Problem[]): string[] {
  const lines: string[] = [];
  let start = 0;
  for (const line of text.match(/[^\r\n]*(?:\r\n|\r|\n)/g) ?? []) {
    const end = start + line.length;
    if (!problems.some((problem) => problem.start < end && problem.end >= start)) lines.push(line);
    start = end;
  }
  return lines;
}
