import { jStat } from "jstat";
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import data from "../../../server/sitter/adult-body-sizes.json" with { type: "json" };
import {
  correlation,
  type Measure,
  measures,
  quantile,
  shareBelow,
} from "../../../server/sitter/body-sizes.ts";
import { jointShare } from "../../../server/sitter/joint-share.ts";

// ANSUR II (2012), quantiles and correlations as published in the data file.
describe("one measure against the quantile table of ANSUR II", () => {
  for (const group of ["women", "men"] as const) {
    for (const measure of measures) {
      it(`${group}, ${measure}: the share at each printed quantile within 0.5 %`, () => {
        data.quantilesPercent.forEach((percent, i) => {
          const value = data.groups[group].measures[measure].quantiles[i]!;
          expect(Math.abs(shareBelow(group, measure, value) * 100 - percent)).toBeLessThan(0.5);
          expect(jointShare(group, [{ measure, high: value }]) * 100).toBeCloseTo(percent, 0);
        });
      });
    }
  }

  it("tails go on rising past the table and quantile undoes share", () => {
    for (const share of [0.002, 0.05, 0.33, 0.5, 0.9, 0.998]) {
      expect(shareBelow("men", "stature", quantile("men", "stature", share))).toBeCloseTo(share, 6);
    }
    expect(shareBelow("women", "popliteal-height", 300)).toBeGreaterThan(0);
    expect(shareBelow("women", "popliteal-height", 300)).toBeLessThan(0.01);
  });
});

// Pheasant, Bodyspace: British adults 19–65, civilian: another population, so only near. 5th, 50th, 95th percentile, mm.
describe("against British adults of Bodyspace, within the difference of the populations", () => {
  const printed: [Measure, "women" | "men", number[]][] = [
    ["popliteal-height", "men", [395, 440, 490]],
    ["popliteal-height", "women", [355, 400, 445]],
    ["buttock-popliteal-length", "men", [440, 495, 550]],
    ["buttock-popliteal-length", "women", [435, 480, 530]],
  ];
  it.each(printed)("%s of %s", (measure, group, values) => {
    values.forEach((value, i) => {
      expect(Math.abs(quantile(group, measure, [0.05, 0.5, 0.95][i]!) - value)).toBeLessThan(25);
    });
  });
});

describe("several measures at once", () => {
  const ranges = [
    { measure: "popliteal-height", low: 400, high: 450 },
    { measure: "buttock-popliteal-length", low: 470 },
    { measure: "hip-breadth-sitting", high: 420 },
    { measure: "shoulder-height-sitting", low: 540, high: 640 },
  ] as const;

  for (const group of ["women", "men"] as const) {
    it(`${group}: agrees with direct sampling from the given correlations within 0.5 %`, () => {
      const names = ranges.map((range) => range.measure);
      // The root and the quantiles are those of independent libraries (ml-matrix, jStat).
      const correlations = new Matrix(names.map((a) => names.map((b) => correlation(group, a, b))));
      const root = new CholeskyDecomposition(correlations).lowerTriangularMatrix.to2DArray();
      const limits = ranges.map((range) => ({
        low: "low" in range ? jStat.normal.inv(shareBelow(group, range.measure, range.low), 0, 1) : -Infinity,
        high:
          "high" in range ? jStat.normal.inv(shareBelow(group, range.measure, range.high), 0, 1) : Infinity,
      }));
      const random = seeded(20261125);
      const samples = 200_000;
      let fitting = 0;
      for (let s = 0; s < samples; s += 1) {
        const free = names.map(() => normal(random));
        const fits = limits.every(({ low, high }, i) => {
          let z = 0;
          for (let j = 0; j <= i; j += 1) z += root[i]![j]! * free[j]!;
          return z >= low && z <= high;
        });
        if (fits) fitting += 1;
      }
      // Three standard errors of the sampling, and half a percent for the lattice.
      expect(Math.abs(jointShare(group, ranges) - fitting / samples)).toBeLessThan(0.005);
    }, 60_000);
  }

  it("independent of the order asked and the same every time", () => {
    expect(jointShare("men", [...ranges].reverse())).toBe(jointShare("men", ranges));
  });

  it("an empty range fits nobody, no range fits all", () => {
    expect(jointShare("men", [{ measure: "stature", low: 1800, high: 1700 }])).toBe(0);
    expect(jointShare("men", [])).toBe(1);
  });

  it("two equal halves of uncorrelated measures would be a quarter; correlation makes it more", () => {
    const both = jointShare("men", [
      { measure: "stature", high: quantile("men", "stature", 0.5) },
      { measure: "popliteal-height", high: quantile("men", "popliteal-height", 0.5) },
    ]);
    // Sheppard's orthant formula: 1/4 + asin(r)/2π.
    const r = correlation("men", "stature", "popliteal-height");
    expect(both).toBeCloseTo(0.25 + Math.asin(r) / (2 * Math.PI), 3);
  });
});

function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 0.5) / 4294967296;
  };
}

function normal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}
