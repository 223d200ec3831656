import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import type { Joint } from "../../chair/chair.ts";
import { woodOf } from "../../chair/joints/hosting.ts";
import type { Wood } from "../../chair/joints/wood.ts";
import { along } from "../../geometry/vec.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, setOutOrLess, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";

export const mortiseTooWide: Rule = {
  code: "mortise-too-wide",
  severity: "warning",
  title: "Mortise too wide for its post",
  explanation:
    "A mortise that takes more than half of a post's width leaves walls at either side that split when the chair is rocked. Make the tenon thinner or the post thicker. `limit mortise-too-wide to 0.6` changes the share of the post.",
  source: sourcesOf("most-mortise-share-of-post"),
  limit: { high: most("most-mortise-share-of-post"), dimension: "share", of: "share of the post" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return judgedJoints(chair, "mortise-too-wide").flatMap((joint) => {
      const post = chair.posts.get(joint.entered.name);
      if (!post) return [];
      const wide = widthAt(woodOf(post, joint.root), joint);
      const allowed = (limit.high ?? 1) * wide;
      if (wide === 0 || joint.thick <= allowed + SAME_LENGTH) return [];
      const { facts } = joint;
      const place = jointPlace(chair, joint, sizesOf(joint).thick);
      const figure = lengthOrLess(allowed, units);
      return tell(mortiseTooWide, place, {
        message: sentence("mortise-too-wide", {
          Tenon: capital(tenonOf(joint)),
          thick: length(joint.thick, units),
          host: plain(post.name),
          wide: length(wide, units),
          most: figure,
        }),
        subject: joint.name,
        found: length(joint.thick, units),
        allowed: sentence("figure.or-less", { figure: figure }),
        badness: joint.thick - allowed,
        ...(facts.tenonThick?.value === "full"
          ? {}
          : {
              fixes: [
                {
                  title: sentence("fix.make-it", { it: setOutOrLess(allowed, units) }),
                  edits: [{ start: place.start, end: place.end, text: setOutOrLess(allowed, units) }],
                },
              ],
            }),
      });
    });
  },
};

/** How wide the post is across the mortise, half-way down it. */
const widthAt = (wood: Wood, joint: Joint): number =>
  wood.thicknessAcross(
    along(joint.root, joint.direction, Math.min(joint.long, joint.depthThere) / 2),
    joint.acrossThick,
  );
