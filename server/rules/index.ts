/**
 * The one table of rules: diagnostics, settings, explanations and the reference are all made from it.
 */
import type { Problem, Related } from "../../grammar/problem.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Chair } from "../chair/chair.ts";
import type { Design } from "../design/design.ts";
import { acceptAcceptsNothing, idleAccepts } from "./accept-accepts-nothing.ts";
import { acceptWithoutReason } from "./accept-without-reason.ts";
import { merged, settle } from "./accepts.ts";
import { angleNotMet } from "./angle-not-met.ts";
import { armHeightOutside } from "./arm-height-outside.ts";
import { armTooHighForTable } from "./arm-too-high-for-table.ts";
import { backLeanOutside } from "./back-lean-outside.ts";
import { backTooLow } from "./back-too-low.ts";
import { cannotBeAssembled } from "./cannot-be-assembled.ts";
import { cannotBeBuilt } from "./cannot-be-built.ts";
import { crestAtShoulderBlades } from "./crest-at-shoulder-blades.ts";
import { type Doubt, doubtIn } from "./doubt.ts";
import { endReachesNothing } from "./end-reaches-nothing.ts";
import { feetCannotDrawBack } from "./feet-cannot-draw-back.ts";
import { footHangs } from "./foot-hangs.ts";
import { haunchMissing } from "./haunch-missing.ts";
import { languageRules } from "./language.ts";
import { limitDoesNotFit } from "./limit-does-not-fit.ts";
import { boundsOf } from "./limits.ts";
import { loinsUnsupported } from "./loins-unsupported.ts";
import { memberWithoutJoint } from "./member-without-joint.ts";
import { mortiseBreaksOut } from "./mortise-breaks-out.ts";
import { mortiseNearEnd } from "./mortise-near-end.ts";
import { mortiseTooWide } from "./mortise-too-wide.ts";
import { mortiseWallThin } from "./mortise-wall-thin.ts";
import { plain } from "./names.ts";
import { noRoom } from "./no-room.ts";
import { partsPassThrough } from "./parts-pass-through.ts";
import { pegDrawsTooFar } from "./peg-draws-too-far.ts";
import { pegMisplaced } from "./peg-misplaced.ts";
import { designOf } from "./place.ts";
import { postTiedOneWay } from "./post-tied-one-way.ts";
import { postWeakened } from "./post-weakened.ts";
import { railMissesPost } from "./rail-misses-post.ts";
import { railWinds } from "./rail-winds.ts";
import { rakeOverLimit } from "./rake-over-limit.ts";
import { rakeUnderLimit } from "./rake-under-limit.ts";
import { requirementNotJudged } from "./requirement-not-judged.ts";
import { requirementNotMet } from "./requirement-not-met.ts";
import type { Rule } from "./rule.ts";
import type { Finding } from "./say.ts";
import { seatFallsForward } from "./seat-falls-forward.ts";
import { seatRingOpen } from "./seat-ring-open.ts";
import { seatSlopeOutside } from "./seat-slope-outside.ts";
import { seatTooDeep } from "./seat-too-deep.ts";
import { seatTooHigh } from "./seat-too-high.ts";
import { seatTooLow } from "./seat-too-low.ts";
import { seatTooNarrow } from "./seat-too-narrow.ts";
import { shoulderOnCurve } from "./shoulder-on-curve.ts";
import { shoulderOverKnee } from "./shoulder-over-knee.ts";
import { shoulderTooNarrow } from "./shoulder-too-narrow.ts";
import { tenonShortGrain } from "./tenon-short-grain.ts";
import { tenonTooBroad } from "./tenon-too-broad.ts";
import { tenonTooLong } from "./tenon-too-long.ts";
import { tenonTooShort } from "./tenon-too-short.ts";
import { tenonTooThick } from "./tenon-too-thick.ts";
import { tenonTooThin } from "./tenon-too-thin.ts";
import { tenonTooWide } from "./tenon-too-wide.ts";
import { tenonsMeet } from "./tenons-meet.ts";
import { tipsBackwards } from "./tips-backwards.ts";
import { tipsForwards } from "./tips-forwards.ts";
import { tipsSideways } from "./tips-sideways.ts";
import { tipsUnderChild } from "./tips-under-child.ts";
import { tipsWhenLeantBack } from "./tips-when-leant-back.ts";
import { unknownRule } from "./unknown-rule.ts";
import { unknownSpecies } from "./unknown-species.ts";

