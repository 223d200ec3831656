import { describe, expect, it } from "vitest";
import { arranged, type Laid } from "../../../client/panel/webview/arrange.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import type { Point, View } from "../../../server/drawing/sheet.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { address, plainView } from "../../server/editor/view.ts";

const samples = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
const files = Object.fromEntries(samples.map((path) => [path.slice("samples/".length), read(path)]));
const sheets = samples.flatMap((path) => {
  const { chair } = plainView(read(path), address, files).study;
  return chair.posts.size ? [[path, drawSheet(chair)] as const] : [];
});

/** All that a view draws, where it is laid. */
function pointsOf({ moved }: Laid, view: View): Point[] {
  const [right, down] = moved[view.name] ?? [0, 0];
  return [
    view.captionAt,
    ...view.strokes.flatMap(({ points }) => points),
    ...view.areas.flatMap(({ points }) => points),
    ...view.dimensions.flatMap(({ line, extensions, labelAt, lines = [] }) => [
      ...line,
      ...extensions.flat(),
      labelAt,
      // Words half as large again as on paper, their letters 0.56 as wide as high, as Helvetica's are on average (from memory).
      ...lines.map(({ length }): Point => [labelAt[0] + length * 22 * 1.5 * 0.56, labelAt[1]]),
    ]),
  ].map(([x, y]): Point => [x + right, y + down]);
}

describe("the views in the panel", () => {
  it.each(sheets)("of %s lie as on the sheet in a high room", (_, sheet) => {
    expect(arranged(sheet, 0.7)).toEqual({ ...sheet, moved: {} });
  });

  it.each(sheets)(
    "of %s lie in a row in a wide room, larger, on the sheet, clear of each other",
    (_, sheet) => {
      const laid = arranged(sheet, 2.2);
      expect(laid.moved.plan).toBeDefined();
      expect(Math.min(2.2 / laid.width, 1 / laid.height)).toBeGreaterThan(
        Math.min(2.2 / sheet.width, 1 / sheet.height),
      );
      const spans = laid.views.map((view) => {
        const points = pointsOf(laid, view);
        for (const [x, y] of points) {
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(laid.width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(laid.height);
        }
        const xs = points.map(([x]) => x);
        return { name: view.name, left: Math.min(...xs), right: Math.max(...xs) };
      });
      const [front, side, plan] = spans;
      expect(spans.map(({ name }) => name)).toEqual(["front", "side", "plan"]);
      expect(front!.right).toBeLessThan(side!.left);
      expect(side!.right).toBeLessThan(plan!.left);
      expect(side!.right).toBeLessThan(laid.scaleBar.at[0]);
      const plansTop = Math.min(...pointsOf(laid, laid.views[2]!).map(([, y]) => y));
      expect(plansTop).toBeGreaterThan(laid.scaleBar.at[1]);
      // Front and side stand on one floor still.
      expect(laid.moved.front).toEqual(laid.moved.side);
    },
  );

  it.each(sheets)("of %s leave room for a pictorial view, on the sheet and clear of all else", (_, sheet) => {
    const room = { width: 760, height: 1250 };
    const ways = new Set<boolean>();
    for (const aspect of [0.4, 0.8, 1.4, 2.6]) {
      const laid = arranged(sheet, aspect, room);
      const { x, y, width, height, below } = laid.pictorial!;
      ways.add(below);
      expect({ width, height }).toEqual(room);
      expect(x).toBeGreaterThan(0);
      expect(y).toBeGreaterThan(0);
      expect(x + width).toBeLessThan(laid.width);
      expect(y + height).toBeLessThan(laid.height);
      for (const [u, v] of laid.views.flatMap((view) => pointsOf(laid, view)))
        expect(u < x || u > x + width || v < y || v > y + height).toBe(true);
    }
    expect(ways).toEqual(new Set([true, false]));
  });
});
