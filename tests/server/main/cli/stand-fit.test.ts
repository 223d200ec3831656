import { describe, expect, it } from "vitest";
import { fitOutput, standOutput } from "../../../../server/main/cli/schema.ts";
import { chairs, messChair, mistyped, seatwright } from "./bench.ts";

const sample = (name: string) => messChair.replace("boathouse-mess-chair", name);
const path = chairs({ "stool.chair": mistyped });

describe("seatwright stand", () => {
  it("tells height, feet, weight, tilt, margins and the caution", () => {
    const { out, code } = seatwright("stand", messChair);
    expect(code).toBe(0);
    expect(out).toMatch(/seat\.height +439\.7 mm/);
    expect(out).toMatch(/back\.left\.foot-bevel +87\.3° \(1:21\.4\)/);
    expect(out).toMatch(/whole chair +6\.\d+ kg/);
    expect(out).toMatch(/backwards +22\.8°/);
    expect(out).toMatch(/a sitter leaning back +margin 1\.14 +holds/);
    expect(out).toContain("A calculation is not a test");
    expect(out).toContain("from memory");
  });

  it("gives JSON that fits its schema", () => {
    const found = standOutput.parse(JSON.parse(seatwright("stand", messChair, "--format", "json").out));
    expect(found.cases.map((one) => one.way).sort()).toEqual(["back", "front", "side"]);
    expect(found.parts.reduce((sum, part) => sum + part.weight, 0)).toBeCloseTo(found.weight!, 2);
    expect(found.centre![0]).toBeCloseTo(0, 6);
  });

  it("does what it can with a broken file and ends with 1", () => {
    const { out, code } = seatwright("stand", path("stool.chair"));
    expect(code).toBe(1);
    expect(out).toContain("Nothing to load");
  });
});

describe("seatwright fit", () => {
  it("tells the share of women and men, and what excludes most", () => {
    const { out, code } = seatwright("fit", messChair);
    expect(code).toBe(0);
    expect(out).toMatch(/Of women it suits \d+%/);
    expect(out).toMatch(/Most are excluded because it must be that the hips find room/);
    expect(out).toContain("ANSUR II");
  });

  it("gives JSON that fits its schema", () => {
    const found = fitOutput.parse(JSON.parse(seatwright("fit", messChair, "--format", "json").out));
    expect(found.groups.map(({ group }) => group)).toEqual(["women", "men"]);
    expect(found.together).toBeCloseTo((found.groups[0]!.share + found.groups[1]!.share) / 2, 3);
  });

  it("judges a child's chair by the size marks, and a named sitter by their own measures", () => {
    expect(seatwright("fit", sample("small-mess-chair")).out).toContain("Size marks of EN 1729-1");
    const own = fitOutput.parse(
      JSON.parse(seatwright("fit", sample("harbour-chair"), "--format", "json").out),
    );
    expect(own.sitter.length + own.groups.length).toBeGreaterThan(0);
  });
});
