/**
 * What the rules about backs, arms and rails say to a grown sitter: one figure, on the part that decides it.
 */

import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Rail } from "../../chair/chair.ts";
import { backrestOf } from "../../chair/values/backrest.ts";
import { caution } from "../../floor/editions.ts";
import { type Candidate, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { type Finding, length, SAME_LENGTH, tell } from "../machinery/say.ts";

/** What every explanation of these rules ends with. */
export const comfortCaution = `Sit in a prototype. ${caution}`;

/** Whether the chair is for somebody grown: the figures are theirs. */
export function isForGrown({ design }: Pick<Chair, "design">): boolean {
  const { is } = design.sitter.value;
  return is === "adult" || is === "named";
}

/** The facts that put a rail where it is: its height, its place between the posts, the whole of it. */
export function decidersOfRail({ design }: Rail): (Candidate | undefined)[] {
  if (design.is === "stick") return [design.feet ?? design.place ?? design.through, design.heads, design];
  if (design.is === "slat") return [design.stations, design.from, design];
  const [first] = design.ups;
  return [design.ups.length === 1 ? first : undefined, design.course, design];
}

/** The facts that decide the top of the back. */
export function decidersOfTop(chair: Chair): (Candidate | undefined)[] {
  const highest = backrestOf(chair)?.highest;
  return highest ? [...decidersOfRail(highest), chair.seat?.design] : [chair.seat?.design];
}

interface Judged {
  says: "sitter.arms" | "sitter.arms-reach" | "sitter.back-ends";
  size: number;
  subject: string;
  at: readonly (Candidate | undefined)[];
}

/** The finding of a length past one end of its range. */
export function tellLength(
  rule: Rule,
  chair: Chair,
  { says, size, subject, at }: Judged,
  { low, high }: { low?: number; high?: number },
): Finding[] {
  const print = (mm: number) => length(mm, chair.design.units);
  const over = high !== undefined && size > high + SAME_LENGTH;
  const bound = over ? high : low;
  if (bound === undefined || (!over && size >= bound - SAME_LENGTH)) return [];
  const word = over ? "less" : "more";
  const past = Math.abs(size - bound);
  const allowed = sentence(`figure.or-${word}`, { figure: print(bound) });
  return [
    tell(rule, placeOf(chair.design, at), {
      message: sentence(says, { size: print(size), allowed }),
      subject,
      found: print(size),
      allowed,
      badness: past,
    }),
  ];
}
