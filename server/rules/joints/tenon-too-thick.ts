import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, setOutOrLess, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, stuffOf, tenonOf } from "./joint-places.ts";

export const tenonTooThick: Rule = {
  code: "tenon-too-thick",
  severity: "warning",
  title: "Tenon too thick for its rail",
  explanation:
    "Shoulders that are only a sliver wide crush when the joint is cramped up and soon stand open. Make the tenon thinner, or say `thick full` and do without shoulders at the faces. `limit tenon-too-thick to 3/4 of rail` changes the share. Turned tenons are left alone.",
  source: sourcesOf("most-tenon-share-of-rail"),
  limit: { high: most("most-tenon-share-of-rail"), dimension: "share", of: "share of the rail" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return judgedJoints(chair, "tenon-too-thick").flatMap((joint) => {
      const stuff = stuffOf(joint);
      const allowed = (limit.high ?? 1) * stuff;
      if (joint.facts.tenonThick?.value === "full") return [];
      // One that is thicker than its rail is reported as standing out of it.
      if (joint.thick <= allowed + SAME_LENGTH || standsOut(joint.shoulders)) return [];
      const place = jointPlace(chair, joint, sizesOf(joint).thick);
      const figure = lengthOrLess(allowed, units);
      const sliver = Math.min(joint.shoulders.outside, joint.shoulders.inside);
      return tell(tenonTooThick, place, {
        message: sentence("tenon-too-thick", {
          Tenon: capital(tenonOf(joint)),
          thick: length(joint.thick, units),
          stuff: length(stuff, units),
          sliver: length(sliver, units),
          most: figure,
        }),
        subject: joint.name,
        found: length(joint.thick, units),
        allowed: sentence("figure.or-less", { figure: figure }),
        badness: joint.thick - allowed,
        fixes: [
          {
            title: sentence("fix.make-it", { it: setOutOrLess(allowed, units) }),
            edits: [{ start: place.start, end: place.end, text: setOutOrLess(allowed, units) }],
          },
        ],
      });
    });
  },
};

const standsOut = ({ outside, inside }: { outside: number; inside: number }): boolean =>
  Math.min(outside, inside) < -SAME_LENGTH;
