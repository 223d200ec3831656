import { type Item, line, type Point, SMALL, words } from "./page.ts";

/** Half the length of the sign, and of its heads, mm. */
const HALF = 12;
const HEAD = 2.2;

/** Which way the grain runs: a line with a head at both ends, and the word over it. `angle` runs from the right anticlockwise, radians. */
export function grainSign([x, y]: Point, angle = 0): Item[] {
  const on = (along: number, off: number): Point => [
    x + along * Math.cos(angle) + off * Math.sin(angle),
    y - along * Math.sin(angle) + off * Math.cos(angle),
  ];
  const head = (end: 1 | -1): Item =>
    line([on(end * (HALF - HEAD), -HEAD / 3), on(end * HALF, 0), on(end * (HALF - HEAD), HEAD / 3)], "knife");
  // Beside a line that runs up the page the word stands to its right.
  const steep = Math.abs(Math.sin(angle)) > 0.5;
  return [
    line([on(-HALF, 0), on(HALF, 0)], "knife"),
    head(1),
    head(-1),
    steep
      ? words([x + 1.2, y + 0.9], "grain", SMALL)
      : words([x, y - 1], "grain", SMALL, { anchor: "middle" }),
  ];
}
