/**
 * What meets a requirement: single choices moved to the figure it asks for, as `seatwright reach` finds them.
 */

import type { Mend, Problem } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import type { Steps } from "../../grammar/steps.ts";
import { goalOf } from "../range/goal.ts";
import { reachSteps } from "../range/reach.ts";
import { printFine, printPlace } from "../range/words.ts";
import type { OtherFiles, Study } from "../study.ts";
import { holdsLate, lateOf, trySteps } from "./trial.ts";

/** The requirement that is not met, by its place. */
export const UNMET = "requirement-not-met";

/** Mends of a requirement of this file, the smallest change first: those that bring nothing new. */
export function* reachedMends(
  study: Study,
  problem: Problem,
  files: OtherFiles,
  most: number,
): Steps<Mend[]> {
  const { design, text, address } = study;
  const line = design.requires.find(
    ({ subjectAt, file }) => file === undefined && subjectAt.start === problem.start,
  );
  const goal = line && goalOf(line);
  if (!goal) return [];
  const subject = { text, address, files, ...lateOf(study, problem) };
  const ways = yield* reachSteps({ subject, study, goal });
  const mends: Mend[] = [];
  for (const { choice, written, got, edits, met, comes, goes } of ways) {
    if (mends.length >= most) break;
    if (!met || comes.length > 0 || !goes.some(({ code }) => code === UNMET)) continue;
    const verdict = yield* trySteps(study, problem, edits, files);
    if (!verdict?.gone || !verdict.clean || !(yield* holdsLate(study, problem, verdict))) continue;
    mends.push({
      title: editorSentence("mend.reach", {
        name: choice.name,
        from: printPlace(choice, choice.now),
        to: written,
        value: goal.value,
        got: printFine(got, goal.dimension, design.units),
      }),
      edits,
    });
  }
  return mends;
}
