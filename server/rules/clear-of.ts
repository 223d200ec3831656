import type { Chair } from "../chair/chair.ts";
import { reachOfShoulder, upOf } from "./faults.ts";
import { lengthOrLess, lengthOrMore, written } from "./say.ts";

/** Which `up` would take a rail's shoulder clear of a stretch of its post: `` `up 206mm` or more, or `up 98mm` or less, would clear it ``. */
export function clearOf(
  chair: Chair,
  at: { part: string; end: string },
  stretch: { from: number; to: number },
): string {
  const { units } = chair.design;
  const reach = reachOfShoulder(chair, at.part, at.end);
  const up = upOf(chair, at.part)?.value;
  if (!reach || up === undefined) return "set it clear of that";
  const above = written(lengthOrMore(up + stretch.to - reach.low, units));
  const below = up + stretch.from - reach.high;
  const choices = [`\`up ${above}\` or more`];
  if (below - (reach.high - reach.low) > 0)
    choices.push(`\`up ${written(lengthOrLess(below, units))}\` or less`);
  return `${choices.join(", or ")} would clear it`;
}
