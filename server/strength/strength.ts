/**
 * How hard every joint and member of a chair works under the load cases, with its joints at their low, middle and high stiffness.
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import { casesOf, type LevelName, type LoadCase } from "./cases.ts";
import { type Failed, type Prepared, prepare, type Solution, solve } from "./frame/solve.ts";
import { type ChairFrame, frameOf, type StiffnessLevel } from "./model.ts";
import { jointDemand, jointStrength, memberDemand } from "./resistance.ts";

const stiffnessLevels: readonly StiffnessLevel[] = ["low", "middle", "high"];

export interface CaseResult {
  load: LoadCase;
  stiffness: StiffnessLevel;
  frame: ChairFrame;
  solution: Solution | Failed;
  /** How much of the level pushes it was loaded with: less than 1 where all of them would tip it over. */
  share: number;
  /** Load over resistance, by joint and by part; what has no known timber is left out. */
  joints: Map<string, number>;
  members: Map<string, number>;
}

export interface Ruling {
  name: string;
  demand: number;
  /** Name of the load case that asks most, and the span of demands between the stiffnesses. */
  ruledBy: string;
  low: number;
  high: number;
}

export interface Strength {
  level: LevelName;
  cases: CaseResult[];
  joints: Ruling[];
  members: Ruling[];
  /** One over the largest demand of all; nothing where nothing could be judged. */
  margin?: number;
  /** Parts whose timber is not in the table of strengths. */
  unknown: string[];
}

/** Works all cases through at three stiffnesses; rests after each. */
export function* strengthSteps(chair: Chair, level: LevelName = "domestic"): Steps<Strength> {
  const cases: CaseResult[] = [];
  let unknown: string[] = [];
  for (const stiffness of stiffnessLevels) {
    const frame = frameOf(chair, stiffness);
    unknown = frame.unknown;
    const prepared = prepare(frame);
    yield;
    for (const load of casesOf(chair, frame, level)) {
      const { solution, share } = standing(prepared, load);
      cases.push({
        load,
        stiffness,
        frame,
        solution,
        share,
        ...demandsOf(chair, frame, solution, load.times),
      });
      yield;
    }
  }
  const joints = rulingsOf(cases, ({ joints: each }) => each);
  const members = rulingsOf(cases, ({ members: each }) => each);
  const most = Math.max(0, ...[...joints, ...members].map(({ demand }) => demand));
  return { level, cases, joints, members, ...(most > 0 && { margin: 1 / most }), unknown };
}

/** Halvings by which the largest push is sought that does not tip the chair over. */
const HALVINGS = 6;

/** Solves a case; where its pushes would tip the chair over, with as much of them as it stands (as ISO 7173 loads a back; seen). */
function standing(
  prepared: Prepared,
  { supports, loads }: LoadCase,
): { solution: Solution | Failed; share: number } {
  const at = (share: number) =>
    solve(
      prepared,
      supports,
      loads.map(({ node, v: [x = 0, y = 0, ...rest] }) => ({ node, v: [share * x, share * y, ...rest] })),
    );
  let best = { solution: at(1), share: 1 };
  if (best.solution.is === "solved") return best;
  let [low, high] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const share = (low + high) / 2;
    const solution = at(share);
    if (solution.is === "solved") {
      best = { solution, share };
      low = share;
    } else high = share;
  }
  return best;
}

function demandsOf(
  chair: Chair,
  frame: ChairFrame,
  solution: Solution | Failed,
  times: number,
): Pick<CaseResult, "joints" | "members"> {
  const joints = new Map<string, number>();
  const members = new Map<string, number>();
  if (solution.is !== "solved") return { joints, members };
  for (const { beam, part, section, species, grain } of frame.pieces) {
    const ends = solution.ends[beam];
    if (!ends) continue;
    for (const end of [ends.from, ends.to]) {
      const demand = memberDemand(end, section, { species, grain, times });
      if (demand !== undefined) members.set(part, Math.max(members.get(part) ?? 0, demand));
    }
  }
  for (const [k, joint] of frame.jointOf.entries()) {
    const species = chair.members.get(joint.part)?.timber?.species ?? "";
    const bears = jointStrength(joint, species);
    const passed = solution.springs[k];
    if (bears && passed) joints.set(joint.name, jointDemand(passed, bears, times));
  }
  return { joints, members };
}

/** For each name the most that is asked of it at the middle stiffness, by which case, and how that most moves with the stiffness. */
function rulingsOf(cases: readonly CaseResult[], of: (one: CaseResult) => Map<string, number>): Ruling[] {
  const names = [...new Set(cases.flatMap((one) => [...of(one).keys()]))];
  return names
    .map((name): Ruling => {
      const most = (stiffness: StiffnessLevel) =>
        cases
          .filter((one) => one.stiffness === stiffness)
          .map((one) => ({ demand: of(one).get(name) ?? 0, ruledBy: one.load.name }))
          .reduce((a, b) => (b.demand > a.demand ? b : a), { demand: 0, ruledBy: "" });
      const all = stiffnessLevels.map((stiffness) => most(stiffness).demand);
      return { name, ...most("middle"), low: Math.min(...all), high: Math.max(...all) };
    })
    .sort((a, b) => b.demand - a.demand);
}
