import { describe, expect, it } from "vitest";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { limb } from "../../../server/drawing/limbs.ts";
import type { Overlay, Sheet, View } from "../../../server/drawing/sheet.ts";
import { sheetToSvg } from "../../../server/drawing/svg.ts";
import { balanceOf } from "../../../server/floor/tips.ts";
import { bodyOf } from "../../../server/sitter/body.ts";
import { sampleChair, sampleNames } from "./chairs.ts";

const viewOf = (sheet: Sheet, name: View["name"]): View => sheet.views.find((view) => view.name === name)!;
const overlayOf = (sheet: Sheet, name: Overlay["name"]): Overlay | undefined =>
  sheet.views.flatMap(({ overlays = [] }) => overlays).find((overlay) => overlay.name === name);

describe("what is laid over a drawing", () => {
  it("is there only when it is asked for; the chair is drawn the same", () => {
    const chair = sampleChair("boathouse-mess-chair");
    const plain = drawSheet(chair);
    const laid = drawSheet(chair, ["floor", "sitter"]);
    expect(overlayOf(plain, "floor")).toBeUndefined();
    for (const view of plain.views) {
      const other = viewOf(laid, view.name);
      const shift = [other.bounds.x - view.bounds.x, other.bounds.y - view.bounds.y];
      expect(other.strokes.filter(({ part }) => part)).toHaveLength(
        view.strokes.filter(({ part }) => part).length,
      );
      const [x, y] = view.strokes[0]!.points[0]!;
      expect(other.strokes[0]!.points[0]![0]).toBeCloseTo(x + shift[0]!, 1);
      expect(other.strokes[0]!.points[0]![1]).toBeCloseTo(y + shift[1]!, 1);
    }
    expect(laid.notes).toHaveLength(4);
  });

  it.each(sampleNames)("of %s keeps within the sheet, and clear of the other views", (name) => {
    const sheet = drawSheet(sampleChair(name), ["floor", "sitter"]);
    for (const overlay of sheet.views.flatMap(({ overlays = [] }) => overlays)) {
      for (const [x, y] of overlay.strokes.flatMap(({ points }) => points)) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(sheet.width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(sheet.height);
      }
    }
    const front = viewOf(sheet, "front").bounds;
    const left = Math.min(
      ...overlayOf(sheet, "sitter")!.strokes.flatMap(({ points }) => points.map(([x]) => x)),
    );
    expect(left).toBeGreaterThan(front.x + front.width);
  });

  it("is part of the SVG file", () => {
    const svg = sheetToSvg(drawSheet(sampleChair("mess-armchair"), ["floor", "sitter"]));
    expect(svg).toMatch(/<g class="sitter">/);
    expect(svg).toMatch(/<g class="floor"[^>]*>/);
    expect(svg).toContain("A calculation is not a test.");
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe("how it stands, in plan", () => {
  const chair = sampleChair("boathouse-mess-chair");
  const sheet = drawSheet(chair, ["floor"]);
  const { strokes, words } = overlayOf(sheet, "floor")!;
  const plan = viewOf(sheet, "plan");
  const centre = plan.strokes.find(({ is }) => is === "centre")!.points[0]![0];

  it("marks the centre of gravity where it is, on the centre line", () => {
    const ring = strokes.find(({ is }) => is === "centre")!.points;
    const mean = (axis: 0 | 1) => ring.reduce((sum, point) => sum + point[axis], 0) / ring.length;
    const { weight, standing } = balanceOf(chair);
    expect(mean(0)).toBeCloseTo(centre + weight.centre[0], 1);
    const feet = strokes.filter(({ is }) => is === "foot").flatMap(({ points }) => points.map(([, y]) => y));
    const backmost = Math.max(...[...standing.feet.values()].flat().map(([, y]) => y));
    expect(Math.min(...feet) - mean(1)).toBeCloseTo(-(backmost - weight.centre[1]), 1);
  });

  it("says each way by its margin, and each load by its force", () => {
    const said = words.map(({ text }) => text);
    for (const { way, margin } of balanceOf(chair).cases)
      expect(said).toContain(
        `${{ front: "forwards", back: "backwards", side: "sideways" }[way]}: ${margin.toFixed(2)}`,
      );
    // Each load once, at its own place, whichever ways it pushes.
    const places = new Set(
      balanceOf(chair)
        .cases.flatMap(({ loads }) => loads.slice(1))
        .filter(({ force }) => Math.round(Math.hypot(...force)) === 600)
        .map(({ at }) => at.map((mm) => mm.toFixed(3)).join()),
    );
    expect(places.size).toBeGreaterThan(1);
    expect(said.filter((text) => text === "600 N")).toHaveLength(places.size);
    expect(strokes.filter(({ is }) => is === "tipping")).toHaveLength(3);
  });
});

describe("the sitter, from the side", () => {
  it("is drawn to scale: as far from crown to sole as the sizes and the bent knee allow", () => {
    const chair = sampleChair("boathouse-mess-chair");
    const sheet = drawSheet(chair, ["sitter"]);
    const ys = overlayOf(sheet, "sitter")!.strokes.flatMap(({ points }) => points.map(([, y]) => y));
    const { measures } = bodyOf(chair.design.sitter.value);
    const loaded = chair.values.get("seat.loaded-height")!.number;
    const lean = chair.values.get("backrest.rake")!.number;
    const tall = Math.max(...ys) - Math.min(...ys);
    // Seat and sitting height, the trunk leaning back a little.
    expect(tall).toBeLessThan(loaded + measures["sitting-height"] + 15);
    expect(tall).toBeGreaterThan(loaded + measures["sitting-height"] * Math.cos(lean) - 25);
  });

  it("is a limb with round ends where two circles meet", () => {
    const outline = limb([0, 0], 20, [100, 0], 10);
    for (const [x, y] of outline) {
      const off = Math.min(Math.abs(Math.hypot(x, y) - 20), Math.abs(Math.hypot(x - 100, y) - 10));
      expect(off).toBeLessThan(1e-9);
    }
    expect(Math.max(...outline.map(([x]) => x))).toBeCloseTo(110, 9);
    expect(Math.min(...outline.map(([x]) => x))).toBeCloseTo(-20, 9);
  });
});
