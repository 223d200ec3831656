import { describe, expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { study } from "../../../server/study.ts";

const files = { resolve: () => undefined, read: () => undefined };

describe("a species that the table lacks", () => {
  it.each([
    ["white-oka", ["make it white-oak"]],
    ["whiteoak", ["make it white-oak"]],
    ["ash", ["make it white-ash", "make it european-ash"]],
    ["black-walnutt", ["make it walnut"]],
    ["bog-wood", []],
  ])("%s", (species, titles) => {
    // The weight asked for cannot be had: it comes to light only when the species has a weight, and is no reason against the name.
    const text = `units mm
timber ${species}
post leg { section 40 x 40
foot out 0, back 0
height 450 }
require weight at most 0.1kg
`;
    const found = study({ text, address: "file:///a.chair", files });
    mend(found, files);
    const [problem] = found.problems.filter(({ code }) => code === "unknown-species");
    expect(problem?.mends?.map(({ title }) => title.toLowerCase())).toEqual(titles);
  });
});
