import { valueRow } from "../../../grammar/vocabulary/values.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printBevel, printMargin, printQuantity } from "../../design/units.ts";
import type { Worked } from "../chair.ts";

/** A worked-out value as it is printed: in the file's units, bevels with their rise in a run, margins and demands to a hundredth. */
export function printWorked(
  { name, number, dimension }: Pick<Worked, "name" | "number" | "dimension">,
  unit: LengthUnit,
): string {
  if (valueRow(name)?.bevel) return printBevel(number);
  return /[-.](?:margin|demand)$/.test(name)
    ? printMargin(number)
    : printQuantity({ number, dimension }, unit);
}
