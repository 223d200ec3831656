import { describe, expect, it } from "vitest";
import { plain, rangeOf } from "./files.ts";

describe("how far a choice may go", () => {
  it("finds the edge of a requirement to a twentieth of a step", () => {
    // A board's top is its thickness over the rails: seat-height + 20. At most 463.3 means seat-height up to 443.3.
    const range = rangeOf(plain("require seat.height at most 463.3\n"), "seat-height");
    const band = range.bands.find(({ code }) => code === "requirement-not-met");
    expect(band).toMatchObject({ subject: "seat.height", severity: "error", to: 480 });
    expect(Math.abs((band?.from ?? 0) - 443.3)).toBeLessThan(1 / 20);
    expect(band?.message).toContain("seat.height is");
  });

  it("is free where no band is", () => {
    const { free, bands, low, high } = rangeOf(
      plain("require seat.height from 430 to 450\n"),
      "seat-height",
      { places: 9 },
    );
    for (const [from, to] of free) {
      expect(to).toBeGreaterThan(from);
      for (const band of bands) expect(band.to <= from || band.from >= to).toBe(true);
    }
    const ends = [low, ...free.flat(), ...bands.flatMap(({ from, to }) => [from, to]), high];
    expect([Math.min(...ends), Math.max(...ends)]).toEqual([low, high]);
    // 410 to 430 is what the requirement leaves of 400 to 480.
    const kept = bands.filter(({ code }) => code === "requirement-not-met");
    expect(kept.map(({ from, to }) => [Math.round(from), Math.round(to)])).toEqual([
      [400, 410],
      [430, 480],
    ]);
  });

  it("tells two requirements of one value apart", () => {
    const text = plain("require seat.height at most 470\nrequire seat.height at least 430\n");
    const { bands } = rangeOf(text, "seat-height", { places: 9 });
    const kept = bands.filter(({ code }) => code === "requirement-not-met");
    expect(kept.map(({ from, to }) => [Math.round(from), Math.round(to)])).toEqual([
      [400, 410],
      [450, 480],
    ]);
  });

  it("follows values over the places tried", () => {
    const { values, tried, low, high } = rangeOf(plain(), "seat-height", {
      places: 5,
      of: ["seat.height", "no.such"],
    });
    expect([tried, low, high]).toEqual([5, 400, 480]);
    const [heights, none] = values;
    for (const [k, height] of [420, 440, 460, 480, 500].entries())
      expect(heights?.at[k]).toBeCloseTo(height, 6);
    expect(none?.at).toEqual([undefined, undefined, undefined, undefined, undefined]);
  });

  it("takes other ends than the text's", () => {
    const { low, high, bands } = rangeOf(plain("require height at most 900\n"), "back.section.width", {
      low: 30,
      high: 50,
      places: 3,
    });
    expect([low, high]).toEqual([30, 50]);
    expect(bands.some(({ code }) => code === "requirement-not-met")).toBe(false);
  });
});
