/**
 * The one table of rules: diagnostics, settings, explanations and the reference are all made from it.
 */
import type { Problem, Related } from "../../grammar/problem.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Chair } from "../chair/chair.ts";
import type { Design } from "../design/design.ts";
import { acceptAcceptsNothing, idleAccepts } from "./file/accept-accepts-nothing.ts";
import { acceptWithoutReason } from "./file/accept-without-reason.ts";
import { angleNotMet } from "./file/angle-not-met.ts";
import { languageRules } from "./file/language.ts";
import { limitDoesNotFit } from "./file/limit-does-not-fit.ts";
import { requirementNotJudged } from "./file/requirement-not-judged.ts";
import { requirementNotMet } from "./file/requirement-not-met.ts";
import { unknownRule } from "./file/unknown-rule.ts";
import { unknownSpecies } from "./file/unknown-species.ts";
import { cannotBeAssembled } from "./frame/cannot-be-assembled.ts";
import { cannotBeBuilt } from "./frame/cannot-be-built.ts";
import { noRoom } from "./frame/no-room.ts";
import { partsPassThrough } from "./frame/parts-pass-through.ts";
import { postTiedOneWay } from "./frame/post-tied-one-way.ts";
import { railWinds } from "./frame/rail-winds.ts";
import { endReachesNothing } from "./joints/end-reaches-nothing.ts";
import { haunchMissing } from "./joints/haunch-missing.ts";
import { memberWithoutJoint } from "./joints/member-without-joint.ts";
import { mortiseBreaksOut } from "./joints/mortise-breaks-out.ts";
import { mortiseNearEnd } from "./joints/mortise-near-end.ts";
import { mortiseTooWide } from "./joints/mortise-too-wide.ts";
import { mortiseWallThin } from "./joints/mortise-wall-thin.ts";
import { pegDrawsTooFar } from "./joints/peg-draws-too-far.ts";
import { pegMisplaced } from "./joints/peg-misplaced.ts";
import { postWeakened } from "./joints/post-weakened.ts";
import { railMissesPost } from "./joints/rail-misses-post.ts";
import { shoulderOnCurve } from "./joints/shoulder-on-curve.ts";
import { shoulderOverKnee } from "./joints/shoulder-over-knee.ts";
import { shoulderTooNarrow } from "./joints/shoulder-too-narrow.ts";
import { tenonShortGrain } from "./joints/tenon-short-grain.ts";
import { tenonTooBroad } from "./joints/tenon-too-broad.ts";
import { tenonTooLong } from "./joints/tenon-too-long.ts";
import { tenonTooShort } from "./joints/tenon-too-short.ts";
import { tenonTooThick } from "./joints/tenon-too-thick.ts";
import { tenonTooThin } from "./joints/tenon-too-thin.ts";
import { tenonTooWide } from "./joints/tenon-too-wide.ts";
import { tenonsMeet } from "./joints/tenons-meet.ts";
import { merged, settle } from "./machinery/accepts.ts";
import { type Doubt, doubtIn } from "./machinery/doubt.ts";
import { boundsOf } from "./machinery/limits.ts";
import { plain } from "./machinery/names.ts";
import { designOf } from "./machinery/place.ts";
import type { Rule } from "./machinery/rule.ts";
import type { Finding } from "./machinery/say.ts";
import { seatFallsForward } from "./seat/seat-falls-forward.ts";
import { seatRingOpen } from "./seat/seat-ring-open.ts";
import { seatSlopeOutside } from "./seat/seat-slope-outside.ts";
import { seatTooDeep } from "./seat/seat-too-deep.ts";
import { seatTooHigh } from "./seat/seat-too-high.ts";
import { seatTooLow } from "./seat/seat-too-low.ts";
import { seatTooNarrow } from "./seat/seat-too-narrow.ts";
import { armHeightOutside } from "./sitter/arm-height-outside.ts";
import { armTooHighForTable } from "./sitter/arm-too-high-for-table.ts";
import { backLeanOutside } from "./sitter/back-lean-outside.ts";
import { backTooLow } from "./sitter/back-too-low.ts";
import { crestAtShoulderBlades } from "./sitter/crest-at-shoulder-blades.ts";
import { feetCannotDrawBack } from "./sitter/feet-cannot-draw-back.ts";
import { loinsUnsupported } from "./sitter/loins-unsupported.ts";
import { rakeOverLimit } from "./sitter/rake-over-limit.ts";
import { rakeUnderLimit } from "./sitter/rake-under-limit.ts";
import { footHangs } from "./stability/foot-hangs.ts";
import { tipsBackwards } from "./stability/tips-backwards.ts";
import { tipsForwards } from "./stability/tips-forwards.ts";
import { tipsSideways } from "./stability/tips-sideways.ts";
import { tipsUnderChild } from "./stability/tips-under-child.ts";
import { tipsWhenLeantBack } from "./stability/tips-when-leant-back.ts";

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