/** Every rule, those about the chair first, then those about the file's own claims, then the language's. */
export const rules: readonly Rule[] = [
  rakeOverLimit,
  rakeUnderLimit,
  tenonTooThin,
  tenonTooThick,
  tenonTooWide,
  tenonTooBroad,
  tenonTooLong,
  mortiseTooWide,
  mortiseBreaksOut,
  tenonsMeet,
  mortiseWallThin,
  mortiseNearEnd,
  haunchMissing,
  tenonTooShort,
  shoulderTooNarrow,
  tenonShortGrain,
  pegMisplaced,
  pegDrawsTooFar,
  postWeakened,
  cannotBeAssembled,
  endReachesNothing,
  railMissesPost,
  postTiedOneWay,
  seatRingOpen,
  memberWithoutJoint,
  shoulderOnCurve,
  shoulderOverKnee,
  railWinds,
  partsPassThrough,
  footHangs,
  tipsBackwards,
  tipsForwards,
  tipsSideways,
  tipsUnderChild,
  tipsWhenLeantBack,
  seatTooHigh,
  seatTooLow,
  seatTooDeep,
  seatTooNarrow,
  seatSlopeOutside,
  seatFallsForward,
  backLeanOutside,
  backTooLow,
  crestAtShoulderBlades,
  loinsUnsupported,
  armHeightOutside,
  armTooHighForTable,
  feetCannotDrawBack,
  unknownSpecies,
  noRoom,
  cannotBeBuilt,
  angleNotMet,
  requirementNotMet,
  requirementNotJudged,
  unknownRule,
  limitDoesNotFit,
  acceptWithoutReason,
  acceptAcceptsNothing,
  ...languageRules,
];

const byCode = new Map(rules.map((rule) => [rule.code, rule]));

/** A rule by its code. */
export const ruleOf = (code: string): Rule | undefined => byCode.get(code);

export interface Judged {
  tree: Tree;
  design: Design;
  chair: Chair;
}

export interface Judgement {
  problems: Problem[];
  /** What the file accepts, each with its reason. */
  accepted: { problem: Problem; because: string }[];
}

/**
 * What all rules find, in the order of the text, both sides of a pair told once, less what the file accepts. `also` are the problems of
 * the stages before, which are put among them; a warning there can be accepted too. Never throws.
 */
export const judge = (of: Judged, also: readonly Problem[] = []): Judgement => finish(judgeSteps(of, also));

/** The same, resting after each rule. */
export function* judgeSteps(
  { tree, design, chair }: Judged,
  also: readonly Problem[] = [],
): Steps<Judgement> {
  const doubt = doubtIn(chair, [...tree.problems, ...design.problems, ...also]);
  const found: Finding[] = [];
  for (const rule of rules) {
    for (const finding of foundBy(rule, { tree, design, chair }, doubt))
      if (!doubt.about(finding.subject ?? "")) found.push(finding);
    yield;
  }
  const settled = settle(found, design.accepts);
  const others = settle(
    also.filter(({ severity }) => severity !== "error"),
    design.accepts,
  );
  const idle = doubt.anywhere ? [] : settled.idle.filter((line) => others.idle.includes(line));
  const told = [...settled.problems, ...idleAccepts(chair, tree.text, idle, rules)];
  const problems = [
    ...also.filter(({ severity }) => severity === "error"),
    ...others.problems,
    ...merged(told).map(({ finding, others: subjects }) => finished(finding, subjects, chair)),
  ];
  const reasons = new Map(settled.accepted.map(({ problem, because }) => [problem, because]));
  const accepted = merged([...reasons.keys()]).map(({ finding, others: subjects }) => ({
    problem: finished(finding, subjects, chair),
    because: reasons.get(finding) ?? "",
  }));
  return {
    problems: problems.sort((a, b) => a.start - b.start || a.end - b.end),
    accepted: [...others.accepted, ...accepted],
  };
}

/** The rules' own findings, without those of the stages before. */
export const findings = (of: Judged): Problem[] => judge(of).problems;

function foundBy(rule: Rule, { tree, design, chair }: Judged, doubt: Doubt): Finding[] {
  if (!rule.find || (rule.asksForMissing && doubt.anywhere)) return [];
  const context = { tree, design, chair, rules, ...boundsOf(rule, design) };
  try {
    return rule.find(context) as Finding[];
  } catch {
    // One rule that fails on a chair it did not foresee costs its own findings, not the others'.
    return [];
  }
}

/** A finding as others see it, with the other parts it speaks of beside it. */
function finished({ badness: _, ...problem }: Finding, subjects: readonly string[], chair: Chair): Problem {
  const related: Related[] = [...(problem.related ?? [])];
  const seen = new Set([plain(problem.subject ?? "")]);
  const alsoOf = subjects.filter((subject) => subject !== problem.subject);
  for (const subject of subjects) {
    const short = plain(subject);
    const part = designOf(chair, subject.split(/ to | and /)[0] ?? "");
    if (seen.has(short) || !part || part.file !== undefined) continue;
    seen.add(short);
    related.push({ start: part.at.start, end: part.at.end, message: `so it is with ${short}` });
  }
  return {
    ...problem,
    ...(related.length > 0 && { related }),
    ...(alsoOf.length > 0 && { alsoOf }),
  };
}
