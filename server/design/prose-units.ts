/**
 * Figures inside sentences that come from data files, as a file's unit asks for them.
 */
import type { LengthUnit } from "./design.ts";
import { POUND, printQuantity } from "./units.ts";

/** Pound-feet in a kilonewton metre. */
const POUND_FEET = 737.562;

/**
 * A sentence with its millimetres, kilograms and newtons in the file's units. For a file in inches the figure of the source stays
 * beside: `7 7/8 in (200 mm)`.
 */
export function inUnitsOf(sentence: string, unit: LengthUnit): string {
  if (unit === "mm") return sentence;
  const beside = (own: string, printed: string): string => (unit === "in" ? `${own} (${printed})` : own);
  const plain = sentence.replace(
    /(\d+(?:\.\d+)?) (mm|kg|N)(?![\w·/])/g,
    (printed, figure: string, of: string) => {
      const number = Number(figure);
      if (of === "mm") return beside(printQuantity({ number, dimension: "length" }, unit, 8), printed);
      if (of === "kg") return unit === "in" ? `${Math.round(number / POUND)} lb (${printed})` : printed;
      return printQuantity({ number, dimension: "force" }, unit);
    },
  );
  if (unit !== "in") return plain;
  return plain.replace(
    /(\d+) to (\d+) kN·m\/rad/g,
    (printed, low: string, high: string) =>
      `${Math.round(Number(low) * POUND_FEET)} to ${Math.round(Number(high) * POUND_FEET)} lbf·ft/rad (${printed})`,
  );
}
