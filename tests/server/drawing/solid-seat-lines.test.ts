/** The lines of a solid seat go all round what its wood covers, which is worked out from its pieces and not from its lines. */
import { expect, it } from "vitest";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import type { Point } from "../../../server/drawing/sheet.ts";
import { studied } from "../../check.ts";

const seat = (lines: string): string => `units mm
timber european-oak moisture 9%
seat solid {
  up 430
  fall 12
  thick 44
  ${lines.split(", ").join("\n  ")}
}
`;
const outline = "deep 400, wide 410 at 12, wide 440 at 150, wide 392 at 290, wide 300 at 352";

const seats = {
  "a bevel below": `${outline}, corner 30, bevel 25 x 14 below`,
  "bevels above and below": `${outline}, corner 30, bevel 12 x 8 above, bevel 25 x 14 below`,
  "a bevel wider than its corners are round": `${outline}, corner 10, bevel 25 x 14 below`,
  "a bevel round square corners":
    "deep 380, wide 420 at 0 straight, wide 300 at 380 straight, bevel 20 x 12 below",
  "a bevel and a tail": `${outline}, corner 25, tail 90 x 40, bevel 15 x 10 below`,
  "a hollow that runs out in front": `${outline}, corner 30, hollow 12 over 100 open front, rim 50`,
  "a round hollow": "round 360, hollow 10 over 90, rim 40, bevel 15 x 10 below",
};

const away = ([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number => {
  const [u, v] = [bx - ax, by - ay];
  const share = ((x - ax) * u + (y - ay) * v) / (u * u + v * v || 1);
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(x - ax - u * t, y - ay - v * t);
};

it.each(Object.entries(seats))("%s has a line all round in each view", (_, lines) => {
  const { views } = drawSheet(studied(seat(lines)).chair);
  for (const { name, areas, strokes } of Object.values(views)) {
    const drawn = strokes.filter(({ part }) => part === "seat");
    expect(areas.length).toBeGreaterThan(0);
    for (const { points } of areas)
      for (const [k, a] of points.entries()) {
        const b = points[(k + 1) % points.length]!;
        const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        const least = Math.min(
          ...drawn.flatMap(({ points: line }) => line.slice(1).map((q, n) => away(middle, line[n]!, q))),
        );
        // Seen from above and from the side as far as the wood's facets stray from its lines.
        expect(least, `${name}: ${middle}`).toBeLessThan(0.3);
      }
  }
});
