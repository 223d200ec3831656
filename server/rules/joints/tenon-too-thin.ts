import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, setOutOrMore, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, stuffOf, tenonOf } from "./joint-places.ts";

const third = least("tenon-share-of-rail");

export const tenonTooThin: Rule = {
  code: "tenon-too-thin",
  severity: "warning",
  title: "Tenon too thin for its rail",
  explanation:
    "A tenon that is much thinner than its rail breaks at the shoulder before anything else gives. At a third of the rail's thickness the tenon and the wood at either side of its mortise are about equally strong. A tenon thinner than the narrowest chisel cannot be mortised for. Make it thicker, or do without shoulders at the faces. `limit tenon-too-thin to 1/4 of rail` changes the share, `limit tenon-too-thin to 5mm` the least thickness. Turned tenons are left alone.",
  source: sourcesOf("tenon-share-of-rail", "least-tenon"),
  limit: { low: third, dimension: "share", of: "share of the rail" },
  also: { low: least("least-tenon"), dimension: "length" },
  find({ chair, limit, also }) {
    const { units } = chair.design;
    return judgedJoints(chair, "tenon-too-thin").flatMap((joint) => {
      const stuff = stuffOf(joint);
      // A post's top tenon is sized by the arm or crest it goes into.
      const bare = joint.facts.tenonThick?.value === "full" || chair.posts.has(joint.part);
      const byShare = bare ? 0 : (limit.low ?? 0) * stuff;
      const allowed = Math.max(byShare, also.low ?? 0);
      if (joint.thick >= allowed - SAME_LENGTH) return [];
      const place = jointPlace(chair, joint, sizesOf(joint).thick);
      const figure = lengthOrMore(allowed, units);
      const text =
        allowed === third * stuff && chair.rails.has(joint.part)
          ? "1/3 of rail"
          : setOutOrMore(allowed, units);
      return tell(tenonTooThin, place, {
        message: sentence(allowed <= stuff ? "tenon-too-thin" : "tenon-too-thin.chisel", {
          Tenon: capital(tenonOf(joint)),
          thick: length(joint.thick, units),
          stuff: length(stuff, units),
          least: figure,
        }),
        subject: joint.name,
        found: length(joint.thick, units),
        allowed: sentence("figure.or-more", { figure: figure }),
        badness: allowed - joint.thick,
        ...(allowed <= stuff
          ? {
              fixes: [
                {
                  title: sentence("fix.make-it", { it: text }),
                  edits: [{ start: place.start, end: place.end, text }],
                },
              ],
            }
          : {}),
      });
    });
  },
};
