import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Bound } from "../../design/design.ts";
import { printAngle } from "../../design/units.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE, tell } from "../machinery/say.ts";
import { isRake } from "../sitter/rake.ts";

export const angleNotMet: Rule = {
  code: "angle-not-met",
  severity: "error",
  title: "Declared angle not kept",
  explanation:
    "An `angle` with a `limit` is a promise of this file: as the chair stands, the angle between the two things must lie within it. Change what makes the angle, or the limit. The lean of a post against the seat is reported by the rules about rake.",
  source: "The file's own limit.",
  asksForMissing: true,
  find({ chair }) {
    return [...chair.design.angles.values()].flatMap((angle) => {
      const limit = angle.limit?.value;
      const number = chair.values.get(angle.name)?.number;
      if (!limit || number === undefined || isRake(chair, angle)) return [];
      const over = number - (limit.high ?? Number.POSITIVE_INFINITY);
      const under = (limit.low ?? Number.NEGATIVE_INFINITY) - number;
      const off = Math.max(over, under);
      if (off <= SAME_ANGLE) return [];
      const allowed = angles(limit);
      return tell(angleNotMet, placeOf(chair.design, [angle.limit, angle]), {
        message: sentence("angle-not-met", { name: angle.name, angle: printAngle(number), allowed }),
        subject: angle.name,
        found: printAngle(number),
        allowed,
        badness: off,
      });
    });
  },
};

function angles({ low, high }: Bound): string {
  if (low === undefined) return sentence("figure.at-most", { figure: printAngle(high ?? 0) });
  return high === undefined
    ? sentence("figure.at-least", { figure: printAngle(low) })
    : sentence("figure.from-to", { low: printAngle(low), high: printAngle(high) });
}
