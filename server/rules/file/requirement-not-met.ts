import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import { workedValue as workedOut } from "../../chair/values/values.ts";
import type { Bound, Dimension, Quantity, RequireDesign } from "../../design/design.ts";
import { printQuantity } from "../../design/units.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

/** Parts to the inch that values are printed to. */
const PARTS = 64;
/** Values nearer to the bound than this, of themselves, are on it: arithmetic in another order, nothing that can be cut. */
const SAME = 1e-9;

export const requirementNotMet: Rule = {
  code: "requirement-not-met",
  severity: "error",
  title: "Requirement not met",
  explanation:
    "A `require` line is a promise of this file: the worked-out value, as the chair stands after `trim`, must keep to it. Change what the value follows from, or the requirement. A value that cannot be worked out is reported by `requirement-not-judged`.",
  source: "The file's own requirement.",
  asksForMissing: true,
  late: "too",
  find({ chair }) {
    const { units } = chair.design;
    return chair.design.requires.flatMap((line) => {
      const bound = line.bound?.value;
      const value = bound && valueIn(chair, line);
      if (!bound || !value || value.dimension !== bound.dimension) return [];
      const print = (number: number) => printQuantity({ number, dimension: value.dimension }, units, PARTS);
      const off = offBy(value.number, bound, print);
      if (off === undefined) return [];
      const allowed = inWords(bound, print);
      const place = placeOf(chair.design, [
        { at: line.subjectAt, ...(line.file === undefined ? {} : { file: line.file }) },
      ]);
      return tell(requirementNotMet, place, {
        message: sentence("requirement-not-met", {
          subject: line.subject,
          value: print(value.number),
          allowed,
        }),
        subject: line.subject,
        found: print(value.number),
        allowed,
        badness: off.by,
      });
    });
  },
};

/** What a requirement is about comes to; undefined while it cannot be worked out. */
export const valueIn = (chair: Chair, line: RequireDesign): Quantity | undefined => {
  const value = line.computed ?? workedOut(chair, line.subject);
  // A margin without bound, because nothing lifts the chair, cannot be compared.
  return value && Number.isFinite(value.number) ? value : undefined;
};

interface Off {
  by: number;
  way: "more" | "less";
}

function offBy(
  number: number,
  bound: Bound & { strict?: boolean; within?: number },
  print: (n: number) => string,
): Off | undefined {
  const { low, high, within = 0 } = bound;
  if (low !== undefined && low === high) {
    const apart = Math.abs(number - low) - within;
    if (apart <= SAME * Math.max(1, Math.abs(number)) || (!within && print(number) === print(low)))
      return undefined;
    return { by: apart, way: number > low ? "less" : "more" };
  }
  const same = SAME * Math.max(1, Math.abs(number));
  const past = (gap: number) => (bound.strict ? gap > -same : gap > same);
  if (bound.high !== undefined && past(number - bound.high)) return { by: number - bound.high, way: "less" };
  if (bound.low !== undefined && past(bound.low - number)) return { by: bound.low - number, way: "more" };
  return undefined;
}

function inWords(
  bound: Bound & { dimension: Dimension; strict?: boolean; within?: number },
  print: (n: number) => string,
): string {
  const { low, high, strict, within } = bound;
  if (low !== undefined && low === high)
    return within ? sentence("figure.within", { within: print(within), figure: print(low) }) : print(low);
  if (low !== undefined && high !== undefined)
    return sentence("figure.from-to", { low: print(low), high: print(high) });
  if (high !== undefined)
    return sentence(strict ? "figure.under" : "figure.at-most", { figure: print(high) });
  return sentence(strict ? "figure.over" : "figure.at-least", { figure: print(low ?? 0) });
}
