import { describe, expect, it } from "vitest";
import { strengthOutput } from "../../../../server/main/cli/schema-strength.ts";
import { chairs, messChair, seatwright } from "./bench.ts";

const path = chairs({
  "leg.chair": "post leg pair {\n  section 30 x 30\n  foot out 100, back 0\n  height 400\n}\n",
});

describe("seatwright strength", () => {
  it("says how hard each joint works, under which case, and what it cannot say", () => {
    const { out, code } = seatwright("strength", messChair);
    expect(out).toContain("EN 12520");
    expect(out).toMatch(/side-stretcher\.left to back\.left +0\.\d\d/);
    expect(out).toContain("A standard's test is made by a competent laboratory");
    expect(out).toContain("from memory");
    expect(code).toBe(0);
  });

  it("gives the whole model, so that anyone can solve it again", () => {
    const { out } = seatwright("strength", messChair, "--format", "json", "--model");
    const output = strengthOutput.parse(JSON.parse(out));
    const ids = new Set(output.model?.nodes.map(({ id }) => id));
    expect(ids.size).toBe(output.model?.nodes.length);
    for (const { from, to } of [...(output.model?.members ?? []), ...(output.model?.springs ?? [])])
      expect(ids.has(from) && ids.has(to)).toBe(true);
    for (const { ends, displacements, reactions } of output.cases) {
      expect(ends).toHaveLength(output.model?.members.length ?? -1);
      expect(displacements).toHaveLength(ids.size);
      expect(reactions?.length).toBe(4);
    }
  });

  it("refuses an unknown level, and a chair with nothing to load", () => {
    expect(seatwright("strength", messChair, "--level", "gentle").code).toBe(2);
    expect(seatwright("strength", messChair, "--model").code).toBe(2);
    const { error, code } = seatwright("strength", path("leg.chair"));
    expect(error).toContain("there is nothing to load");
    expect(code).toBe(1);
  });
});
