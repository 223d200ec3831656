import type { Wedges } from "./piece.ts";

/**
 * The wedges of a through tenon, by common practice: two in one wide enough, a sixth in from its edges, else one in the middle; their saw
 * cuts run two thirds of the way to the shoulder, and they are a tenth of the tenon's width at their thick end. mm.
 */
export function wedgesFor(wide: number, run: number, most = 2): Wedges {
  const count = wide >= TWO ? most : 1;
  const deep = (2 / 3) * run;
  return {
    count,
    in: count === 2 ? wide / 6 : wide / 2,
    deep,
    thick: Math.min(THICKEST, Math.max(THINNEST, wide / 10)),
    long: deep,
  };
}

/** mm */
const TWO = 24;
const THICKEST = 4;
const THINNEST = 2;
