import type { Extent } from "./measures.ts";
import type { Point } from "./sheet.ts";

/** How far the floor line runs past the chair, and how deep and how far apart its hatching stands, mm. */
const PAST = 45;
const DEEP = 12;
const APART = 24;

/** The floor under a view, as seen: a line at height 0 with hatching under it. */
export function floorLines({ left, right }: Extent): Point[][] {
  const from = left - PAST;
  const to = right + PAST;
  const count = Math.floor((to - from - DEEP) / APART);
  const lines: Point[][] = [
    [
      [from, 0],
      [to, 0],
    ],
  ];
  for (let k = 0; k <= count; k++) {
    const x = from + DEEP + k * APART;
    lines.push([
      [x, 0],
      [x - DEEP, -DEEP],
    ]);
  }
  return lines;
}
