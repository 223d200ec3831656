import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Laid } from "../../../client/panel/webview/arrange.ts";
import { frameOf, middle, moved, zoomed } from "../../../client/panel/webview/frame.ts";

const sheet: Laid = {
  moved: {},
  title: "",
  views: [
    {
      name: "side",
      caption: "Side",
      captionAt: [900, 1100],
      bounds: { x: 700, y: 100, width: 400, height: 900 },
      strokes: [],
      areas: [],
      dimensions: [
        {
          name: "seat.height",
          label: "440",
          labelAt: [650, 800],
          line: [
            [660, 560],
            [660, 1000],
          ],
          extensions: [],
        },
      ],
    },
  ],
  width: 1400,
  height: 2000,
  scaleBar: { at: [0, 0], length: 200, label: "200 mm", divisions: 4 },
};
const point = fc.tuple(fc.integer({ min: 0, max: 1400 }), fc.integer({ min: 0, max: 2000 }));

describe("what the panel shows", () => {
  it("is the whole sheet, or one view with its caption and dimensions", () => {
    expect(frameOf(sheet, "all")).toEqual({ x: 0, y: 0, width: 1400, height: 2000 });
    expect(frameOf(sheet, "side")).toEqual({ x: 590, y: 40, width: 570, height: 1120 });
    expect(frameOf(sheet, "plan")).toEqual(frameOf(sheet, "all"));
  });

  it("is the view where it was moved to", () => {
    expect(frameOf({ ...sheet, moved: { side: [100, -20] } }, "side")).toEqual({
      x: 690,
      y: 20,
      width: 570,
      height: 1120,
    });
  });

  it("keeps the point zoomed about in its place", () => {
    const near = zoomed(frameOf(sheet, "all"), 2, [350, 500], sheet);
    expect(near).toEqual({ x: 175, y: 250, width: 700, height: 1000 });
  });

  it("comes back when zoomed in and out again about its middle", () => {
    const whole = frameOf(sheet, "all");
    fc.assert(
      fc.property(fc.double({ min: 1, max: 10, noNaN: true }), (factor) => {
        const back = zoomed(zoomed(whole, factor, middle(whole), sheet), 1 / factor, middle(whole), sheet);
        expect(back.width).toBeCloseTo(whole.width, 6);
        expect(back.x).toBeCloseTo(whole.x, 6);
      }),
    );
  });

  it("never loses the sheet, however it is moved and zoomed", () => {
    const step = fc.tuple(fc.double({ min: 0.01, max: 100, noNaN: true }), point, point);
    fc.assert(
      fc.property(fc.array(step), (steps) => {
        let frame = frameOf(sheet, "all");
        for (const [factor, about, by] of steps)
          frame = moved(zoomed(frame, factor, about, sheet), by, sheet);
        const [x, y] = middle(frame);
        expect(x).toBeGreaterThanOrEqual(-1e-6);
        expect(x).toBeLessThanOrEqual(1400 + 1e-6);
        expect(y).toBeGreaterThanOrEqual(-1e-6);
        expect(y).toBeLessThanOrEqual(2000 + 1e-6);
        expect(frame.width).toBeGreaterThan(30);
        expect(frame.width).toBeLessThan(2801);
      }),
    );
  });
});
