import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { reachOfShoulder, upOf } from "../machinery/faults.ts";
import { length, written } from "../machinery/say.ts";

/** Which `up` would take a rail's shoulder clear of a stretch of its post: `` `up 206mm` or more, or `up 98mm` or less would clear it ``. */
export function clearOf(
  chair: Chair,
  at: { part: string; end: string },
  stretch: { from: number; to: number },
): string {
  const { units } = chair.design;
  const reach = reachOfShoulder(chair, at.part, at.end);
  const up = upOf(chair, at.part)?.value;
  if (!reach || up === undefined) return sentence("clear-of.place");
  const above = roundPast(up + stretch.to - reach.low, units, 1);
  const below = roundPast(up + stretch.from - reach.high, units, -1);
  const values = { above: written(length(above, units)), below: written(length(below, units)) };
  return sentence(below > reach.high - reach.low ? "clear-of.either" : "clear-of.above", values);
}

/** The next whole millimetre, or sixteenth of an inch, well past a height. */
function roundPast(mm: number, unit: LengthUnit, way: 1 | -1): number {
  const step = unit === "in" ? 25.4 / 16 : 1;
  const past = (mm + way * 0.05) / step;
  return (way > 0 ? Math.ceil(past) : Math.floor(past)) * step;
}
