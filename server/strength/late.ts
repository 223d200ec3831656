/**
 * What is worked out after the findings are first shown, since it takes longer than all the rest: how hard joints and parts work, and
 * how the wood moves.
 */
import type { Steps } from "../../grammar/steps.ts";
import type { Chair, Worked } from "../chair/chair.ts";
import { type WoodMoves, woodMoves } from "../timber/movement.ts";
import { levelOf, type Strength, strengthSteps } from "./strength.ts";
import { strengthValues } from "./values.ts";

export interface Late {
  strength: Strength;
  wood: WoodMoves;
  /** Its worked-out values, those of the whole chair first. */
  values: Worked[];
}

/** How what is late is worked out; handed over as a function so that its code need not be loaded before. */
export type LateWork = (chair: Chair) => Steps<Late>;

/** More parts than any chair has: the frame of so many is not worked out by itself while the text is written, only by `strength`. */
const MOST_PARTS = 200;

const notWorkedOut = (chair: Chair): Strength => ({
  level: levelOf(chair),
  cases: [],
  joints: [],
  members: [],
  sways: [],
  unknown: [],
});

/** All that is late of a chair; rests within. */
export function* lateSteps(chair: Chair): Steps<Late> {
  const strength = chair.members.size > MOST_PARTS ? notWorkedOut(chair) : yield* strengthSteps(chair);
  return { strength, wood: woodMoves(chair), values: strengthValues(chair, strength) };
}
