/**
 * The one table of rules: diagnostics, settings, explanations and the reference are all made from it.
 */
import { boardNotThere } from "./boards/board-not-there.ts";
import { boardNotUsable } from "./boards/board-not-usable.ts";
import { boardOfOtherTimber } from "./boards/board-of-other-timber.ts";
import { matchWithoutRoom } from "./boards/match-without-room.ts";
import { partTooBigForBoards } from "./boards/part-too-big-for-boards.ts";
import { shortGrain } from "./boards/short-grain.ts";
import { woodRunsShort } from "./boards/wood-runs-short.ts";
import { acceptAcceptsNothing } from "./file/accept-accepts-nothing.ts";
import { acceptWithoutReason } from "./file/accept-without-reason.ts";
import { angleNotMet } from "./file/angle-not-met.ts";
import { internalError } from "./file/internal-error.ts";
import { languageRules } from "./file/language.ts";
import { limitDoesNotFit } from "./file/limit-does-not-fit.ts";
import { renamedRule } from "./file/renamed-rule.ts";
import { requirementNotJudged } from "./file/requirement-not-judged.ts";
import { requirementNotMet } from "./file/requirement-not-met.ts";
import { unknownRule } from "./file/unknown-rule.ts";
import { unknownSpecies } from "./file/unknown-species.ts";
import { cannotBeAssembled } from "./frame/cannot-be-assembled.ts";
import { cannotBeBuilt } from "./frame/cannot-be-built.ts";
import { chairTooLarge } from "./frame/chair-too-large.ts";
import { noRoom } from "./frame/no-room.ts";
import { partsPassThrough } from "./frame/parts-pass-through.ts";
import { postTiedOneWay } from "./frame/post-tied-one-way.ts";
import { postWithoutTwin } from "./frame/post-without-twin.ts";
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
import { postTooShort } from "./joints/post-too-short.ts";
import { postWeakened } from "./joints/post-weakened.ts";
import { railMissesPost } from "./joints/rail-misses-post.ts";
import { shoulderOnCurve } from "./joints/shoulder-on-curve.ts";
import { shoulderOverKnee } from "./joints/shoulder-over-knee.ts";
import { shoulderTooNarrow } from "./joints/shoulder-too-narrow.ts";
import { tenonShortGrain } from "./joints/tenon-short-grain.ts";
import { tenonTooLong } from "./joints/tenon-too-long.ts";
import { tenonTooShort } from "./joints/tenon-too-short.ts";
import { tenonTooThick } from "./joints/tenon-too-thick.ts";
import { tenonTooThin } from "./joints/tenon-too-thin.ts";
import { tenonTooWide } from "./joints/tenon-too-wide.ts";
import { tenonTooWideForThickness } from "./joints/tenon-too-wide-for-thickness.ts";
import { tenonsMeet } from "./joints/tenons-meet.ts";
import type { Rule } from "./machinery/rule.ts";
import { heldAcrossGrain } from "./moisture/held-across-grain.ts";
import { moisturesApart } from "./moisture/moistures-apart.ts";
import { panelWithoutRoom } from "./moisture/panel-without-room.ts";
import { restBeyondRail } from "./seat/rest-beyond-rail.ts";
import { restCutIntoMortise } from "./seat/rest-cut-into-mortise.ts";
import { restCutTooDeep } from "./seat/rest-cut-too-deep.ts";
import { seatFallsForward } from "./seat/seat-falls-forward.ts";
import { seatNotHeld } from "./seat/seat-not-held.ts";
import { seatProudNotMet } from "./seat/seat-proud-not-met.ts";
import { seatRestMissing } from "./seat/seat-rest-missing.ts";
import { seatRingOpen } from "./seat/seat-ring-open.ts";
import { seatSlopeOutside } from "./seat/seat-slope-outside.ts";
import { seatTooDeep } from "./seat/seat-too-deep.ts";
import { seatTooHigh } from "./seat/seat-too-high.ts";
import { seatTooLow } from "./seat/seat-too-low.ts";
import { seatTooNarrow } from "./seat/seat-too-narrow.ts";
import { seatTooThin } from "./seat/seat-too-thin.ts";
import { armHeightOutside } from "./sitter/arm-height-outside.ts";
import { armTooHighForTable } from "./sitter/arm-too-high-for-table.ts";
import { backLeanOutside } from "./sitter/back-lean-outside.ts";
import { backTooLow } from "./sitter/back-too-low.ts";
import { crestAtShoulderBlades } from "./sitter/crest-at-shoulder-blades.ts";
import { feetCannotDrawBack } from "./sitter/feet-cannot-draw-back.ts";
import { lumbarUnsupported } from "./sitter/lumbar-unsupported.ts";
import { rakeOverLimit } from "./sitter/rake-over-limit.ts";
import { rakeUnderLimit } from "./sitter/rake-under-limit.ts";
import { bowBentTight } from "./solid-seat/bow-bent-tight.ts";
import { footOverHollow } from "./solid-seat/foot-over-hollow.ts";
import { legLeansFar } from "./solid-seat/leg-leans-far.ts";
import { socketNearEdge } from "./solid-seat/socket-near-edge.ts";
import { socketNearHollow } from "./solid-seat/socket-near-hollow.ts";
import { socketTooShallow } from "./solid-seat/socket-too-shallow.ts";
import { socketsInLine } from "./solid-seat/sockets-in-line.ts";
import { socketsTooClose } from "./solid-seat/sockets-too-close.ts";
import { stickTooSlender } from "./solid-seat/stick-too-slender.ts";
import { sticksTooFarApart } from "./solid-seat/sticks-too-far-apart.ts";
import { stretcherOffStout } from "./solid-seat/stretcher-off-stout.ts";
import { tenonUnlikeStick } from "./solid-seat/tenon-unlike-stick.ts";
import { feetInsideTops } from "./stability/feet-inside-tops.ts";
import { footHangs } from "./stability/foot-hangs.ts";
import { tipsBackwards } from "./stability/tips-backwards.ts";
import { tipsForwards } from "./stability/tips-forwards.ts";
import { tipsSideways } from "./stability/tips-sideways.ts";
import { tipsUnderChild } from "./stability/tips-under-child.ts";
import { tipsWhenLeantBack } from "./stability/tips-when-leant-back.ts";
import { frameTooLimp } from "./strength/frame-too-limp.ts";
import { jointOverworked } from "./strength/joint-overworked.ts";
import { memberOverworked } from "./strength/member-overworked.ts";
import { railSlenderAtArch } from "./strength/rail-slender-at-arch.ts";

