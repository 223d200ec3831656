import { describe, expect, it } from "vitest";
import { editionOf } from "../../../server/floor/editions.ts";
import { inset, tipCases } from "../../../server/floor/load-cases.ts";
import { supportOutline, tippingLines } from "../../../server/floor/support.ts";
import { childWeight } from "../../../server/sitter/child-weight.ts";

describe("loads of EN 1022", () => {
  const en = editionOf("en-1022-2018");

  it("push on the back: 0.2857 (1000 − H) below 720 mm, 80 N from there up", () => {
    expect(en.backForce(450)).toBeCloseTo(157.135, 6);
    expect(en.backForce(719.9)).toBeCloseTo(80.02, 1);
    expect(en.backForce(800)).toBe(80);
  });

  it("says which figures were not seen in print", () => {
    expect(en.fromMemory).toContain("armLoad");
    expect(en.fromMemory).not.toContain("seatLoad");
  });
});

describe("a stool on four feet, 600 N at 60 mm from the edge with 20 N outwards", () => {
  // Seat 400 × 400 overhanging feet at ±100 by 100 mm: the load stands 40 mm outside the feet.
  const seat = [
    [200, 0, 450],
    [200, 400, 450],
    [-200, 400, 450],
    [-200, 0, 450],
  ] as const;
  const feet = supportOutline([
    [100, 100],
    [-100, 100],
    [100, 300],
    [-100, 300],
  ]);
  const weight = { at: [0, 200, 300] as const, force: [0, 0, -40] as const };
  const cases = tipCases(
    tippingLines(feet),
    { seat: [...seat], seatHeight: 450, unloadedHeight: 450, arms: [], weight },
    editionOf("en-1022-2018"),
  );

  it("goes over on every side: 40 N · 100 mm holds, 600 N · 40 mm + 20 N · 450 mm lifts", () => {
    expect(cases.map((one) => one.way).sort()).toEqual(["back", "front", "side"]);
    for (const one of cases) {
      expect(one.margin).toBeCloseTo((40 * 100) / (600 * 40 + 20 * 450), 9);
      // Moving the feet out by `short` brings it to the point of balance.
      expect(one.short).toBeCloseTo((600 * 40 + 20 * 450 - 40 * 100) / 640, 9);
    }
  });

  it("moves an outline in by the same distance all round", () => {
    expect(inset(seat, 60).map((p) => p.map((v) => Math.round(v * 1e6) / 1e6))).toEqual([
      [140, 60],
      [140, 340],
      [-140, 340],
      [-140, 60],
    ]);
  });
});

// CDC 2000 growth charts, weight for age at the birthday (Vital and Health Statistics 11(246), 2002; data file seen): 5th, 50th and
// 95th percentile of boys and girls. Under 8 boys' alone.
describe("weights of children and youths (CDC 2000)", () => {
  it("take both sexes: the heavier at the 95th, girls to 13 and boys from 14", () => {
    expect(childWeight(8)).toEqual([20.1, 25.8, 36.2]);
    expect(childWeight(13)[2]).toBe(67.6);
    expect(childWeight(14)[2]).toBe(72.7);
    expect(childWeight(18)).toEqual([45.4, (67.3 + 56.2) / 2, 92]);
    expect(childWeight(12)[1]).toBeCloseTo((40.7 + 41.8) / 2, 9);
  });

  it("run straight between the table's ages, and under 8 are boys'", () => {
    expect(childWeight(6)).toEqual([16.9, 20.8, 27]);
    expect(childWeight(5)[1]).toBeCloseTo((16.3 + 20.8) / 2, 9);
    expect(childWeight(2)).toEqual(childWeight(4));
  });
});
