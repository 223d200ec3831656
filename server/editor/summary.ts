import { workedValue } from "../chair/values/values.ts";
import { printQuantity } from "../design/units.ts";
import type { View } from "./view.ts";

/** A chair in a few words, in the file's units. */
interface Summary {
  seatHeight?: string;
  backLean?: string;
  errors: number;
  warnings: number;
}

/** Seat height, back lean and how many findings, for a status line. */
export function summary({ study: { chair, design, problems } }: View): Summary {
  const printed = (name: string) => {
    const worked = workedValue(chair, name);
    return worked && printQuantity(worked, design.units);
  };
  const seatHeight = printed("seat.height");
  const backLean = printed("backrest.rake");
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  return {
    ...(seatHeight !== undefined && { seatHeight }),
    ...(backLean !== undefined && { backLean }),
    errors: count("error"),
    warnings: count("warning"),
  };
}
