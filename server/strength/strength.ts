/**
 * How hard every joint and member of a chair works under the load cases, with its joints at their low, middle and high stiffness.
 */

import type { Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import type { CaseResult, Sway } from "./case-result.ts";
import { casesOf, type LevelName } from "./cases.ts";
import { type Failed, largestShare, type Prepared, prepare, type Solution, solve } from "./frame/solve.ts";
import { type Lasting, lastingOf } from "./lasting.ts";
import type { LoadCase } from "./load-case.ts";
import { atStiffness, type ChairFrame, frameSteps, type Piece, type StiffnessLevel } from "./model.ts";
import { type JointStrength, jointDemand, jointStrength, memberDemand, repeatedShare } from "./resistance.ts";
import { swaysOf } from "./sway.ts";

const stiffnessLevels: readonly StiffnessLevel[] = ["low", "middle", "high"];

export interface Ruling {
  name: string;
  demand: number;
  /** Name of the load case that asks most, and in words. */
  ruledBy: string;
  title: string;
  /** The span of demands between the stiffnesses. */
  low: number;
  high: number;
  /** Of a part: where its wood works hardest, as a piece of the frame. */
  piece?: Piece;
}

export interface Strength {
  level: LevelName;
  cases: CaseResult[];
  joints: Ruling[];
  members: Ruling[];
  sways: Sway[];
  /** How often it may be sat down on. */
  lasting?: Lasting;
  /** One over the largest demand of all; nothing where nothing could be judged. */
  margin?: number;
  /** Parts whose timber is not in the table of strengths. */
  unknown: string[];
}

/** How hard the file says that the chair is used. */
export const levelOf = (chair: Chair): LevelName => chair.design.strength?.value ?? "domestic";

/** Works all cases through at three stiffnesses; rests after each. */
export function* strengthSteps(chair: Chair, level: LevelName = levelOf(chair)): Steps<Strength> {
  const cases: CaseResult[] = [];
  let unknown: string[] = [];
  const middle = yield* frameSteps(chair, "middle");
  yield;
  const loads = casesOf(chair, middle, level);
  const bears = middle.jointOf.map((joint) =>
    jointStrength(joint, chair.members.get(joint.part)?.timber?.species ?? ""),
  );
  let prepared: Prepared | undefined;
  for (const stiffness of stiffnessLevels) {
    const frame = atStiffness(middle, stiffness);
    unknown = frame.unknown;
    prepared = prepare(frame, prepared);
    yield;
    for (const load of loads) {
      const { solution, share } = yield* standing(prepared, load);
      yield;
      cases.push({
        load,
        stiffness,
        frame,
        solution,
        share,
        ...demandsOf(frame, solution, bears, repeatedShare(load.times)),
      });
      yield;
    }
  }
  const joints = rulingsOf(cases, ({ joints: each }) => each);
  const members = rulingsOf(cases, ({ members: each }) => each);
  const most = Math.max(0, ...[...joints, ...members].map(({ demand }) => demand));
  const lasting = lastingOf(cases);
  return {
    level,
    cases,
    joints,
    members,
    sways: swaysOf(chair, cases),
    ...(lasting && { lasting }),
    ...(most > 0 && { margin: 1 / most }),
    unknown,
  };
}

/** Solves a case; where its pushes would tip the chair over, with as much of them as it stands (as ISO 7173 loads a back; seen). */
function* standing(
  prepared: Prepared,
  { supports, loads }: LoadCase,
): Steps<{ solution: Solution | Failed; share: number }> {
  const whole = solve(prepared, supports, loads);
  if (whole.is === "solved") return { solution: whole, share: 1 };
  yield;
  const share = largestShare(prepared, supports, loads);
  yield;
  const most =
    share > 0
      ? solve(
          prepared,
          supports,
          loads.map(({ node, v: [x = 0, y = 0, ...rest] }) => ({ node, v: [share * x, share * y, ...rest] })),
        )
      : whole;
  return most.is === "solved" ? { solution: most, share } : { solution: whole, share: 1 };
}

function demandsOf(
  frame: ChairFrame,
  solution: Solution | Failed,
  bears: readonly (JointStrength | undefined)[],
  share: number,
): Pick<CaseResult, "joints" | "members" | "hardest"> {
  const joints = new Map<string, number>();
  const members = new Map<string, number>();
  const hardest = new Map<string, number>();
  if (solution.is !== "solved") return { joints, members, hardest };
  for (const [k, { beam, part, section, left, species, grain }] of frame.pieces.entries()) {
    const ends = solution.ends[beam];
    if (!ends) continue;
    for (const which of ["from", "to"] as const) {
      const demand = memberDemand(ends[which], left[which] ?? section, { species, grain, share });
      if (demand === undefined || demand <= (members.get(part) ?? 0)) continue;
      members.set(part, demand);
      hardest.set(part, k);
    }
  }
  for (const [k, joint] of frame.jointOf.entries()) {
    const [own, passed] = [bears[k], solution.springs[k]];
    if (own && passed) joints.set(joint.name, jointDemand(passed, own, share));
  }
  return { joints, members, hardest };
}

/** For each name the most that is asked of it at the middle stiffness, by which case, and how that most moves with the stiffness. */
function rulingsOf(cases: readonly CaseResult[], of: (one: CaseResult) => Map<string, number>): Ruling[] {
  const names = [...new Set(cases.flatMap((one) => [...of(one).keys()]))];
  return names
    .map((name): Ruling => {
      const most = (stiffness: StiffnessLevel) =>
        cases
          .filter((one) => one.stiffness === stiffness)
          .map((one) => ({ demand: of(one).get(name) ?? 0, one }))
          .reduce<{ demand: number; one?: CaseResult }>((a, b) => (b.demand > a.demand ? b : a), {
            demand: 0,
          });
      const { demand, one } = most("middle");
      const all = stiffnessLevels.map((stiffness) => most(stiffness).demand);
      const piece = one?.frame.pieces[one.hardest.get(name) ?? -1];
      return {
        name,
        demand,
        ruledBy: one?.load.name ?? "",
        title: one?.load.title ?? "",
        low: Math.min(...all),
        high: Math.max(...all),
        ...(piece && { piece }),
      };
    })
    .sort((a, b) => b.demand - a.demand);
}
