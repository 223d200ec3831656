import { sentence } from "../../../grammar/sentences/sentence.ts";
import { pegsOf } from "../../joinery/pegs.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, tenonOf } from "./joint-places.ts";

/** What is usual in chairs, mm: from the same print. */
const USUAL = 1;

export const pegDrawsTooFar: Rule = {
  code: "peg-draws-too-far",
  severity: "warning",
  title: "Peg drawn too far",
  explanation:
    "A drawbored peg bends through holes that do not quite meet and pulls the shoulder up. Bored too far apart, they break the peg or split the end out of the tenon as it is driven. `limit peg-draws-too-far to 2mm` changes the figure.",
  source: sourcesOf("peg-draw"),
  limit: { high: most("peg-draw"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    return judgedJoints(chair, "peg-draws-too-far").flatMap((joint) => {
      const draw = pegsOf(joint)?.draw ?? 0;
      if (draw <= allowed + SAME_LENGTH) return [];
      return tell(pegDrawsTooFar, jointPlace(chair, joint, joint.facts.peg), {
        message: sentence("peg-draws-too-far", {
          tenon: tenonOf(joint),
          draw: length(draw, units),
          most: lengthOrLess(allowed, units),
          usual: length(USUAL, units),
        }),
        subject: joint.name,
        found: length(draw, units),
        allowed: sentence("figure.or-less", { figure: lengthOrLess(allowed, units) }),
        badness: draw - allowed,
      });
    });
  },
};
