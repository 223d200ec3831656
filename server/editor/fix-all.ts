/**
 * All certain fixes of a file at once, as an editor does on saving. Each is tried before it is taken: it must leave fewer errors than
 * there were, and change no line in which nothing was found. Gone on with until none is left, so that a second time changes nothing.
 */

import { applyEdits } from "../../grammar/format.ts";
import type { Edit, Fix, Problem, Span } from "../../grammar/problem.ts";
import type { Steps } from "../../grammar/steps.ts";
import { keepsOtherTokens } from "../../grammar/whole-tokens.ts";
import { meet } from "./view.ts";

interface Fixing {
  text: string;
  /** What is found in the text. */
  problems: readonly Problem[];
  /** What is found in another text in its place. */
  reread(text: string): Steps<readonly Problem[]>;
}

interface Fixed {
  text: string;
  problems: readonly Problem[];
}

interface Certain {
  problem: Problem;
  edits: readonly Edit[];
}

/** As often as a text is read at most; each time mends something, or shows that something does not mend it. */
const MOST_READ = 400;

/** The text with every certain fix applied that is one; the text itself when there is none. */
export function* fixedText({ text, problems, reread }: Fixing): Steps<string> {
  let now: Fixed = { text, problems };
  let read = 0;
  /** Fixes that proved to be none, by what stands where they apply. */
  const refused = new Set<string>();
  while (read < MOST_READ) {
    const fixes = certainFixes(now).filter((fix) => !refused.has(called(now.text, fix)));
    if (fixes.length === 0) break;
    const waiting = [fixes];
    let better: Fixed | undefined;
    for (let some = waiting.pop(); some && !better && read < MOST_READ; some = waiting.pop()) {
      const edits = some.flatMap((fix) => fix.edits).sort((one, other) => one.start - other.start);
      const tried = applyEdits(now.text, edits);
      read++;
      const found = yield* reread(tried);
      if (isBetter(now, some, found)) better = { text: tried, problems: found };
      else if (some.length === 1) refused.add(called(now.text, some[0]!));
      else waiting.push(some.slice(some.length >> 1), some.slice(0, some.length >> 1));
      yield;
    }
    if (!better) continue;
    now = better;
    refused.clear();
  }
  return now.text;
}

/** The certain fixes of a text that do not touch each other; a finding with several leaves the choice to the maker. */
function certainFixes({ text, problems }: Fixed): Certain[] {
  const taken: Certain[] = [];
  const edited: Edit[] = [];
  for (const problem of problems) {
    const [fix, second] = problem.fixes?.filter(({ certain }) => certain) ?? [];
    if (fix === undefined || second !== undefined || !isWhole(text, problem, problems, fix)) continue;
    if (fix.edits.some((edit) => edited.some((other) => meet(edit, other)))) continue;
    edited.push(...fix.edits);
    taken.push({ problem, edits: fix.edits });
  }
  return taken;
}

/** Whether a fix changes whole words only, on lines in which something was found. New lines change no line. */
function isWhole(text: string, problem: Problem, problems: readonly Problem[], { edits }: Fix): boolean {
  const found = (line: Span) =>
    meet(problem, line) || problems.some((other) => other.severity === "error" && meet(other, line));
  return (
    keepsOtherTokens(text, edits) &&
    edits.every((edit) => isNewLines(text, edit) || linesOf(text, edit).every(found))
  );
}

/** Whether an edit puts in nothing but lines of their own, behind a line or before one. */
function isNewLines(text: string, { start, end, text: put }: Edit): boolean {
  if (start !== end) return false;
  const behind = /^[\r\n]/.test(put) && /^(?:[\r\n]|$)/.test(text.slice(start, start + 1));
  const before = /[\r\n][ \t]*$/.test(put) && /(?:^|[\r\n])[ \t]*$/.test(text.slice(0, start));
  return behind || before;
}

function linesOf(text: string, { start, end }: Span): Span[] {
  const lines: Span[] = [];
  let at = Math.max(text.lastIndexOf("\n", start - 1), text.lastIndexOf("\r", start - 1)) + 1;
  while (at <= end) {
    const rest = text.slice(at).search(/[\r\n]/);
    const stop = rest < 0 ? text.length : at + rest;
    lines.push({ start: at, end: stop });
    at = stop + 1;
  }
  return lines;
}

/**
 * Whether each fix takes away what it was offered for, an error or a lesser finding, and brings no error in its place. A name put in that
 * makes something depend on itself was not the one meant.
 */
function isBetter(before: Fixed, fixes: readonly Certain[], after: readonly Problem[]): boolean {
  const mended = fixes.filter(({ problem }) => problem.severity === "error").length;
  return (
    errorsIn(after) <= errorsIn(before.problems) - mended &&
    circlesIn(after) <= circlesIn(before.problems) &&
    after.length <= before.problems.length - (fixes.length - mended)
  );
}

export const errorsIn = (problems: readonly Problem[]): number =>
  problems.filter(({ severity }) => severity === "error").length;

const circlesIn = (problems: readonly Problem[]): number =>
  problems.filter(({ code }) => code === "circular-value").length;

/** A fix by what it changes and where, so that it is known again when other lines have moved. */
function called(text: string, { problem, edits }: Certain): string {
  const lines = linesOf(text, problem).map(({ start, end }) => text.slice(start, end));
  return JSON.stringify([problem.code, lines, edits.map((edit) => [edit.start - problem.start, edit.text])]);
}
