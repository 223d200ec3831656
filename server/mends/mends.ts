/**
 * What puts each finding right, tried: the fixes that come with it, and figures of the text moved until it is gone. The number of
 * trials is bounded, never their time, so that the same text always has the same mends.
 */

import type { Edit, Fix, Mend, Problem } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import { keepsOtherTokens } from "../../grammar/whole-tokens.ts";
import { printLength } from "../design/units.ts";
import { aboutRules } from "../rules/file/about-rules.ts";
import { isOfReading } from "../rules/file/language.ts";
import { figuresOf } from "../sensitivity/figures.ts";
import type { OtherFiles, Study } from "../study.ts";
import { inserted, movementsOf } from "./movements.ts";
import { figuresNear } from "./near.ts";
import { reachedMends, UNMET } from "./reached.ts";
import { searched } from "./search.ts";
import { holdsLate, inOrder, trySteps, type Verdict } from "./trial.ts";

interface Bounds {
  /** Trials for one finding, and for all of one text. */
  each: number;
  all: number;
}

const usualBounds: Bounds = { each: 32, all: 192 };

/** Figures moved for one finding. */
const FIGURES = 8;
/** Mends kept of one finding. */
const KEPT = 2;

/** Gives every finding of a study its `mends`; nothing is done twice. */
export const mend = (study: Study, files: OtherFiles, bounds?: Bounds): void =>
  finish(mendSteps(study, files, study.problems, bounds));

/**
 * The same for some findings of the study, resting within and after each trial. What is broken off is not lost: an editor asks again for
 * the same as soon as the caret moves.
 */
export function* mendSteps(
  study: Study,
  files: OtherFiles,
  problems: readonly Problem[] = study.problems,
  bounds: Bounds = usualBounds,
): Steps<void> {
  let left = bounds.all;
  // Errors first, then in the order of the text.
  const sorted = [...problems].sort((a, b) => weight(a) - weight(b));
  for (const problem of sorted) {
    const most = Math.min(bounds.each, left);
    const trials = { left: most };
    while (!problem.mends) {
      const going = problem.mending ?? mendsOf(study, problem, files, trials);
      // Steps that throw are begun anew by whoever asks next.
      delete problem.mending;
      const { value, done } = going.next();
      if (done) problem.mends = value;
      else {
        problem.mending = going;
        yield;
      }
    }
    left -= most - trials.left;
  }
}

const weights = { error: 0, warning: 1, information: 2, hint: 3 };

const weight = ({ severity }: Problem): number => weights[severity];

function* mendsOf(
  study: Study,
  problem: Problem,
  files: OtherFiles,
  trials: { left: number },
): Steps<Mend[]> {
  const mends: Mend[] = [];
  const attempt = function* (edits: readonly Edit[]): Steps<Verdict | undefined> {
    if (trials.left <= 0) return undefined;
    trials.left--;
    return yield* trySteps(study, problem, edits, files);
  };
  for (const fix of problem.fixes ?? []) {
    if (!keepsOtherTokens(study.text, fix.edits)) continue;
    const verdict = yield* attempt(fix.edits);
    if (verdict?.gone && verdict.clean && (yield* holdsLate(study, problem, verdict)))
      mends.push(mendOf({ ...fix, title: withEffect(fix.title, study, problem, verdict) }));
  }
  if (aboutRules.has(problem.code)) return mends;
  if (isOfReading(problem) || study.problems.some((each) => each.severity === "error" && isOfReading(each)))
    return mends;
  if (problem.code === UNMET) {
    const reached = yield* reachedMends(study, problem, files, KEPT);
    if (reached.length > 0) return [...mends, ...reached];
  }
  if (problem.inserts && problem.inserts.length > 0) {
    const movement = inserted(problem.inserts, study.design.units);
    const moved = yield* searched(
      movement,
      problem.badness ?? 0,
      (number) => attempt(movement.edits(number)),
      [1],
    );
    if (moved && (yield* holdsLate(study, problem, moved.verdict)))
      mends.push({
        title: movement.title(moved.number),
        edits: inOrder(movement.edits(moved.number)),
      });
  }
  const { text, design, tree } = study;
  const figures = figuresNear(study, problem).slice(0, FIGURES);
  for (const movement of movementsOf(figures, [...figuresOf(tree)], { text, unit: design.units })) {
    if (mends.length >= KEPT || trials.left <= 0) break;
    const here = movement.edits(movement.number);
    if (mends.some(({ edits }) => edits.some((edit) => here.some((each) => touches(edit, each))))) continue;
    const moved = yield* searched(movement, problem.badness ?? 0, (number) =>
      attempt(movement.edits(number)),
    );
    if (!moved) continue;
    // What works too hard then may hold where it is moved as far again: one stick more is too few, two are enough.
    for (const number of [moved.number, 2 * moved.number - movement.number]) {
      if (Math.abs(number - movement.number) > movement.most) break;
      const verdict = number === moved.number ? moved.verdict : yield* attempt(movement.edits(number));
      if (!verdict?.gone || !verdict.clean || !(yield* holdsLate(study, problem, verdict))) continue;
      mends.push({
        title: withEffect(movement.title(number), study, problem, verdict),
        edits: inOrder(movement.edits(number)),
      });
      break;
    }
  }
  return mends;
}

/** A change of a lean with what it does to the top of the post, as measured on the chair with the change made. */
function withEffect(
  change: string,
  { chair, design }: Study,
  { code, subject = "" }: Problem,
  { after }: Verdict,
): string {
  const name = code.startsWith("rake-")
    ? subject.split(" and ").find((each) => chair.posts.has(each))
    : undefined;
  const [was, is] = [chair, after.chair].map(({ posts }) =>
    name === undefined ? undefined : posts.get(name)?.top[1],
  );
  if (was === undefined || is === undefined || Math.abs(is - was) < 0.05) return change;
  const by = printLength(Math.abs(is - was), design.units);
  return editorSentence(is > was ? "mend.moves-back" : "mend.moves-forward", { change, by });
}

const touches = (a: { start: number; end: number }, b: { start: number; end: number }): boolean =>
  a.start < b.end && b.start < a.end;

const mendOf = ({ title, edits, certain }: Fix): Mend => ({
  title,
  edits: inOrder(edits),
  ...(certain && { certain }),
});
