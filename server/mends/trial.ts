/**
 * A change tried on a text: whether its finding is gone then, and nothing found that was not found before.
 */

import { codes } from "../../grammar/codes.ts";
import type { Edit, Problem } from "../../grammar/problem.ts";
import type { Steps } from "../../grammar/steps.ts";
import { isOfReading } from "../rules/file/language.ts";
import { unknownSpecies } from "../rules/file/unknown-species.ts";
import { isLateFinding } from "../rules/late-findings.ts";
import type { LateWork } from "../strength/late.ts";
import { deepenSteps, type OtherFiles, type Study, studySteps } from "../study.ts";

export interface Verdict {
  gone: boolean;
  /** Nothing new is found. */
  clean: boolean;
  /** How far past its limit the finding is now, the worst of its subjects; 0 when it is gone or measures nothing. */
  badness: number;
  after: Study;
}

const lineCodes = new Set(codes.filter(({ syntax }) => syntax).map(({ code }) => code));
/** A species is a name as well, misspelt like any other; what its weight then brings to light was there before. */
const isOfNames = ({ code }: Pick<Problem, "code">): boolean =>
  isOfReading({ code }) || code === unknownSpecies.code;

/** How early a finding is made: 0 when a line is read, 1 when names and values are put together, 2 when the chair is judged. */
const stageOf = (problem: Pick<Problem, "code">): number =>
  lineCodes.has(problem.code) ? 0 : isOfNames(problem) ? 1 : 2;

/** The text after some edits, or nothing when one lies over another. */
function edited(text: string, edits: readonly Edit[]): string | undefined {
  const sorted = inOrder(edits);
  if (sorted.some(({ start }, at) => at > 0 && start < (sorted[at - 1]?.end ?? 0))) return undefined;
  return sorted.reduceRight(
    (whole, { start, end, text: put }) => whole.slice(0, start) + put + whole.slice(end),
    text,
  );
}

/** Edits in the order of the text. */
export const inOrder = (edits: readonly Edit[]): Edit[] =>
  [...edits].sort((a, b) => a.start - b.start || a.end - b.end);

/** Tries one change; nothing when its edits cannot all be made. */
export function* trySteps(
  before: Study,
  problem: Problem,
  edits: readonly Edit[],
  files: OtherFiles,
): Steps<Verdict | undefined> {
  const text = edited(before.text, edits);
  if (text === undefined || text === before.text) return undefined;
  const after = yield* studySteps({
    text,
    address: before.address,
    files,
    earlier: before.chair,
    ...lateOf(before, problem),
  });
  return verdictOf(before, after, problem);
}

/** What is late is worked out again only for findings that come of it: it takes longer than all the rest. */
export const lateOf = ({ lateWork }: Study, problem: Problem): { late?: LateWork } =>
  lateWork && isLateFinding(problem) ? { late: lateWork } : {};

/**
 * Whether a change that puts a finding right still does with all that is late worked out too: a smaller tenon may satisfy its rule and
 * overwork its joint. Asked once a mend, not once a trial, since it takes longer than all the rest.
 */
export function* holdsLate(before: Study, problem: Problem, { after }: Verdict): Steps<boolean> {
  if (!before.lateWork || after.late || stageOf(problem) < 2) return true;
  const { gone, clean } = verdictOf(before, yield* deepenSteps(after, before.lateWork), problem);
  return gone && clean;
}

/**
 * Compares what is found before and after. Only findings made as early as the one that is put right, or earlier, count as new: a line
 * that can be read again may well show what else is wrong.
 */
function verdictOf(before: Study, after: Study, problem: Problem): Verdict {
  const [was, is] = [countsOf(before.problems), countsOf(after.problems)];
  const keys = keysOf(problem);
  const named = problem.subject !== undefined;
  const gone = keys.every((key) => (is.get(key) ?? 0) < (named ? 1 : (was.get(key) ?? 0)));
  const news = after.problems.filter((each) => stageOf(each) <= stageOf(problem));
  // A seat that cannot be built any more has nothing found in it.
  const kept = !before.chair.seat || after.chair.seat !== undefined;
  const clean = kept && [...countsOf(news)].every(([key, count]) => count <= (was.get(key) ?? 0));
  const left = after.problems.filter((each) => keysOf(each).some((key) => keys.includes(key)));
  return { gone, clean, badness: Math.max(0, ...left.map(({ badness }) => badness ?? 0)), after };
}

/** What a finding is known by: its code with each part or joint it is about. */
const keysOf = ({ code, subject, alsoOf = [] }: Problem): string[] =>
  [...new Set([subject ?? "", ...alsoOf])].map((each) => `${code} ${each}`);

function countsOf(problems: readonly Problem[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const problem of problems)
    for (const key of keysOf(problem)) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}
