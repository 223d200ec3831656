import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, tell, written } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";

export const tenonTooWideForThickness: Rule = {
  code: "tenon-too-wide-for-thickness",
  was: ["tenon-too-broad"],
  severity: "warning",
  title: "Tenon too wide for its thickness",
  explanation:
    "A long thin mortise leaves the walls of its post to be held together by nothing, and a wide tenon shrinks across its width until it hangs in its glue. Make the tenon thicker, or make two of it, one above the other with wood between: `twin gap 20mm`. `limit tenon-too-wide-for-thickness to 5` keeps to what handbooks of joinery say.",
  source: sourcesOf("tenon-breadth"),
  limit: { high: most("tenon-breadth"), dimension: "number", of: "times the thickness" },
  find({ chair, limit, tree }) {
    const { units } = chair.design;
    const times = limit.high ?? Number.POSITIVE_INFINITY;
    return judgedJoints(chair, "tenon-too-broad").flatMap((joint) => {
      const [section] = joint.sections;
      if (!section) return [];
      const wide = section.wide[1] - section.wide[0];
      const allowed = times * joint.thick;
      if (wide <= allowed + SAME_LENGTH) return [];
      const { facts } = joint;
      const place = jointPlace(chair, joint, facts.twin ?? sizesOf(joint).thick);
      const start = tree.text.lastIndexOf("\n", place.start) + 1;
      const lead = !facts.twin && place.own && /^([ \t]*)tenon\b/.exec(tree.text.slice(start, place.start));
      const gap = written(lengthOrLess(joint.wide / 3, units));
      return tell(tenonTooWideForThickness, place, {
        message: sentence("tenon-too-wide-for-thickness", {
          Tenon: capital(tenonOf(joint)),
          wide: length(wide, units),
          thick: length(joint.thick, units),
          times: ratio(wide / joint.thick),
          most: ratio(times),
        }),
        subject: joint.name,
        found: sentence("found.times", { times: ratio(wide / joint.thick) }),
        allowed: sentence("found.times-or-less", { times: ratio(times) }),
        badness: wide / joint.thick - times,
        ...(lead
          ? {
              fixes: [
                {
                  title: sentence("fix.make-two"),
                  edits: [{ start, end: start, text: `${lead[1]}twin gap ${gap}\n` }],
                },
              ],
            }
          : {}),
      });
    });
  },
};

const ratio = (number: number): string => String(Math.round(number * 10) / 10);
