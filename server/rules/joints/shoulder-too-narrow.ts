import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { least, most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, setOutOrMore, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, stuffOf, tenonOf } from "./joint-places.ts";

export const shoulderTooNarrow: Rule = {
  code: "shoulder-too-narrow",
  severity: "warning",
  title: "Shoulder too narrow",
  explanation:
    "A shoulder closes the joint and hides the mortise. One that is only a sliver wide crushes when the joint is cramped up and then stands open. Make it wider, or leave it out: `set 0 from outside` makes the tenon barefaced on that side, `thick full` on both. `limit shoulder-too-narrow to 3mm` changes the figure. A tenon that is thick for its rail is reported as that.",
  source: sourcesOf("least-shoulder"),
  limit: { low: least("least-shoulder"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    return judgedJoints(chair, "shoulder-too-narrow").flatMap((joint) => {
      const { shoulders, facts, thick } = joint;
      if (thick > most("most-tenon-share-of-rail") * stuffOf(joint)) return [];
      const sides = (["outside", "inside", "top", "bottom"] as const).filter(
        (side) => shoulders[side] > SAME_LENGTH && shoulders[side] < allowed - SAME_LENGTH,
      );
      const side = sides.sort((a, b) => shoulders[a] - shoulders[b])[0];
      if (!side) return [];
      const fact =
        side === "top"
          ? facts.shoulderTop
          : side === "bottom"
            ? facts.shoulderBottom
            : (facts.set ?? facts.tenonThick);
      const place = jointPlace(chair, joint, fact, facts.tenonWide, facts.tenonThick);
      const figure = lengthOrMore(allowed, units);
      // A tenon given by its set moves towards the other face: no further than leaves a shoulder there.
      const fixable =
        side === "outside"
          ? facts.set?.value.from === "outside" &&
            shoulders.inside - (allowed - shoulders.outside) >= allowed - SAME_LENGTH
          : side !== "inside" && fact !== undefined && !fact.assumed && !facts.tenonWide;
      return tell(shoulderTooNarrow, place, {
        message: sentence("shoulder-too-narrow", {
          Tenon: capital(tenonOf(joint)),
          wide: length(shoulders[side], units),
          side,
          least: figure,
        }),
        subject: joint.name,
        found: length(shoulders[side], units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
        badness: allowed - shoulders[side],
        ...(fixable
          ? {
              fixes: [
                {
                  title: sentence("fix.make-it", { it: setOutOrMore(allowed, units) }),
                  edits: [{ start: place.start, end: place.end, text: setOutOrMore(allowed, units) }],
                },
              ],
            }
          : {}),
      });
    });
  },
};
