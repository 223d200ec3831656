/**
 * Units as they are written, and quantities as they are printed.
 */
import type { Dimension, LengthUnit, Quantity } from "./design.ts";

/** A pound in kilograms, and its weight in newtons. */
export const POUND = 0.45359237;
const POUND_FORCE = 4.4482216152605;

/** What one of a unit is: millimetres, radians, kilograms, newtons, or a share of one. */
export const units: Readonly<Record<string, { dimension: Dimension; size: number }>> = {
  mm: { dimension: "length", size: 1 },
  cm: { dimension: "length", size: 10 },
  m: { dimension: "length", size: 1000 },
  in: { dimension: "length", size: 25.4 },
  ft: { dimension: "length", size: 304.8 },
  deg: { dimension: "angle", size: Math.PI / 180 },
  kg: { dimension: "mass", size: 1 },
  g: { dimension: "mass", size: 0.001 },
  lb: { dimension: "mass", size: POUND },
  N: { dimension: "force", size: 1 },
  kN: { dimension: "force", size: 1000 },
  lbf: { dimension: "force", size: POUND_FORCE },
  "%": { dimension: "share", size: 0.01 },
};

/** Millimetres in one of the file's unit. */
export function millimetresIn(unit: LengthUnit): number {
  return units[unit]?.size ?? 1;
}

/** Finest part of an inch that lengths are printed to, unless told otherwise: what findings say and what reports say is one figure. */
const inchParts = 64;

/**
 * A length in the file's unit: `438.5 mm`, `43.85 cm`, `17 3/8 in`. Millimetres to a tenth, inches to the nearest of
 * `parts` to the inch.
 */
export function printLength(mm: number, unit: LengthUnit, parts: number = inchParts): string {
  return `${printBareLength(mm, unit, parts)} ${unit}`;
}

/** The same without its unit, as a bare length of the file would be written. */
export function printBareLength(mm: number, unit: LengthUnit, parts: number = inchParts): string {
  if (!Number.isFinite(mm)) return "?";
  if (unit === "in") return inches(mm / 25.4, parts);
  return unit === "cm" ? decimals(mm / 10, 2) : decimals(mm, 1);
}

/** The shortest length that prints and is no shorter than this one: for distances that are needed. */
export function printLengthUp(mm: number, unit: LengthUnit, parts: number = inchParts): string {
  const step = unit === "in" ? millimetresIn("in") / parts : 0.1;
  return printLength(Math.ceil(mm / step - 1e-6) * step, unit, parts);
}

function inches(value: number, parts: number): string {
  const count = Math.round(value * parts);
  if (!Number.isSafeInteger(count)) return decimals(value, 0);
  const rest = Math.abs(count) % parts;
  const whole = (Math.abs(count) - rest) / parts;
  const common = commonDivisor(rest, parts);
  const fraction = rest === 0 ? "" : `${rest / common}/${parts / common}`;
  return `${count < 0 ? "-" : ""}${[whole || "", fraction].filter(Boolean).join(" ") || "0"}`;
}

/** Euclid's. */
const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** An angle to a tenth of a degree: `6.5°`. */
export function printAngle(radians: number): string {
  return Number.isFinite(radians) ? `${decimals((radians * 180) / Math.PI, 1)}°` : "?";
}

/** What holds a chair down over what lifts it, to a hundredth: `1.05`. */
export const printMargin = (margin: number): string => margin.toFixed(2);

/** A lean as the language writes slopes, a rise in a run: `1:8.8`; `0` for one that prints as no angle. */
export function printSlope(radians: number): string {
  if (printsAsNone(radians)) return "0";
  const tangent = Math.abs(Math.tan(radians));
  return tangent > 1 ? `${decimals(tangent, 1)}:1` : `1:${decimals(1 / tangent, 1)}`;
}

/** A bevel, 90° when square, with how far it leans from square: `83.4° (1:8.6)`. */
export function printBevel(radians: number): string {
  const lean = Math.PI / 2 - radians;
  return `${printAngle(radians)} (${printsAsNone(lean) ? "square" : printSlope(lean)})`;
}

/** Whether an angle is less than the tenth of a degree that angles are printed to. */
const printsAsNone = (radians: number): boolean => Math.abs(radians) < (0.05 * Math.PI) / 180;

/** Any quantity in the file's units: lengths, areas and volumes in its unit, angles in degrees, shares in percent. */
export function printQuantity(
  { number, dimension }: Quantity,
  unit: LengthUnit,
  parts: number = inchParts,
): string {
  if (!Number.isFinite(number)) return "?";
  const size = millimetresIn(unit);
  switch (dimension) {
    case "length":
      return printLength(number, unit, parts);
    case "area":
      return `${decimals(number / size ** 2, unit === "mm" ? 0 : 2)} ${unit}²`;
    case "volume":
      return `${decimals(number / size ** 3, { mm: 0, cm: 1, in: 3 }[unit])} ${unit}³`;
    case "angle":
      return printAngle(number);
    case "mass":
      return unit === "in" ? `${decimals(number / POUND, 2)} lb` : `${decimals(number, 2)} kg`;
    case "force":
      return unit === "in"
        ? `${decimals(number / POUND_FORCE, 0)} lbf (${decimals(number, 0)} N)`
        : `${decimals(number, 0)} N`;
    case "share":
      return `${decimals(number * 100, 1)}%`;
    case "number":
      return decimals(number, 3);
  }
}

/** mm³: 144 cubic inches. */
export const BOARD_FOOT = 144 * millimetresIn("in") ** 3;

/** A volume of timber as it is bought: board feet for a file in inches, else cubic metres; `places` to the cubic metre. */
export function printTimber(mm3: number, unit: LengthUnit, places = 4): string {
  return unit === "in" ? `${(mm3 / BOARD_FOOT).toFixed(1)} board feet` : `${(mm3 / 1e9).toFixed(places)} m³`;
}

/** How much a quantity moves, signed and finer than it is printed by itself: `+0.13°`, `−0.4 mm`; nothing when that prints as none. */
export function printChange({ number, dimension }: Quantity, unit: LengthUnit): string | undefined {
  const size = millimetresIn(unit);
  const [value, places, after] = ((): [number, number, string] => {
    if (dimension === "angle") return [(number * 180) / Math.PI, 2, "°"];
    if (dimension === "length") return [number / size, unit === "mm" ? 2 : 3, ` ${unit}`];
    if (dimension === "area") return [number / size ** 2, unit === "mm" ? 0 : 2, ` ${unit}²`];
    if (dimension === "mass") return unit === "in" ? [number / POUND, 3, " lb"] : [number, 3, " kg"];
    return [number, 3, ""];
  })();
  const printed = decimals(Math.abs(value), places);
  return printed === "0" ? undefined : `${value < 0 ? "−" : "+"}${printed}${after}`;
}

/** Rounded to so many places, without trailing zeros or a minus before zero. */
function decimals(value: number, places: number): string {
  const rounded = Number(value.toFixed(places));
  return String(rounded === 0 ? 0 : rounded);
}
