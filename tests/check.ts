/**
 * Chair text with its findings marked in comments of its own, under the text they stand on:
 *
 *     rake 9deg above 450
 *     #    ^^^^ rake-over-limit 9° … 7° or less
 *
 * The carets stand under the text; `#^^^` marks text at the very start of a line. The figures found and allowed may follow, and are
 * compared when they do. No marker means no finding.
 */
import { expect } from "vitest";
import type { Problem } from "../grammar/problem.ts";
import { resolveNamed } from "../server/main/named-files.ts";
import { lateSteps } from "../server/strength/late.ts";
import { type Asked, type Study, study } from "../server/study.ts";

export const here = "file:///mess/here.chair";

export type Others = Record<string, string>;

/** Studies a text; other files by their names. */
export function studied(text: string, files: Others = {}): Study {
  return study(asked(text, files));
}

/** The same with what is worked out late: strength and moisture. */
export const studiedLate = (text: string, files: Others = {}): Study =>
  study({ ...asked(text, files), late: lateSteps });

const asked = (text: string, files: Others): Asked => ({
  text,
  address: here,
  files: {
    resolve: resolveNamed,
    read: (address) => files[address.slice(address.lastIndexOf("/") + 1)],
  },
});

/** Compares all of a text's findings with its markers, both ways. */
export const check = (text: string, files: Others = {}): Study => compare(text, files, () => true);

/** The same for the findings of some rules alone, and of whatever is marked: other rules have tests of their own. */
export function checkOf(...codes: string[]): (text: string, files?: Others) => Study {
  return (text, files = {}) => compare(text, files, (code) => codes.includes(code));
}

function compare(text: string, files: Others, counts: (code: string) => boolean): Study {
  const result = studied(text, files);
  const marks = marksIn(text);
  const marked = new Set(marks.map((mark) => mark.split(" ")[1]));
  const found = result.problems
    .filter(({ code }) => counts(code) || marked.has(code))
    .map((problem) => lineOf(text, problem));
  const taken = new Set<number>();
  const missing = marks.filter((mark) => {
    const at = found.findIndex((each, k) => !taken.has(k) && (each === mark || each.startsWith(`${mark} `)));
    return at < 0 || !taken.add(at);
  });
  const unexpected = found.filter((_, k) => !taken.has(k));
  expect({ missing, unexpected }).toEqual({ missing: [], unexpected: [] });
  return result;
}

/** The text after the one fix of that title, of the findings of one code. */
export function fixed(text: string, code: string, title: string, files: Others = {}): string {
  const problems = studied(text, files).problems.filter((problem) => problem.code === code);
  const fixes = problems.flatMap((problem) => problem.fixes ?? []);
  const fix = fixes.find((each) => each.title === title);
  if (!fix)
    throw new Error(`no fix "${title}" among: ${fixes.map((each) => each.title).join(", ") || "none"}`);
  const edits = [...fix.edits].sort((a, b) => b.start - a.start);
  return edits.reduce(
    (whole, { start, end, text: put }) => whole.slice(0, start) + put + whole.slice(end),
    text,
  );
}

/** The messages of one code, in the order of the text. */
export const messagesOf = (text: string, code: string, files: Others = {}): string[] =>
  studied(text, files)
    .problems.filter((problem) => problem.code === code)
    .map((problem) => problem.message);

/** What the findings of one code say would have to change where no mend works. */
export const otherwiseOf = (text: string, code: string, files: Others = {}): string[] =>
  studied(text, files)
    .problems.filter((problem) => problem.code === code)
    .map(({ otherwise }) => otherwise ?? "");

/** `line:column-column code found … allowed`, counted from 1. */
function lineOf(text: string, { start, end, code, found, allowed }: Problem): string {
  const line = text.slice(0, start).split("\n").length;
  const column = start - text.lastIndexOf("\n", start - 1);
  const figures = found === undefined && allowed === undefined ? "" : ` ${found ?? ""} … ${allowed ?? ""}`;
  return `${line}:${column}-${column + end - start} ${code}${figures}`;
}

function marksIn(text: string): string[] {
  const marks: string[] = [];
  let marked = 0;
  text.split("\n").forEach((line, k) => {
    const mark = /^(\s*#\s*)(\^+)\s+(\S.*?)\s*$/.exec(line);
    if (!mark) {
      marked = k + 1;
      return;
    }
    const [, lead = "", carets = "", rest = ""] = mark;
    const touching = lead.endsWith("#");
    const column = (touching ? lead.length - 1 : lead.length) + 1;
    marks.push(`${marked}:${column}-${column + carets.length + (touching ? 1 : 0)} ${rest}`);
  });
  return marks;
}
