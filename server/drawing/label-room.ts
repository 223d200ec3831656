/**
 * The room that a label on several lines takes.
 */

import { wrapped } from "./xml.ts";

/** Height of the words of dimensions, mm on a full-size sheet. */
export const WORDS = 22;
/** From one line of a label to the next, by the height of its words. */
export const LINE_STEP = 1.15;
/** Words are larger than meant where a drawing is looked at small; about how wide a letter is for its height. */
const LARGER = 1.5;
const LETTER = 0.58;

/** How far a label's lines reach to the right of its place, and below it, mm. */
export const labelRoom = (lines: readonly string[]): { wide: number; deep: number } => ({
  wide: Math.max(0, ...lines.map((line) => line.length)) * WORDS * LARGER * LETTER,
  deep: (lines.length - 1) * WORDS * LARGER * LINE_STEP,
});

/** Words beside an angle on lines of so many letters, or as many as its longest word has: a part's name is not cut. */
export const angleLines = (label: string, letters: number): string[] =>
  wrapped(label, Math.max(letters, ...label.split(" ").map((word) => word.length)), 5);
