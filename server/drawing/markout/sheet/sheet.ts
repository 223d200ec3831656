/**
 * What a chair's sheets say, as data: every figure as it is printed. The words on the pages are made from it, and so is the JSON.
 */

/** A figure in the file's unit, in degrees, or a word that a figure needs; and how it is printed. */
export interface SheetFigure {
  value: number | string;
  text: string;
}

/** One thing to be marked or cut. */
export interface SheetMark {
  /** `line`, `tenon`, `mortise` … */
  kind: string;
  /** The face it is marked on, or the end it belongs to; empty where neither is meant. */
  face: string;
  /** What its distances run from; empty where nothing is. */
  datum: string;
  figures: Record<string, SheetFigure>;
}

/** All parts made to one sheet as drawn; their mirror images stand apart and name the one they mirror. */
export interface SheetPart {
  name: string;
  /** How many. */
  number: number;
  /** What it is cut from. */
  stock: Record<string, SheetFigure>;
  marks: SheetMark[];
}

export interface Sheets {
  unit: "mm" | "cm" | "in";
  /** The smallest step of a printed length, in the unit. */
  step: number;
  parts: SheetPart[];
}