/** Every rule, those about the chair first, then those about the file's own claims, then the language's. */
export const rules: readonly Rule[] = [
  rakeOverLimit,
  rakeUnderLimit,
  tenonTooThin,
  tenonTooThick,
  tenonTooWide,
  tenonTooWideForThickness,
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
  postTooShort,
  endReachesNothing,
  railMissesPost,
  postTiedOneWay,
  seatRingOpen,
  seatNotHeld,
  seatRestMissing,
  seatProudNotMet,
  restBeyondRail,
  restCutTooDeep,
  restCutIntoMortise,
  socketNearEdge,
  socketsTooClose,
  socketsInLine,
  socketTooShallow,
  socketNearHollow,
  footOverHollow,
  tenonUnlikeStick,
  legLeansFar,
  stretcherOffStout,
  sticksTooFarApart,
  stickTooSlender,
  bowBentTight,
  memberWithoutJoint,
  shoulderOnCurve,
  shoulderOverKnee,
  postWithoutTwin,
  railWinds,
  partsPassThrough,
  feetInsideTops,
  chairTooLarge,
  footHangs,
  tipsBackwards,
  tipsForwards,
  tipsSideways,
  tipsUnderChild,
  tipsWhenLeantBack,
  jointOverworked,
  memberOverworked,
  railSlenderAtArch,
  frameTooLimp,
  heldAcrossGrain,
  panelWithoutRoom,
  moisturesApart,
  seatTooHigh,
  seatTooLow,
  seatTooDeep,
  seatTooNarrow,
  seatTooThin,
  seatSlopeOutside,
  seatFallsForward,
  backLeanOutside,
  backTooLow,
  crestAtShoulderBlades,
  lumbarUnsupported,
  armHeightOutside,
  armTooHighForTable,
  feetCannotDrawBack,
  shortGrain,
  partTooBigForBoards,
  matchWithoutRoom,
  boardNotUsable,
  boardNotThere,
  boardOfOtherTimber,
  woodRunsShort,
  unknownSpecies,
  noRoom,
  cannotBeBuilt,
  angleNotMet,
  requirementNotMet,
  requirementNotJudged,
  unknownRule,
  renamedRule,
  limitDoesNotFit,
  acceptWithoutReason,
  acceptAcceptsNothing,
  internalError,
  ...languageRules,
];

const byCode = new Map(rules.flatMap((rule) => [rule.code, ...(rule.was ?? [])].map((code) => [code, rule])));

/** A rule by its code, or by one that it had before. */
export const ruleOf = (code: string): Rule | undefined => byCode.get(code);
