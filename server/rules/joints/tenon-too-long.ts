import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, setOutOrLess, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";
import { tellings } from "./tellings.ts";

export const tenonTooLong: Rule = {
  code: "tenon-too-long",
  severity: "warning",
  title: "Tenon longer than the post allows",
  explanation:
    "Beyond the end of a blind tenon there is a little room for glue and then enough wood that the mortise does not show through or burst when the joint is driven home. Printed advice is a tenon of half to two thirds of the post; what must not be missing is the wood beyond. Make the tenon shorter, the post thicker, or take it `through`. `limit tenon-too-long to 8mm` asks for that much wood beyond the tenon's end.",
  source: sourcesOf("wood-beyond-mortise", "mortise-deeper-than-tenon"),
  limit: { low: least("wood-beyond-mortise") + least("mortise-deeper-than-tenon"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const beyond = limit.low ?? 0;
    return judgedJoints(chair, "tenon-too-long").flatMap((joint) => {
      const left = joint.depthThere - joint.long;
      const { facts } = joint;
      if (facts.through || joint.depthThere <= 0 || left >= beyond - SAME_LENGTH) return [];
      // Where the mortise breaks out at the side there is no depth to speak of.
      if (joint.mortiseWall < -SAME_LENGTH) return [];
      const sizes = sizesOf(joint);
      const place = jointPlace(chair, joint, sizes.long);
      // Of what is let into both parts only half is in this one.
      const { times } = tellings[joint.kind];
      const most = times * (joint.depthThere - beyond);
      const figure = lengthOrLess(most, units);
      const values = {
        Tenon: capital(tenonOf(joint)),
        long: length(times * joint.long, units),
        goes: length(joint.long, units),
        host: plain(joint.entered.name),
        deep: length(joint.depthThere, units),
        left: length(Math.max(0, left), units),
        allowed: most > 0 ? sentence("tenon-too-long.allowed", { figure }) : sentence("tenon-too-long.none"),
      };
      const shorter = setOutOrLess(most, units);
      const fixes =
        most > 0 && sizes.long && sizes.apart
          ? [
              {
                title: sentence("fix.make-long", { figure: shorter }),
                edits: [{ start: place.start, end: place.end, text: shorter }],
              },
            ]
          : [];
      return tell(tenonTooLong, place, {
        message:
          left < -SAME_LENGTH
            ? sentence(times === 1 ? "tenon-too-long.through" : "tenon-too-long.half-through", values)
            : sentence(times === 1 ? "tenon-too-long" : "tenon-too-long.half", values),
        subject: joint.name,
        found: length(times * joint.long, units),
        ...(most > 0 ? { allowed: sentence("figure.or-less", { figure: figure }) } : {}),
        badness: beyond - left,
        fixes,
      });
    });
  },
};
