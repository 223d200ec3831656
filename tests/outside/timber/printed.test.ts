/**
 * Coded numbers of the species tables against named sources: Wood Handbook, FPL-GTR-190 (2010), one edition throughout.
 */
import { describe, expect, it } from "vitest";
import { density } from "../../../server/timber/density.ts";
import { speciesList, speciesOf } from "../../../server/timber/species.ts";
import { strengthsOf } from "../../../server/timber/strengths.ts";

/** Table 4-3 (seen): shrinkage green to oven-dry, percent, radial and tangential. */
const table43: Record<string, [number, number]> = {
  "white-ash": [4.9, 7.8],
  "white-oak": [5.6, 10.5],
  "american-beech": [5.5, 11.9],
  "american-elm": [4.2, 9.5],
  "rock-elm": [4.8, 8.1],
  walnut: [5.5, 7.8],
  cherry: [3.7, 7.1],
  "yellow-birch": [7.3, 9.5],
  "yellow-poplar": [4.6, 8.2],
};

/** Table 13-5 (seen entire for hardwoods): change in size per percent of moisture, radial and tangential. */
const table135: Record<string, [number, number]> = {
  "white-ash": [0.00169, 0.00274],
  "red-oak": [0.00158, 0.00369],
  "white-oak": [0.0018, 0.00365],
  "american-beech": [0.0019, 0.00431],
  "hard-maple": [0.00165, 0.00353],
  "red-maple": [0.00137, 0.00289],
  walnut: [0.0019, 0.00274],
  "american-elm": [0.00144, 0.00338],
  "rock-elm": [0.00165, 0.00285],
  "slippery-elm": [0.00169, 0.00315],
  cherry: [0.00126, 0.00248],
  "yellow-birch": [0.00256, 0.00338],
};

describe("the species table", () => {
  it.each(Object.entries(table43))("shrinkage of %s, table 4-3", (key, [radial, tangential]) => {
    const species = speciesOf(key);
    expect([species?.shrinkRadial, species?.shrinkTangential]).toEqual([radial, tangential]);
  });

  it.each(Object.entries(table135))("movement of %s, table 13-5", (key, [radial, tangential]) => {
    const wood = strengthsOf(key);
    expect([wood?.movementRadial, wood?.movementTangential]).toEqual([radial, tangential]);
  });

  it("names one edition of the Handbook", () => {
    for (const { source } of speciesList) expect(source).not.toMatch(/GTR-282|GTR-113/);
  });

  // By definition G at 12 % is oven-dry weight over volume at 12 %; so density at 12 % is 1120 · G.
  it("says which densities are derived, and derives them as it says", () => {
    const derived = speciesList.filter(({ source }) => source.includes("specific gravity derived"));
    expect(derived.map(({ key }) => key)).toEqual(["european-oak", "european-ash", "european-beech"]);
    for (const species of speciesList)
      expect(density(species, 12)).toBeCloseTo(1120 * species.specificGravity12, 6);
  });
});
