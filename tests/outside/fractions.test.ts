import Fraction from "fraction.js";
import { expect, it } from "vitest";
import { printBareLength } from "../../server/design/units.ts";

it("inches are printed as fraction.js prints them", () => {
  for (const parts of [1, 2, 3, 8, 16, 32, 64]) {
    for (let count = -200; count <= 2000; count += 1) {
      const mm = (25.4 * count) / parts;
      expect(printBareLength(mm, "in", parts)).toBe(new Fraction(count, parts).toFraction(true));
    }
  }
});
