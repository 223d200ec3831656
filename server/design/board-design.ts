/**
 * What the text says of wood: boards to hand, yards, waste, matches, and what a part says of its own board. Lengths mm.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Statement } from "../../grammar/tree.ts";
import type { Given } from "./given.ts";
import type { Named, PartRef, TimberDesign } from "./shared-facts.ts";

interface BoardSize {
  long: number;
  wide: number;
  thick: number;
}

/** A place in a board that cannot be used: from the first end and from the first edge. */
export interface DefectDesign {
  at: number;
  long: number;
  fromEdge: number;
  /** Absent: to the other edge. */
  wide?: number;
  what?: string;
}

export type GrainDesign = "quarter" | "flat" | "rift";

/** A board to hand. */
export interface BoardDesign extends Named {
  is: "board";
  size?: Given<BoardSize>;
  /** How many alike, `plank.1` upward; 1 when absent. */
  count?: Given<number>;
  /** Unusable from each long edge; 0 when absent. */
  wane?: Given<number>;
  grain?: Given<GrainDesign>;
  timber?: Given<TimberDesign>;
  /** Of one board, in the maker's own money. */
  price?: Given<number>;
  defects: Given<DefectDesign>[];
}

/** What can be bought of one timber. */
export interface YardDesign extends Named {
  is: "yard";
  thick?: Given<number[]>;
  long?: Given<{ low: number; high: number }>;
  wide?: Given<{ low: number; high: number }>;
  timber?: Given<TimberDesign>;
  /** Of a cubic metre; of a board foot where the file has inches. */
  price?: Given<number>;
}

export interface WasteDesign {
  saw?: Given<number>;
  plane?: Given<number>;
  ends?: Given<number>;
  jointing?: Given<number>;
}

/** A board as a line names it: all alike, or one of them by number. */
export interface BoardRef {
  name: string;
  which?: number;
}

export interface MatchDesign {
  parts: Given<PartRef>[];
  board: Given<BoardRef>;
  laid: "side by side" | "end to end";
  /** From the first part to the last word. */
  at: Span;
  statement: Statement;
  file?: string;
}

export type HiddenFace = "front" | "back" | "inside" | "outside" | "top" | "bottom" | "below";

/** What any part says of the wood it is sawn from. */
export interface SawnDesign {
  sawnFrom?: Given<BoardRef>;
  hidden?: Given<HiddenFace[]>;
}
