/**
 * Lengths in whole steps: whatever the sizes, what fits on the sheets fits.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  Figures,
  mortiseSteps,
  shoulderSteps,
  tenonSteps,
} from "../../../../server/drawing/markout/figures.ts";
import { spread } from "../../../../server/drawing/markout/spread.ts";
import type { Mortise } from "../../../../server/joinery/pieces/piece.ts";

const mm = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const units = fc.constantFrom(
  new Figures("mm"),
  new Figures("cm"),
  new Figures("in", 16),
  new Figures("in", 32),
  new Figures("in", 64),
);

describe("figures on the sheets", () => {
  it("never make a mortise narrower, shorter or shallower than its tenon", () => {
    const sizes = fc.record({
      thick: mm(3, 20),
      wide: mm(20.5, 80),
      long: mm(8, 60),
      at: mm(0, 900),
      gauge: mm(2, 40),
      skew: mm(-3, 3),
    });
    fc.assert(
      fc.property(units, sizes, (figures, { thick, wide, long, at, gauge, skew }) => {
        const tenon = tenonSteps(figures, { thick, wide, long });
        const mortise: Omit<Mortise, "letter"> = {
          is: "mortise",
          face: "front",
          for: "rail",
          datum: "D1",
          // A mouth that leans: measured along and across it is a little smaller than its tenon.
          from: [at, at + skew / 10],
          to: [at + wide * 0.9995, at + wide * 0.9995 + skew / 10],
          near: [gauge, gauge + skew],
          far: [gauge + thick * 0.9995, gauge + thick * 0.9995 + skew],
          gaugedFrom: "outside",
          deep: long,
          tenon: { thick, wide },
          lean: { along: 0, across: 0 },
        };
        const cut = mortiseSteps(figures, mortise);
        for (const k of [0, 1] as const) {
          expect(cut.to[k] - cut.from[k]).toBeGreaterThanOrEqual(tenon.wide);
          expect(cut.far[k] - cut.near[k]).toBeGreaterThanOrEqual(tenon.thick);
          // Nor wider than a step more: the joint is not to be slack.
          expect(cut.to[k] - cut.from[k]).toBeLessThanOrEqual(tenon.wide + 1);
          expect(cut.far[k] - cut.near[k]).toBeLessThanOrEqual(tenon.thick + 1);
          expect(Math.abs(cut.from[k] * figures.step - mortise.from[k])).toBeLessThan(figures.step * 1.5);
        }
        expect(cut.deep!).toBeGreaterThanOrEqual(tenon.long);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });

  it("make tenon and shoulders come to the stuff's own size", () => {
    const sizes = fc.record({ one: mm(1, 15), other: mm(1, 15), tenon: mm(4, 40) });
    fc.assert(
      fc.property(units, sizes, (figures, { one, other, tenon }) => {
        const steps = figures.steps(tenon);
        const [a, b] = shoulderSteps(figures, steps, [one, other], one + tenon + other);
        expect(a + steps + b).toBe(figures.steps(one + tenon + other));
        expect(Math.abs(b * figures.step - other)).toBeLessThan(figures.step * 1.6);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });

  it("read back as the length they stand for", () => {
    const value = (text: string) =>
      text.split(" ").reduce((sum, part) => {
        const [over, under = "1"] = part.split("/");
        return sum + Number(over) / Number(under);
      }, 0);
    const figures = new Figures("in", 64);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), (steps) => {
        expect(value(figures.text(steps))).toBe(steps / 64);
      }),
      { seed: 7 },
    );
    expect(figures.print(25.4 * 17.375)).toBe("17 3/8");
    expect(new Figures("mm").print(155.97)).toBe("156");
    expect([figures.steps(10.1, "down"), figures.steps(10.1, "up")]).toEqual([25, 26]);
    expect([figures.steps(25.4, "down"), figures.steps(25.4, "up")]).toEqual([64, 64]);
  });
});

describe("labels along a line", () => {
  it("stand apart, in order, and no farther from their places than they must", () => {
    const places = fc.array(mm(0, 200), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(places, (wanted) => {
        const found = spread(wanted, 3, 0, 240);
        const order = wanted.map((_, k) => k).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
        const sorted = order.map((k) => found[k]!);
        for (let k = 1; k < sorted.length; k++) expect(sorted[k]! - sorted[k - 1]!).toBeGreaterThan(3 - 1e-6);
        expect(Math.min(...found)).toBeGreaterThan(-1e-6);
        expect(Math.max(...found)).toBeLessThan(240 + 1e-6);
        if (wanted.length === 1) expect(found[0]).toBeCloseTo(wanted[0]!, 9);
      }),
      { seed: 7, numRuns: 500 },
    );
    expect(spread([10, 11, 12], 3, 0, 100)).toEqual([8, 11, 14]);
    expect(spread([50, 10], 3, 0, 100)).toEqual([50, 10]);
  });
});
