/**
 * What is lettered on the drawing, in panels of many sizes, with all that can be laid over it: no words on other words, no figure on a line.
 * Boxes and crossings are worked out here anew, with the widths that Helvetica's letters have in its published metrics (the file
 * Helvetica.afm, as the PDF library carries it).
 */
import { describe, expect, it } from "vitest";
import { arranged, type Laid } from "../../../client/panel/webview/arrange.ts";
import { flaggedIn } from "../../../client/panel/webview/flag-places.ts";
import { figureOf, lettered } from "../../../client/panel/webview/lettering/labels.ts";
import { namedIn } from "../../../client/panel/webview/lettering/named.ts";
import { estimate, type Measure } from "../../../client/panel/webview/lettering/type-scale.ts";
import { overlayNames, type Point } from "../../../server/drawing/sheet.ts";
import { corners, overlap, panelSizes as sizes } from "./rooms-of-words.ts";
import { chairs, faultsIn, sheetOf, toldOf } from "./sample-sheets.ts";

/** One view alone has the least room in the narrowest panel. */
const looksAt = (width: number) =>
  width === 360 ? (["all", "front", "side", "plan"] as const) : (["all"] as const);

/** Whether a straight comes into a box, by places along it a pixel apart. */
function comesInto([from, to]: readonly [Point, Point], [low, high]: readonly Point[]): boolean {
  const steps = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1])) + 1;
  for (let k = 0; k <= steps; k++) {
    const x = from[0] + ((to[0] - from[0]) * k) / steps;
    const y = from[1] + ((to[1] - from[1]) * k) / steps;
    if (x > low![0] && x < high![0] && y > low![1] && y < high![1]) return true;
  }
  return false;
}

/** All straights that are drawn, in pixels. */
function straights({ views, moved }: Laid, scale: number): (readonly [Point, Point])[] {
  return views.flatMap(({ name, strokes, dimensions, overlays = [] }) => {
    const [right, down] = moved[name] ?? [0, 0];
    const px = ([x, y]: Point): Point => [(x + right) * scale, (y + down) * scale];
    const along = (points: readonly Point[]) =>
      points.slice(1).map((point, k) => [px(points[k]!), px(point)] as const);
    return [
      ...[...strokes, ...overlays.flatMap((overlay) => overlay.strokes)].flatMap(({ points }) =>
        along(points),
      ),
      ...dimensions.flatMap(({ line, extensions, arc = [] }) => [line, ...extensions, arc].flatMap(along)),
    ];
  });
}

const bare = chairs.map(([path]) => ({ path, sheet: sheetOf(path) }));
const full = chairs.map(([path]) => ({
  path,
  sheet: sheetOf(path, overlayNames),
  told: toldOf(path),
}));

