import { describe, expect, it } from "vitest";
import { density } from "../../../server/timber/density.ts";
import { speciesList, speciesOf } from "../../../server/timber/species.ts";

describe("density of timber", () => {
  it("at 12 % is 1000 · G · 1.12 (Wood Handbook, ch. 4)", () => {
    expect(density(speciesOf("white-ash")!, 12)).toBeCloseTo(1000 * 0.6 * 1.12, 9);
    expect(density(speciesOf("white-oak")!, 12)).toBeCloseTo(761.6, 9);
  });

  it("oven-dry is heavier for its size than its specific gravity at 12 % and loses the water", () => {
    const ash = speciesOf("white-ash")!;
    // Shrinkage 4.9 and 7.8 % over 30 points of moisture: the volume falls from 12 % to 0 % by (1−0.0294)(1−0.0468) → (1−0.049)(1−0.078).
    const volume = ((1 - 0.049) * (1 - 0.078)) / ((1 - 0.049 * 0.6) * (1 - 0.078 * 0.6));
    expect(density(ash, 0)).toBeCloseTo(600 / volume, 6);
  });

  it("rises with moisture for every species", () => {
    for (const species of speciesList) {
      expect(density(species, 9)).toBeLessThan(density(species, 12));
      expect(density(species, 12)).toBeLessThan(density(species, 20));
    }
  });
});
