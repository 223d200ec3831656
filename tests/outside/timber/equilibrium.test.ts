import { describe, expect, it } from "vitest";
import { equilibrium } from "../../../server/timber/equilibrium.ts";
import { growth } from "../../../server/timber/movement.ts";
import { strengthsOf } from "../../../server/timber/strengths.ts";

describe("equilibrium moisture (Wood Handbook, FPL-GTR-190, equation 4-5)", () => {
  it.each([
    [30, 6.2],
    [50, 9.2],
    [65, 12.0],
    [80, 16.0],
  ])("at 21 °C and %d %% humidity is near the Handbook's table (seen): %f %%", (humidity, table) => {
    // Its makers: 0.13 off on average.
    expect(Math.abs(equilibrium(humidity / 100) * 100 - table)).toBeLessThan(0.15);
  });

  it.each([
    [21, 25, 5.36],
    [21, 60, 10.97],
    [20, 35, 6.96],
    [20, 65, 12.0],
    [60, 55, 8.37],
  ])("at %d °C and %d %% is %f %% by the equation, worked by hand", (celsius, humidity, worked) => {
    expect(equilibrium(humidity / 100, celsius) * 100).toBeCloseTo(worked, 1);
  });
});

describe("movement across the grain (Wood Handbook, table 13-5)", () => {
  it("35 to 65 % at 20 °C over 400 mm, flat and quarter sawn, worked from the printed coefficients", () => {
    const span = (equilibrium(0.65, 20) - equilibrium(0.35, 20)) * 100;
    for (const [species, flat, quarter] of [
      ["white-ash", 5.5, 3.4],
      ["red-oak", 7.4, 3.2],
      ["white-oak", 7.4, 3.6],
      ["hard-maple", 7.1, 3.3],
    ] as const) {
      const known = strengthsOf(species);
      expect(Math.abs((known?.movementTangential ?? 0) * span * 400 - flat), species).toBeLessThan(0.06);
      expect(Math.abs((known?.movementRadial ?? 0) * span * 400 - quarter), species).toBeLessThan(0.06);
    }
  });

  it("the Handbook's own example: white fir, 232 mm flat sawn, 8 to 11 %, C 0.00245: 1.7 mm (its end seen)", () => {
    expect(232 * growth(0.00245, 0.08, 0.11)).toBeCloseTo(1.7, 1);
  });
});
