import type { Failed, Solution } from "./frame/solve.ts";
import type { LoadCase } from "./load-case.ts";
import type { ChairFrame, StiffnessLevel } from "./model.ts";

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
  /** Index among the frame's pieces of the one that works hardest, by part. */
  hardest: Map<string, number>;
}

/** How far the seat gives way level under a push, mm, at the middle stiffness and between the others. */
export interface Sway {
  towards: "forward" | "sideways";
  ruledBy: string;
  title: string;
  mm: number;
  low: number;
  high: number;
  /** Of the seat over the floor. */
  height: number;
}
