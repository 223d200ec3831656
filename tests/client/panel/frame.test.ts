import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { middle, moved, wholeFrame, zoomed } from "../../../client/panel/webview/frame.ts";

const sheet = { width: 1400, height: 2000 };
const point = fc.tuple(fc.integer({ min: 0, max: 1400 }), fc.integer({ min: 0, max: 2000 }));

describe("what the panel shows", () => {
  it("keeps the point zoomed about in its place", () => {
    const near = zoomed(wholeFrame(sheet), 2, [350, 500], sheet);
    expect(near).toEqual({ x: 175, y: 250, width: 700, height: 1000 });
  });

  it("comes back when zoomed in and out again about its middle", () => {
    const whole = wholeFrame(sheet);
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
        let frame = wholeFrame(sheet);
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
