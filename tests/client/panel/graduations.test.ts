import { describe, expect, it } from "vitest";
import { graduations } from "../../../client/panel/webview/graduations.ts";
import { written } from "../../../server/editor/adjustable.ts";

describe("a maker's rule", () => {
  it("in millimetres: a mark a millimetre, fives and tens longer", () => {
    const marks = graduations({ low: 420, high: 470, unit: "mm" });
    expect(marks).toHaveLength(51);
    expect(marks[0]).toEqual({ share: 0, size: "long", label: "420" });
    expect(marks[5]!.size).toBe("middle");
    expect(marks[7]!.size).toBe("short");
    expect(marks.filter((mark) => mark.label).map((mark) => mark.label)).toEqual([
      "420",
      "430",
      "440",
      "450",
      "460",
      "470",
    ]);
  });

  it("in inches: sixteenths, quarters and whole ones", () => {
    const marks = graduations({ low: 16.5, high: 18.5, unit: "in" });
    expect(marks).toHaveLength(33);
    expect(marks.filter((mark) => mark.size === "long").map((mark) => mark.label)).toEqual(["17", "18"]);
  });

  it("over a wide range marks stay apart and few are named", () => {
    for (const [low, high] of [
      [0, 5000],
      [3, 1200],
      [0, 0.5],
      [-12, 12],
    ] as const) {
      const marks = graduations({ low, high, unit: "mm" });
      expect(marks.length).toBeLessThanOrEqual(71);
      expect(marks.length).toBeGreaterThan(5);
      const labels = marks.filter((mark) => mark.label);
      expect(labels.length).toBeGreaterThan(1);
      expect(labels.length).toBeLessThanOrEqual(7);
      for (const mark of labels) expect(low + mark.share * (high - low)).toBeCloseTo(Number(mark.label), 2);
    }
  });

  it("an empty range has no marks", () => {
    expect(graduations({ low: 5, high: 5, unit: "mm" })).toEqual([]);
  });
});

describe("a moved value as text", () => {
  it("is bare in the file's unit, a fraction in inches, and says deg", () => {
    expect(written({ unit: "mm", step: 1 }, 445.2)).toBe("445");
    expect(written({ unit: "cm", step: 0.1 }, 44.52)).toBe("44.5");
    expect(written({ unit: "in", step: 1 / 16 }, 17.5)).toBe("17 1/2");
    expect(written({ unit: "deg", step: 0.1 }, 6.5)).toBe("6.5deg");
    expect(written({ unit: "", step: 0.01 }, 0.305)).toMatch(/^0\.3[01]$/);
  });
});
