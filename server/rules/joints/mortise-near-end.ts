import { sentence } from "../../../grammar/sentences/sentence.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, setOutOrMore, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";
import { nearEnd } from "./post-ends.ts";

export const mortiseNearEnd: Rule = {
  code: "mortise-near-end",
  severity: "warning",
  title: "Mortise near an end",
  explanation:
    "The wood between a mortise and the end of its post, or of the crest that sticks carry, is short in the grain: it shears out when the joint is cramped up, or later when the chair is rocked. Give the tenon a top shoulder, lower the rail or leave the post longer. A haunch keeps the rail from twisting there without weakening the post much. `limit mortise-near-end to 12mm` changes the figure.",
  source: sourcesOf("wood-above-mortise"),
  limit: { low: least("wood-above-mortise"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    return judgedJoints(chair, "mortise-near-end").flatMap((joint) => {
      const near = nearEnd(chair, joint);
      if (!near || near.wood >= allowed - SAME_LENGTH) return [];
      const { shoulders, facts } = joint;
      const fact = near.end === "top" ? facts.shoulderTop : facts.shoulderBottom;
      const more = allowed - near.wood;
      const shoulder = setOutOrMore(shoulders[near.end === "top" ? "top" : "bottom"] + more, units);
      const place = jointPlace(chair, joint, fact ?? sizesOf(joint).wide);
      const fixable = fact && !fact.assumed && joint.shape === "rectangular";
      return tell(mortiseNearEnd, place, {
        message: sentence("mortise-near-end", {
          tenon: tenonOf(joint),
          end: near.end,
          host: plain(joint.entered.name),
          wood: length(Math.max(0, near.wood), units),
          least: lengthOrMore(allowed, units),
        }),
        subject: joint.name,
        found: length(near.wood, units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
        badness: more,
        ...(fixable
          ? {
              fixes: [
                {
                  title: sentence("fix.make-shoulder", { figure: shoulder }),
                  edits: [{ start: place.start, end: place.end, text: shoulder }],
                },
              ],
            }
          : {}),
      });
    });
  },
};
