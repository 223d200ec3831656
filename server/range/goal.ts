/**
 * A figure to be reached: what a `require` line asks of a worked-out value.
 */

import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Chair } from "../chair/chair.ts";
import { workedValue } from "../chair/values/values.ts";
import type { Dimension, LengthUnit, RequireDesign } from "../design/design.ts";
import { printQuantity } from "../design/units.ts";

/** A worked-out value and the bounds it has to keep; equal bounds ask for one figure. */
export interface Goal {
  /** Dotted name. */
  value: string;
  dimension: Dimension;
  /** In the value's own dimension: mm, rad, kg, plain. */
  low?: number;
  high?: number;
}

/** What a requirement asks, when it is about one value by name and its bound could be read. */
export function goalOf({ subject, computed, bound }: RequireDesign): Goal | undefined {
  if (computed || !bound) return undefined;
  const { low, high, dimension } = bound.value;
  return {
    value: subject,
    dimension,
    ...(low !== undefined && { low }),
    ...(high !== undefined && { high }),
  };
}

/** The value as the chair has it; nothing when it cannot be worked out. */
export const figureOf = (chair: Chair, { value, dimension }: Goal): number | undefined => {
  const worked = workedValue(chair, value);
  return worked && worked.dimension === dimension && Number.isFinite(worked.number)
    ? worked.number
    : undefined;
};

/** How far a figure is from what is asked, signed: positive when it has to grow. A figure that prints as asked is there. */
export function shortOf({ low, high, dimension }: Goal, number: number, unit: LengthUnit): number {
  const print = (n: number) => printQuantity({ number: n, dimension }, unit, VALUE_PARTS);
  if (low !== undefined && number < low)
    return low === high && print(number) === print(low) ? 0 : past(low - number, number);
  if (high !== undefined && number > high)
    return low === high && print(number) === print(high) ? 0 : -past(number - high, number);
  return 0;
}

/** Parts to the inch that values are printed to. */
export const VALUE_PARTS = 64;

/** Arithmetic in another order, nothing that can be cut. */
const past = (gap: number, number: number): number => (gap > 1e-9 * Math.max(1, Math.abs(number)) ? gap : 0);

/** The figure nearest to what the chair has that is as asked. */
export function aimOf({ low, high }: Goal, number: number): number {
  if (low !== undefined && number < low) return low;
  return high !== undefined && number > high ? high : number;
}

/** In words: `2°`, `at least 1°`, `from 1° to 4°`. */
export function goalInWords({ low, high, dimension }: Goal, unit: LengthUnit): string {
  const print = (number: number) => printQuantity({ number, dimension }, unit, VALUE_PARTS);
  if (low !== undefined && low === high) return print(low);
  if (low !== undefined && high !== undefined)
    return sentence("figure.from-to", { low: print(low), high: print(high) });
  return high === undefined
    ? sentence("figure.at-least", { figure: print(low ?? 0) })
    : sentence("figure.at-most", { figure: print(high) });
}
