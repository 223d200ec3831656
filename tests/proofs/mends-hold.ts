/**
 * Whether the mends of a text hold: each is made in the text and the chair worked out again, without the code that tried it first.
 */
import { codes } from "../../grammar/codes.ts";
import type { Mend, Problem } from "../../grammar/problem.ts";
import { finish } from "../../grammar/steps.ts";
import { designCodes } from "../../server/design/codes.ts";
import { printLength } from "../../server/design/units.ts";
import { resolveNamed } from "../../server/main/named-files.ts";
import { mendSteps } from "../../server/mends/mends.ts";
import { messageOf } from "../../server/mends/words.ts";
import { printFine } from "../../server/range/words.ts";
import { lateSteps } from "../../server/strength/late.ts";
import { type Study, study } from "../../server/study.ts";
import { type Case, samples } from "./mended-texts.ts";

export interface Outcome {
  /** Findings, those with a mend, and mends in all. */
  findings: number;
  mended: number;
  mends: number;
  /** One line for each mend that does not hold. */
  failures: string[];
}

const files = {
  resolve: resolveNamed,
  read: (address: string) => samples[address.slice(address.lastIndexOf("/") + 1)],
};
/** What is found when lines are read, then when names (those of species too) and values are put together; all else is of the chair. */
const stages = [
  codes.filter(({ syntax }) => syntax),
  [...codes, ...designCodes, { code: "unknown-species" }],
].map((list) => new Set(list.map(({ code }) => code)));
const stageOf = (code: string) => [0, 1].find((at) => stages[at]?.has(code)) ?? 2;

/** With what is found late, of strength and moisture: a maker meets that as well. */
const workedOut = (text: string): Study =>
  study({ text, address: "file:///proof/chair.chair", files, late: lateSteps });

/** Finds what is wrong with a text, and makes every mend of those findings that are asked for, one at a time. */
export function outcomeOf(
  { name, text }: Case,
  concerns: (problem: Problem) => boolean = () => true,
): Outcome {
  const before = workedOut(text);
  const found = before.problems.filter(concerns);
  finish(mendSteps(before, files, found));
  const outcome: Outcome = { findings: found.length, mended: 0, mends: 0, failures: [] };
  for (const problem of found) {
    const { mends = [] } = problem;
    if (mends.length > 0) outcome.mended++;
    for (const { title, edits } of mends) {
      outcome.mends++;
      const wrong = whatIsWrong(before, problem, { title, edits });
      if (wrong)
        outcome.failures.push(`${name}: "${title}" for [${problem.code}] ${messageOf(problem)}: ${wrong}`);
    }
  }
  return outcome;
}

function whatIsWrong(before: Study, problem: Problem, { title, edits }: Mend): string | undefined {
  let text = before.text;
  let last = text.length;
  for (const { start, end, text: put } of [...edits].reverse()) {
    if (end > last || start > end) return "its edits lie over one another or out of order";
    text = text.slice(0, start) + put + text.slice(end);
    last = start;
  }
  const after = workedOut(text);
  if (problem.subject === undefined) {
    const count = ({ problems }: Study) => problems.filter(({ code }) => code === problem.code).length;
    if (count(after) >= count(before)) return "the finding is still there";
  } else if (pairs(after.problems).some((pair) => pairs([problem]).includes(pair)))
    return "the finding is still there";
  const known = new Set(pairs(before.problems));
  const news = after.problems.filter(
    (each) =>
      (each.severity === "error" || each.severity === "warning") &&
      stageOf(each.code) <= stageOf(problem.code),
  );
  const first = pairs(news).find((pair) => !known.has(pair));
  if (first) return `new: ${first}`;
  return figureThatDiffers(title, before, after);
}

/** What a title promises of the chair after it, against what the chair then has, as both are printed. */
function figureThatDiffers(title: string, before: Study, after: Study): string | undefined {
  const [, way, told, towards] = /which moves its (top) (.+) (back|forward)$/.exec(title) ?? [];
  if (way !== undefined) {
    const moved = [...before.chair.posts].map(
      ([name, { top }]) => (after.chair.posts.get(name)?.top[1] ?? top[1]) - top[1],
    );
    const printed = moved.map(
      (by) => `${printLength(Math.abs(by), before.design.units)} ${by > 0 ? "back" : "forward"}`,
    );
    if (!printed.includes(`${told} ${towards}`)) return `no post's top moves ${told} ${towards}: ${printed}`;
  }
  const [, value = "", is] = /: ([\w.-]+) is then (.+)$/.exec(title) ?? [];
  const worked = after.chair.values.get(value);
  if (is === undefined || worked === undefined) return undefined;
  const found = printFine(worked.number, worked.dimension, before.design.units);
  return found === is ? undefined : `${value} is then ${found}`;
}

/** Codes with subjects. */
const pairs = (problems: readonly Problem[]): string[] =>
  problems.flatMap(({ code, subject = "", alsoOf = [] }) =>
    [subject, ...alsoOf].map((each) => `${code} on ${each}`),
  );

/** The first mend of the first finding that has one; no other finding's mends are tried. */
function firstMend(current: Study, concerns: (problem: Problem) => boolean): Mend | undefined {
  for (const problem of current.problems.filter(concerns)) {
    finish(mendSteps(current, files, [problem]));
    if (problem.mends?.[0]) return problem.mends[0];
  }
  return undefined;
}

/**
 * Follows the first mend of the first finding that has one, again and again; a line when a text comes round again, nothing when it
 * comes to rest.
 */
export function roundAndRound(
  { name, text }: Case,
  concerns: (problem: Problem) => boolean = () => true,
): string | undefined {
  const seen = new Set<string>();
  let now = text;
  for (let round = 0; round < 40; round++) {
    if (seen.has(now)) return `${name}: mends lead back to a text that was there before`;
    seen.add(now);
    const edits = firstMend(workedOut(now), concerns)?.edits;
    if (!edits) return undefined;
    now = edits.reduceRight(
      (whole, { start, end, text: put }) => whole.slice(0, start) + put + whole.slice(end),
      now,
    );
  }
  return `${name}: mends never come to rest`;
}
