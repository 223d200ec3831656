import { checkBlocks } from "./blocks.ts";
import { blocksOf } from "./braces/braces.ts";
import { attachDescriptions, readComments } from "./comments.ts";
import { eolOf } from "./lines.ts";
import { phraseSteps } from "./phrases.ts";
import type { Problem } from "./problem.ts";
import type { Vocabulary } from "./row.ts";
import { normaliseSteps } from "./spelling.ts";
import { finish, type Steps } from "./steps.ts";
import { tableOf } from "./table.ts";
import { lexSteps } from "./tokens.ts";
import type { Tree } from "./tree.ts";

/**
 * Reads a file. Always gives a tree, whatever the text, with every problem of reading in the order of the text; never
 * throws. Time and memory grow in step with the text.
 */
export const parse = (text: string, vocabulary: Vocabulary): Tree => finish(parseSteps(text, vocabulary));

/** The same, resting now and then. */
export function* parseSteps(text: string, vocabulary: Vocabulary): Steps<Tree> {
  const { tokens, comments: commentTokens } = yield* lexSteps(text);
  yield;
  const normalised = yield* normaliseSteps(text, tokens);
  yield;
  const phrases = yield* phraseSteps(normalised.tokens);
  yield;
  const spelling = normalised.problems.sort(byPlace);
  const unit = fileUnit(text);
  const problems: Problem[] = [];
  const statements = yield* blocksOf(text, phrases, {
    table: tableOf(vocabulary),
    problems,
    newLine: eolOf(text),
    fileUnit: unit,
    told: tellsWithin(spelling),
  });
  const comments = readComments(commentTokens);
  attachDescriptions(text, statements, comments);
  const all = [...spelling, ...problems, ...checkBlocks(text, statements, { vocabulary, unit })];
  return { text, statements, comments, problems: afterQuotes(text, all).sort(byPlace) };
}

/** The unit of bare lengths (`mm`, `cm`, `in`), from the file's `units` line. */
export function fileUnit(text: string): string {
  return /^[ \t]*units[ \t]+(mm|cm|in)\b/m.exec(text)?.[1] ?? "mm";
}

const byPlace = (one: Problem, other: Problem): number => one.start - other.start || one.end - other.end;

/** Whether some problem of a sorted list lies in a stretch of text. */
function tellsWithin(sorted: readonly Problem[]): (start: number, end: number) => boolean {
  return (start, end) => {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]!.start < start) low = middle + 1;
      else high = middle;
    }
    const found = sorted[low];
    return found !== undefined && found.start < Math.max(end, start + 1);
  };
}

/** Leaves out what was found in the rest of a line after an unclosed quote: it was meant as text. */
function afterQuotes(text: string, problems: Problem[]): Problem[] {
  const quotes = problems.filter(({ code }) => code === "unclosed-quote");
  if (quotes.length === 0) return problems;
  const lines = quotes.map(({ start, end }) => {
    const rest = /[\r\n]/.exec(text.slice(end));
    return { start, end: rest === null ? text.length : end + rest.index };
  });
  let at = 0;
  return [...problems].sort(byPlace).filter((problem) => {
    while (at < lines.length && lines[at]!.end < problem.start) at++;
    const line = lines[at];
    return line === undefined || problem.start <= line.start;
  });
}
