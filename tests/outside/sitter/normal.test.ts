/**
 * Against jStat, and against the table of percentage points in Abramowitz and Stegun (26.1 and 26.6, from memory).
 */
import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it } from "vitest";
import { normalQuantile, normalShareBelow } from "../../../server/sitter/normal.ts";

describe("the normal distribution", () => {
  it.each([
    [0, 0.5],
    [1, 0.841344746],
    [1.644854, 0.95],
    [1.959964, 0.975],
    [2.326348, 0.99],
    [3.090232, 0.999],
    [-2.575829, 0.005],
  ])("has at %d the tabled share %d below", (z, share) => {
    expect(normalShareBelow(z)).toBeCloseTo(share, 7);
    expect(normalQuantile(share)).toBeCloseTo(z, 5);
  });

  it("agrees with jStat everywhere", () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        expect(normalShareBelow(z)).toBeCloseTo(jStat.normal.cdf(z, 0, 1), 11);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (share) => {
        expect(normalQuantile(share)).toBeCloseTo(jStat.normal.inv(share, 0, 1), 6);
      }),
    );
  });

  it("is undone by its inverse far into the tails, and is infinite at the ends", () => {
    for (const share of [1e-300, 1e-12, 0.2, 0.5]) {
      expect(normalShareBelow(normalQuantile(share)) / share).toBeCloseTo(1, 9);
    }
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
  });

  it("has no step where its two formulas meet", () => {
    for (const z of [-3.5, 3.5]) {
      expect(normalShareBelow(z + 1e-12)).toBeCloseTo(normalShareBelow(z - 1e-12), 14);
    }
  });
});
