import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import type { Chair, Joint, Post } from "../../chair/chair.ts";
import { radiusAt } from "../../chair/posts/post-query.ts";
import { dot } from "../../geometry/vec.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, setOutOrMore, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";

export const tenonTooShort: Rule = {
  code: "tenon-too-short",
  severity: "warning",
  title: "Tenon too short for its post",
  explanation:
    "The strength of a glued joint goes with its tenon's length: a blind tenon wants half to two thirds of the post it enters. Rails only: slats and spindles that locate rather than carry are left alone, and so are tenons that are stopped by another one coming from the far side. `limit tenon-too-short to 0.4` changes the share of the post.",
  source: sourcesOf("blind-tenon"),
  limit: { low: least("blind-tenon"), dimension: "share", of: "share of the post" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return judgedJoints(chair, "tenon-too-short").flatMap((joint) => {
      const post = chair.posts.get(joint.entered.name);
      if (!post || !chair.rails.has(joint.part)) return [];
      const deep = stuffThere(post, joint);
      const allowed = (limit.low ?? 0) * deep;
      if (joint.facts.through || joint.long >= allowed - SAME_LENGTH || isStopped(chair, joint)) return [];
      const place = jointPlace(chair, joint, sizesOf(joint).long);
      const figure = lengthOrMore(allowed, units);
      return tell(tenonTooShort, place, {
        message: sentence("tenon-too-short", {
          Tenon: capital(tenonOf(joint)),
          long: length(joint.long, units),
          deep: length(deep, units),
          host: plain(joint.entered.name),
          least: figure,
        }),
        subject: joint.name,
        found: length(joint.long, units),
        allowed: sentence("figure.or-more", { figure: figure }),
        badness: allowed - joint.long,
        ...(sizesOf(joint).long && sizesOf(joint).apart
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

/** How much wood the post has for the tenon, mm: of a turned one that tapers no more than its diameter, however aslant its face is taken. */
function stuffThere(post: Post, { depthThere, root }: Joint): number {
  const radius = radiusAt(post, root[2]);
  return radius === undefined ? depthThere : Math.min(depthThere, 2 * radius);
}

/** Whether another tenon comes from the far side of the post to where this one would go. */
const isStopped = (chair: Chair, joint: Joint): boolean =>
  [...chair.joints.values()].some(
    (other) =>
      other !== joint &&
      other.entered.name === joint.entered.name &&
      other.tenon.length > 0 &&
      dot(other.direction, joint.direction) < -0.7 &&
      Math.abs(other.root[2] - joint.root[2]) < (other.wide + joint.wide) / 2,
  );
