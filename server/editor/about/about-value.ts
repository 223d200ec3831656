/**
 * What a value comes to.
 */
import type { Value } from "../../../grammar/tree.ts";
import type { Worked } from "../../chair/chair.ts";
import { printWorked } from "../../chair/values/print.ts";
import { workedValue } from "../../chair/values/values.ts";
import type { LengthUnit, Quantity } from "../../design/design.ts";
import { type Scope, workOut } from "../../design/expressions.ts";
import { millimetresIn } from "../../design/units.ts";
import type { Study } from "../../study.ts";

/** A worked-out value with its meaning. */
export function aboutWorked(worked: Worked, unit: LengthUnit): string {
  return `${printWorked(worked, unit)}. ${worked.meaning}`;
}

/** What an expression of this file comes to, or nothing when it cannot be worked out. Bare numbers stay plain numbers. */
export function comesTo(study: Study, value: Value): Quantity | undefined {
  const scope: Scope = {
    bare: millimetresIn(study.design.units),
    named: ({ name }) => study.design.lets.get(name)?.value?.value ?? workedValue(study.chair, name),
    report: () => {},
  };
  const amount = workOut(value, scope);
  return amount && { number: amount.number, dimension: amount.dimension };
}

/** The same where a length belongs: a bare number is a length of the file's unit. */
export function lengthOf(study: Study, value: Value): Quantity | undefined {
  const amount = comesTo(study, value);
  if (amount?.dimension !== "number") return amount;
  return { number: amount.number * millimetresIn(study.design.units), dimension: "length" };
}
