import { sentence } from "../../../grammar/sentences/sentence.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, setOutOrLess, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, tenonOf } from "./joint-places.ts";
import { nearEnd } from "./post-ends.ts";

/** A rail whose edge is this near the post's end lies at it, mm. */
const AT_END = 6;

export const haunchMissing: Rule = {
  code: "haunch-missing",
  severity: "information",
  title: "Haunch missing at a post's end",
  explanation:
    "Where a wide rail lies at the end of its post the tenon keeps clear of the end, and the part of the rail above it is held by nothing: it cups and stands off the post. A haunch, a short tongue beside the tenon, holds it flat: `haunch long 10mm`, or `haunch long 10mm sloped` where it is not to show. `limit haunch-missing to 0.2` changes the share of the rail's width from which it is needed.",
  source: sourcesOf("haunch-wanted"),
  limit: { low: least("haunch-wanted"), dimension: "share", of: "share of the rail" },
  find({ chair, limit, tree }) {
    const { units } = chair.design;
    return judgedJoints(chair, "haunch-missing").flatMap((joint) => {
      if (joint.haunch || joint.facts.tenonThick?.value === "full") return [];
      const near = nearEnd(chair, joint);
      if (near?.end !== "top") return [];
      const { top, bottom } = joint.shoulders;
      const rail = top + joint.wide + bottom;
      if (near.wood - top > AT_END || top < (limit.low ?? 0) * rail - SAME_LENGTH) return [];
      const place = jointPlace(chair, joint, joint.facts.shoulderTop);
      const long = length(joint.long / 3, units);
      const set = setOutOrLess(joint.long / 3, units);
      const start = tree.text.lastIndexOf("\n", place.start) + 1;
      const lead = place.own && /^([ \t]*)shoulders\b/.exec(tree.text.slice(start, place.start));
      return tell(haunchMissing, place, {
        message: sentence("haunch-missing", {
          top: length(top, units),
          part: plain(joint.part),
          tenon: tenonOf(joint),
          long,
        }),
        subject: joint.name,
        found: length(top, units),
        allowed: sentence("found.haunch"),
        badness: top,
        ...(lead
          ? {
              fixes: [
                {
                  title: sentence("fix.leave-haunch", { long: set }),
                  edits: [{ start, end: start, text: `${lead[1]}haunch long ${set}\n` }],
                },
              ],
            }
          : {}),
      });
    });
  },
};
