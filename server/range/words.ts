/**
 * Figures of ranges as they are shown: in the file's units, to what a maker can set.
 */
import type { Dimension, LengthUnit } from "../design/design.ts";
import { printBareLength, printQuantity } from "../design/units.ts";
import type { Band, Range } from "./bands.ts";
import type { Choice } from "./choice.ts";
import { VALUE_PARTS } from "./goal.ts";

/** A place in a choice's range, with its unit: `441.9 mm`, `17 3/8 in`, `6.5°`. */
export function printPlace(choice: Pick<Choice, "unit">, place: number): string {
  const bare = printBarePlace(choice, place);
  if (choice.unit === "deg") return `${bare}°`;
  return choice.unit === "" ? bare : `${bare} ${choice.unit}`;
}

/** The same without its unit. */
export function printBarePlace({ unit }: Pick<Choice, "unit">, place: number): string {
  if (unit === "in") return printBareLength(place * 25.4, "in", VALUE_PARTS);
  return String(Number(place.toFixed(unit === "cm" || unit === "" ? 2 : 1)));
}

/** A worked-out value as ranges and reached figures show it: angles finer than elsewhere, since steps of a choice move them little. */
export function printFine(number: number, dimension: Dimension, unit: LengthUnit): string {
  if (dimension === "angle") return `${Number(((number * 180) / Math.PI).toFixed(2))}°`;
  return printQuantity({ number, dimension }, unit, VALUE_PARTS);
}

/** A stretch of a choice's range: `420 to 441.9 mm`. */
const printStretch = (choice: Pick<Choice, "unit">, from: number, to: number): string =>
  `${printBarePlace(choice, from)} to ${printPlace(choice, to)}`;

/** What a band is called: `seat-too-high of seat, 460 to 470 mm`. */
export const bandLabel = (choice: Pick<Choice, "unit">, { code, subject, from, to }: Band): string =>
  `${code}${subject ? ` of ${subject}` : ""}, ${printStretch(choice, from, to)}`;

/** A whole range in a sentence or two. */
export function rangeInWords({ choice, free, bands, tried }: Range): string {
  const stretches = free.map(([from, to]) => printStretch(choice, from, to));
  const where =
    bands.length === 0
      ? "Nothing is found in the whole range"
      : stretches.length > 0
        ? `Nothing is found from ${stretches.join(", from ")}`
        : "Something is found everywhere in the range";
  const found = bands.map((band) => bandLabel(choice, band)).join("; ");
  return `${where}${found ? `. Found: ${found}` : ""}. ${tried} places tried.`;
}
