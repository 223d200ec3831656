import { describe, expect, test } from "vitest";
import {
  printAngle,
  printBareLength,
  printBevel,
  printLength,
  printQuantity,
  printSlope,
  units,
} from "../../../server/design/units.ts";
import { deg } from "./read.ts";

describe("lengths", () => {
  test.each([
    [438.46, "mm", "438.5 mm"],
    [438, "mm", "438 mm"],
    [-0.04, "mm", "0 mm"],
    [438.46, "cm", "43.85 cm"],
    [441.325, "in", "17 3/8 in"],
    [25.4, "in", "1 in"],
    [0, "in", "0 in"],
    [-9.525, "in", "-3/8 in"],
    [-441.325, "in", "-17 3/8 in"],
    [441.6, "in", "17 25/64 in"],
    [Number.NaN, "mm", "? mm"],
  ] as const)("%d mm in %s", (mm, unit, expected) => expect(printLength(mm, unit)).toBe(expected));

  test("inches to a chosen step", () => {
    expect(printLength(10, "in")).toBe("25/64 in");
    expect(printLength(10, "in", 32)).toBe("13/32 in");
    expect(printLength(10, "in", 16)).toBe("3/8 in");
    expect(printBareLength(441.325, "in")).toBe("17 3/8");
  });

  // International yard and pound agreement of 1959, from memory: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, both exact; standard
  // gravity 9.80665 m/s² (3rd CGPM, 1901).
  test("units agree with their definitions", () => {
    expect(units.in?.size).toBe(25.4);
    expect(units.ft?.size).toBeCloseTo(12 * 25.4, 12);
    expect(units.lbf?.size).toBeCloseTo(0.45359237 * 9.80665, 12);
    expect(units.deg?.size).toBeCloseTo(Math.PI / 180, 15);
  });
});

describe("angles", () => {
  test("to a tenth of a degree", () => {
    expect(printAngle(deg(6.5))).toBe("6.5°");
    expect(printAngle(deg(7.04))).toBe("7°");
    expect(printAngle(deg(-0.01))).toBe("0°");
  });

  // tan 6.5° = 0.11394: a rise of 1 in a run of 8.776. Any table of tangents.
  test("as a rise in a run", () => {
    expect(printSlope(deg(6.5))).toBe("1:8.8");
    expect(printSlope(Math.atan(1 / 8))).toBe("1:8");
    expect(printSlope(0)).toBe("0");
    expect(printSlope(Math.atan(2.5))).toBe("2.5:1");
  });

  // tan 6.6° = 0.11570: 1 in 8.643.
  test("a bevel with its lean from square", () => {
    expect(printBevel(deg(83.4))).toBe("83.4° (1:8.6)");
    expect(printBevel(deg(96.6))).toBe("96.6° (1:8.6)");
    expect(printBevel(deg(90))).toBe("90° (square)");
    // 1 in 1958 is 0.03°, which prints as no lean.
    expect(printBevel(Math.PI / 2 - Math.atan(1 / 1958))).toBe("90° (square)");
    expect(printSlope(Math.atan(1 / 1958))).toBe("0");
  });
});

test("other quantities", () => {
  expect(printQuantity({ number: 5.42, dimension: "mass" }, "mm")).toBe("5.42 kg");
  expect(printQuantity({ number: 0.45359237, dimension: "mass" }, "in")).toBe("1 lb");
  expect(printQuantity({ number: 600, dimension: "force" }, "mm")).toBe("600 N");
  expect(printQuantity({ number: 4.4482216152605, dimension: "force" }, "in")).toBe("1 lbf (4 N)");
  expect(printQuantity({ number: 1450, dimension: "area" }, "mm")).toBe("1450 mm²");
  expect(printQuantity({ number: 645.16, dimension: "area" }, "in")).toBe("1 in²");
  expect(printQuantity({ number: 12_000, dimension: "volume" }, "cm")).toBe("12 cm³");
  expect(printQuantity({ number: 0.09, dimension: "share" }, "mm")).toBe("9%");
  expect(printQuantity({ number: 20, dimension: "number" }, "mm")).toBe("20");
  expect(printQuantity({ number: deg(6.5), dimension: "angle" }, "mm")).toBe("6.5°");
  expect(printQuantity({ number: 12.7, dimension: "length" }, "in")).toBe("1/2 in");
});
