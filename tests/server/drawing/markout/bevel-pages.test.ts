/**
 * The page of bevel settings: each once, at its true angle.
 */
import { describe, expect, it } from "vitest";
import { bevelPages, settingsOf } from "../../../../server/drawing/markout/bevel-pages.ts";
import { Figures } from "../../../../server/drawing/markout/figures.ts";
import { piecesAsked, sheetsAsked } from "../../../../server/drawing/markout/pages.ts";
import { papers } from "../../../../server/drawing/markout/paper.ts";
import { sampleChair } from "../chairs.ts";

const chair = sampleChair("landing-bench");
const figures = new Figures(chair.design.units);
const pieces = piecesAsked(chair);

describe("bevel settings", () => {
  const settings = settingsOf(pieces, figures);

  it("are each there once, and square is none", () => {
    const degrees = settings.map((each) => each.degrees);
    expect(new Set(degrees).size).toBe(degrees.length);
    expect(degrees.every((each) => each > 0 && each < 90)).toBe(true);
  });

  it("hold every bevel that a sheet prints", () => {
    const printed = sheetsAsked(chair, {})
      .parts.flatMap(({ marks }) => marks)
      .filter(({ kind }) => kind === "line")
      .map(({ figures: { bevel } }) => Number(bevel!.value))
      .filter((each) => each !== 90);
    expect(printed.length).toBeGreaterThan(4);
    const degrees = settings.map((each) => each.degrees);
    for (const each of printed) expect(degrees).toContain(Number(Math.min(each, 180 - each).toFixed(1)));
    for (const { uses } of settings) expect(uses.length).toBeGreaterThan(0);
  });

  it("are drawn at their true angles", () => {
    const items = bevelPages(pieces, figures, papers.a4).flatMap((page) => page.items);
    const blades = items.filter((item) => item.is === "line" && item.pen === "outline");
    const drawn = blades.map((item) => {
      const [[x, y], [u, v]] = (item as unknown as { points: [number, number][] }).points as [
        [number, number],
        [number, number],
      ];
      return (Math.atan2(y - v, u - x) * 180) / Math.PI;
    });
    expect(drawn).toHaveLength(settings.length);
    settings.forEach(({ degrees }, k) => {
      expect(drawn[k]).toBeCloseTo(degrees, 6);
    });
  });
});
