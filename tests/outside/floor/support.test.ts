import { describe, expect, it } from "vitest";
import {
  insideBy,
  margin,
  supportOutline,
  tiltToGoOver,
  tippingLines,
} from "../../../server/floor/support.ts";

describe("tipping on four feet", () => {
  const feet = supportOutline([
    [200, 0],
    [-200, 0],
    [180, 400],
    [-180, 400],
    [0, 200],
  ]);
  const lines = tippingLines(feet);
  const back = lines.find((line) => line.way === "back")!;

  it("the outline leaves out a foot inside", () => {
    expect(feet).toHaveLength(4);
    expect(lines.map((line) => line.way).sort()).toEqual(["back", "front", "left", "right"]);
  });

  // Rear-tip arithmetic worked from EN 1022: passes when 600 d + W c >= F (H + 300), F = 0.2857 (1000 − H).
  it.each([
    { seat: 450, weight: 0, c: 0, d: 196.4 },
    { seat: 430, weight: 50, c: 220, d: 179.8 },
  ])("seat $seat mm, weight $weight N: point A must be $d mm ahead of the feet", ({ seat, weight, c, d }) => {
    const push = 0.2857 * (1000 - seat);
    const loads = (ahead: number) => [
      { at: [0, 400 - ahead, seat] as const, force: [0, 0, -600] as const },
      { at: [0, 400, seat + 300] as const, force: [0, push, 0] as const },
      { at: [0, 400 - c, 300] as const, force: [0, 0, -weight] as const },
    ];
    expect(margin(back, loads(d + 0.1))).toBeGreaterThan(1);
    expect(margin(back, loads(d - 0.1))).toBeLessThan(1);
  });

  it("a block goes over when its diagonal stands upright", () => {
    // Half depth 200, centre of gravity 300 up: atan(200/300).
    expect(tiltToGoOver(back, [0, 200, 300])).toBeCloseTo(Math.atan2(200, 300), 12);
    expect(insideBy(back, [0, 200])).toBeCloseTo(200, 12);
  });

  it("nothing lifting has no bound", () => {
    expect(margin(back, [{ at: [0, 200, 440], force: [0, 0, -600] }])).toBe(Number.POSITIVE_INFINITY);
  });
});
