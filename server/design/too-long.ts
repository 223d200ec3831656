/**
 * Lengths that no chair has: one by itself is a slip of that line, several say that the file's unit is another.
 */

import type { Problem, Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { LengthUnit } from "./design.ts";
import { millimetresIn, printLength } from "./units.ts";

/** Longest length that makes sense in a chair, mm. */
export const LONGEST = 10_000;

/** From so many on, the unit is what is wrong. */
const SEVERAL = 3;

/** A unit in which the longest length is over this is not offered, mm. */
const LIKELY = 3000;

/** A length over the longest, as it is reported where it stands, and what it comes to, mm. */
export interface TooLong {
  problem: Problem;
  mm: number;
}

/** The problems to report: each length by itself, or one at the file's `units` for them all. */
export function tooLongProblems(found: readonly TooLong[], tree: Tree, unit: LengthUnit): Problem[] {
  const most = found.reduce((a, b) => (Math.abs(b.mm) > Math.abs(a.mm) ? b : a), found[0]!);
  if (found.length < SEVERAL) return found.map(({ problem }) => problem);
  const word = unitsWord(tree);
  const at = word ?? { start: most.problem.start, end: most.problem.end };
  const bare = Math.abs(most.mm) / millimetresIn(unit);
  const likely = (["mm", "cm", "in"] as const).filter(
    (each) => each !== unit && bare * millimetresIn(each) <= LIKELY,
  );
  const values = {
    count: found.length,
    most: printLength(LONGEST, unit),
    longest: printLength(most.mm, unit),
    unit,
  };
  return [
    {
      code: "impossible-size",
      severity: "error",
      start: at.start,
      end: at.end,
      message: likely[0]
        ? sentence("too-long.units-other", { ...values, other: likely[0] })
        : sentence("too-long.units", values),
      found: printLength(most.mm, unit),
      allowed: sentence("figure.or-less", { figure: printLength(LONGEST, unit) }),
      fixes: word
        ? likely.map((each) => ({
            title: sentence("fix.write-units", { unit: each }),
            edits: [{ ...word, text: each }],
          }))
        : [],
    },
  ];
}

/** Where the file gives its unit. */
function unitsWord(tree: Tree): Span | undefined {
  const fact = tree.statements.find(({ word }) => word?.text === "units")?.match?.facts[0];
  return fact && { start: fact.start, end: fact.end };
}
