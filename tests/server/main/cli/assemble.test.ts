import { describe, expect, it } from "vitest";
import { assembleOutput } from "../../../../server/main/cli/schema.ts";
import { exampleOf } from "../../../rule-examples.ts";
import { chairs, messChair, mistyped, seatwright } from "./bench.ts";

const path = chairs({
  "locked.chair": exampleOf("cannot-be-assembled") ?? "",
  "stool.chair": mistyped,
});

describe("seatwright assemble", () => {
  it("tells each glue-up: what is brought together, what closes, the diagonals, the lengths", () => {
    const { out, code } = seatwright("assemble", messChair);
    expect(code).toBe(0);
    expect(out).toMatch(
      /1\. Right side frame\n +first, alone +seat-side\.right into back\.right, along its own tenon\n/,
    );
    expect(out).toMatch(/spring +the end of seat-side\.right 0\.3 mm up, into front\.right\n/);
    expect(out).toContain("crest, back-slat.1 to back-slat.4, back-lower");
    expect(out).toMatch(/seat-side to front and back \(2\)/);
    // The front posts stand 2 · 205 apart and are 440 − 12 high.
    expect(out).toContain(`both ${Math.round(Math.hypot(410, 428) * 10) / 10} mm`);
    expect(out).toMatch(/front\.left to front\.right: 410 mm at the feet and at the\s+tops/);
    expect(out).toMatch(/close +4 joints:\n.*\n.*\n +spring .*\n.*\n.*\n +glue +pva\n/);
    expect(out).toMatch(/front\.left to back\.right and front\.right to back\.left:\n? +both/);
    for (const line of out.split("\n")) expect(line.length).toBeLessThan(80);
  });

  it("gives JSON that fits its schema, every joint closed once", () => {
    const found = assembleOutput.parse(JSON.parse(seatwright("assemble", messChair, "--format", "json").out));
    expect(found.glueUps.map(({ name }) => name)).toEqual([
      "right side frame",
      "panel of back-lower and crest",
      "left side frame",
      "whole chair",
    ]);
    const closed = found.glueUps.flatMap(({ closes }) => closes);
    expect(new Set(closed).size).toBe(closed.length);
    expect(found.glueUps[3]?.diagonals[0]?.[0].mm).toBeCloseTo(Math.hypot(410, 428), 3);
    expect(found.glueUps[3]?.first.map(({ part }) => part)).toContain("seat-front");
    expect(found.glueUps[0]?.sprung.map(({ part, towards }) => [part, towards])).toEqual([
      ["seat-side.right", "up"],
      ["side-stretcher.right", "down"],
    ]);
    expect(found.locked).toEqual([]);
  });

  it("says which joints forbid an order, and ends with 1", () => {
    const { out, code } = seatwright("assemble", path("locked.chair"));
    expect(code).toBe(1);
    expect(out).toContain("No order closes these");
    expect(out).toMatch(/stretcher\.left to front\.left: 5° off, strays 3 mm over its length/);
    const { locked } = assembleOutput.parse(
      JSON.parse(seatwright("assemble", path("locked.chair"), "--format", "json").out),
    );
    expect(locked.flatMap(({ joints }) => joints.map(({ deg }) => Math.round(deg)))).toContain(5);
  });

  it("does what it can with a broken file and ends with 1", () => {
    const { out, error, code } = seatwright("assemble", path("stool.chair"));
    expect(code).toBe(1);
    expect(out).toContain("Nothing is joined");
    expect(error).toContain("1 error, so joints may be missing");
  });
});
