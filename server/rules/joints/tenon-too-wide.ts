import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import type { Joint } from "../../chair/chair.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, setOutOrLess, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, stuffOf, tenonOf } from "./joint-places.ts";

export const tenonTooWide: Rule = {
  code: "tenon-too-wide",
  severity: "error",
  title: "Tenon wider or thicker than its rail",
  explanation:
    "A tenon is cut from the end of its rail, so it lies within the rail's section: its width with its shoulders cannot be more than the rail's width, nor its thickness, where `set` puts it, reach past a face.",
  source: "It follows from the shape.",
  find({ chair }) {
    const { units } = chair.design;
    return judgedJoints(chair, "tenon-too-wide").flatMap((joint) => {
      const { shoulders, facts } = joint;
      const width = shoulders.top + joint.wide + shoulders.bottom;
      const tooWide = -Math.min(shoulders.top, shoulders.bottom);
      const tooFar = -Math.min(shoulders.outside, shoulders.inside);
      if (tooWide > SAME_LENGTH) {
        const sizes = sizesOf(joint);
        const fact = sizes.wide ?? facts.shoulderTop;
        const place = jointPlace(chair, joint, fact);
        const most = Math.min(width, width - Math.max(0, shoulders.top) - Math.max(0, shoulders.bottom));
        const figure = lengthOrLess(most, units);
        return tell(tenonTooWide, place, {
          message: sentence("tenon-too-wide", {
            Tenon: capital(tenonOf(joint)),
            wide: length(joint.wide, units),
            out: length(tooWide, units),
            stuff: length(width, units),
            most: figure,
          }),
          subject: joint.name,
          found: length(joint.wide, units),
          allowed: sentence("figure.or-less", { figure: figure }),
          badness: tooWide,
          ...(fact === sizes.wide && sizes.wide && sizes.apart
            ? {
                fixes: [
                  {
                    title: sentence("fix.make-it", { it: setOutOrLess(most, units) }),
                    edits: [{ start: place.start, end: place.end, text: setOutOrLess(most, units) }],
                  },
                ],
              }
            : {}),
        });
      }
      if (tooFar <= SAME_LENGTH) return [];
      return tell(tenonTooWide, jointPlace(chair, joint, setOr(joint)), {
        message: sentence("tenon-too-wide.thick", {
          Tenon: capital(tenonOf(joint)),
          thick: length(joint.thick, units),
          out: length(tooFar, units),
          stuff: length(stuffOf(joint), units),
        }),
        otherwise: sentence("tenon-too-wide.otherwise"),
        subject: joint.name,
        found: length(joint.thick, units),
        allowed: sentence("found.within", { figure: length(stuffOf(joint), units) }),
        badness: tooFar,
      });
    });
  },
};

function setOr(joint: Joint) {
  const { facts, thick, shoulders } = joint;
  const thicker = thick > shoulders.outside + thick + shoulders.inside + SAME_LENGTH;
  return !thicker && facts.set?.value.from === "outside" ? facts.set : sizesOf(joint).thick;
}
