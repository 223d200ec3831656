import { readFileSync } from "node:fs";
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

  it("says how long it may last as a range, with its back pushed as hard as it stands", () => {
    const { out } = seatwright("strength", messChair, "--format", "json");
    const { lasting, cases } = strengthOutput.parse(JSON.parse(out));
    const sitting = cases.find(
      ({ name, stiffness }) => name === "repeated-sitting" && stiffness === "middle",
    );
    expect(lasting?.pushed).toBe(sitting?.pushed);
    expect(lasting?.pushed).toBeLessThan(1);
    expect(lasting?.fewest).toBeLessThan(lasting?.most ?? 0);
    expect(seatwright("strength", messChair).out.replace(/\s+/g, " ")).toMatch(
      /sittings as hard as the standard's, its back pushed at \d\d% since more would tip it over; 12 a day are \d/,
    );
  });

  it("says why a load is not stood", () => {
    const lifted = chairs({
      "lifted.chair": `${readFileSync(messChair, "utf8")}\nload hoist {\n  push 300N up on seat\n}\n`,
    })("lifted.chair");
    const says = /lifted off the floor: what pushes it up is \d+ N more than it weighs/;
    expect(seatwright("strength", lifted).out).toMatch(says);
    const { cases } = strengthOutput.parse(
      JSON.parse(seatwright("strength", lifted, "--format", "json").out),
    );
    expect(
      cases.filter(({ why }) => why !== undefined).map(({ why, state }) => [state, says.test(why ?? "")]),
    ).toEqual(Array.from({ length: 3 }, () => ["tips", true]));
  });

  it("refuses an unknown level, and a chair with nothing to load", () => {
    expect(seatwright("strength", messChair, "--level", "gentle").code).toBe(2);
    expect(seatwright("strength", messChair, "--model").code).toBe(2);
    const { error, code } = seatwright("strength", path("leg.chair"));
    expect(error).toContain("there is nothing to load");
    expect(code).toBe(1);
  });
});
