/**
 * Values that the maker means to try (`let … within A to B`), as a rule to slide along, and the text that a new place on it makes.
 */
import type { Span } from "../../grammar/problem.ts";
import type { LengthUnit, LetDesign } from "../design/design.ts";
import { millimetresIn, printBareLength } from "../design/units.ts";
import { INCH_PARTS, isPlainLet, stepOf } from "../range/choice.ts";
import type { View } from "./view.ts";

export interface Adjustable {
  name: string;
  /** The comment above it. */
  description?: string;
  /** All in `unit`. */
  value: number;
  low: number;
  high: number;
  /** What one press of an arrow key moves it by. */
  step: number;
  unit: "mm" | "cm" | "in" | "deg" | "";
  /** Where its value is written. */
  at: Span;
  /** False when it is worked out from other values, so that writing a figure would lose the sum. */
  plain: boolean;
}

/** The file's own adjustable values, in the order of the text. */
export function adjustables({ study: { design } }: View): Adjustable[] {
  return [...design.lets.values()].flatMap((each) => adjustable(each, design.units) ?? []);
}

/** The adjustable value whose line is at a place, by its name. */
export function adjustableAt({ study: { design } }: View, offset: number): string | undefined {
  const here = [...design.lets.values()].find(
    ({ statement, within, file }) =>
      within && file === undefined && statement.start <= offset && offset <= statement.end,
  );
  return here?.name;
}

function adjustable(each: LetDesign, units: LengthUnit): Adjustable | undefined {
  const { value, within, file, name, description } = each;
  if (!value || !within || file !== undefined) return undefined;
  const { low, high } = within.value;
  const { dimension, number } = value.value;
  if (!(high > low) || !Number.isFinite(high - low)) return undefined;
  const unit =
    dimension === "length" ? units : dimension === "angle" ? "deg" : dimension === "number" ? "" : undefined;
  if (unit === undefined) return undefined;
  const size = unit === "deg" ? Math.PI / 180 : unit === "" ? 1 : millimetresIn(unit);
  const rounded = (n: number) => Number((n / size).toFixed(6));
  return {
    name,
    ...(description !== undefined && { description }),
    value: rounded(number),
    low: rounded(low),
    high: rounded(high),
    step: stepOf(unit, rounded(high) - rounded(low)),
    unit,
    at: each.expression,
    plain: isPlainLet(each),
  };
}

/** What the text says for a new value: `445`, `17 1/2`, `6.5deg`. A bare length is in the file's unit. */
export function written({ unit, step }: Pick<Adjustable, "unit" | "step">, value: number): string {
  const stepped = Math.round(value / step) * step;
  if (unit === "in") return printBareLength(stepped * 25.4, "in", INCH_PARTS);
  return `${Number(stepped.toFixed(4))}${unit === "deg" ? "deg" : ""}`;
}