describe("the lettering of the drawing", () => {
  it.each(sizes)(
    "has no words on words at %i × %i, over all samples, views and overlays",
    (width, height) => {
      const room = { width, height };
      for (const { path, sheet, told } of full) {
        const faults = faultsIn(sheet);
        for (const look of looksAt(width)) {
          const laid = arranged(sheet, { room, look });
          for (const nearer of look === "all" ? [1, 2.4] : [1]) {
            const placed = lettered(laid, {
              scale: laid.scale * nearer,
              flagged: Object.fromEntries(
                laid.views.map(({ name, areas }) => [name, flaggedIn(areas, faults)]),
              ),
              named: namedIn(laid.views, told),
            });
            const boxes = placed.map(corners);
            for (const [k, box] of boxes.entries()) {
              const on = boxes.findIndex((other, n) => n > k && overlap(box, other));
              const says = on < 0 ? "" : `${placed[k]!.lines} on ${placed[on]!.lines}`;
              expect(says, `${path}, ${look}, ${nearer}`).toBe("");
            }
          }
        }
      }
    },
  );

  it.each(sizes)("has every figure, on no line, within the panel, at %i × %i", (width, height) => {
    const room = { width, height };
    for (const { path, sheet } of bare) {
      for (const look of looksAt(width)) {
        const laid = arranged(sheet, { room, look });
        const placed = lettered(laid, { scale: laid.scale });
        const figures = placed.filter(({ label }) => label.kind === "label");
        const all = laid.views.flatMap(({ dimensions }) =>
          dimensions.map(({ label }) => figureOf(label, laid)),
        );
        expect(figures.map(({ lines }) => lines.join(" ")).sort(), `${path}, ${look}`).toEqual(all.sort());
        const block = placed.filter(({ label }) => /^(title|note|scale)$/.test(label.kind));
        const { title, notes } = laid.block ?? { title: [], notes: [] };
        const bar = laid.block ? [sheet.scaleBar.label] : [];
        expect(block.flatMap((one) => one.lines)).toEqual([...title, ...notes, ...bar]);
        const lines = straights(laid, laid.scale);
        for (const figure of figures) {
          const box = corners(figure);
          const on = lines.filter((line) => comesInto(line, box)).length;
          expect(on, `${path}, ${look}: ${figure.lines}`).toBe(0);
        }
        for (const one of placed) {
          // A caption that would reach the panel's edge goes without what stands in brackets.
          const off = one.lines[0]!.includes("(") ? 8 : 0;
          for (const [x, y] of corners(one)) {
            expect(Math.abs(x - (laid.width * laid.scale) / 2), `${path}: ${one.lines}`).toBeLessThan(
              width / 2 - off,
            );
            expect(Math.abs(y - (laid.height * laid.scale) / 2), `${path}: ${one.lines}`).toBeLessThan(
              height / 2,
            );
          }
        }
      }
    }
  });

  it("has figures of 14 to 18 pixels whatever the panel's size, the same at every zoom", () => {
    const { sheet } = bare[0]!;
    for (const [width, height] of sizes) {
      const laid = arranged(sheet, { room: { width, height } });
      for (const scale of [laid.scale, 3 * laid.scale]) {
        for (const { label } of lettered(laid, { scale })) {
          if (label.kind !== "label") continue;
          expect(label.size).toBe(laid.figures);
          expect(label.size).toBeGreaterThanOrEqual(14);
          expect(label.size).toBeLessThanOrEqual(18);
        }
      }
    }
  });

  it("gives the title the room that its heavier letters take", () => {
    const { sheet } = bare[0]!;
    const measure: Measure = (words, size, weight) => estimate(words, size) * (weight === "title" ? 1.3 : 1);
    for (const [width, height] of sizes) {
      const laid = arranged(sheet, { room: { width, height }, measure });
      const titles = lettered(laid, { scale: laid.scale, measure }).filter(
        ({ label }) => label.kind === "title",
      );
      expect(titles.map(({ lines }) => lines.join(" "))).toEqual(laid.block?.title);
      for (const { lines, box, label } of titles)
        expect(box.right - box.left).toBeCloseTo(1.3 * estimate(lines[0]!, label.size), 6);
    }
  });

  it("names each part once, with its section and where it stands", () => {
    const path = "samples/boathouse-mess-chair.chair";
    const laid = arranged(sheetOf(path), { room: { width: 1280, height: 800 } });
    const named = namedIn(laid.views, toldOf(path));
    const names = Object.values(named).flatMap((each) => each.map(({ lines }) => lines[0]));
    expect(new Set(names).size).toBe(names.length);
    const lines = Object.fromEntries(
      Object.values(named).flatMap((each) => each.map((one) => [one.lines[0], one.lines])),
    );
    expect(lines.back).toEqual(["back", "36 × 36 mm", expect.stringMatching(/^rake [\d.]+° back/)]);
    expect(lines["seat-front"]).toEqual([
      "seat-front",
      "22 × 70 mm",
      expect.stringMatching(/^top [\d.]+ mm up$/),
    ]);
    const placed = lettered(laid, { scale: laid.scale, named });
    expect(placed.filter(({ label }) => label.kind === "label named").length).toBeGreaterThan(
      names.length / 2,
    );
  });
});
