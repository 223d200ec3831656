import { sentence } from "../../../grammar/sentences/sentence.ts";
import { socketsIn } from "../../joinery/sockets.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { candidateOf, designOf, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn } from "./seated.ts";

export const socketTooShallow: Rule = {
  code: "socket-too-shallow",
  severity: "warning",
  title: "Socket too shallow for its diameter",
  explanation:
    "What stands in a solid seat is held by the depth of its socket alone: a shallow one lets it work loose, as its lever is short. Make the tenon longer, or smaller, or take it right through. `limit socket-too-shallow to 1` changes how many diameters deep it is to be.",
  source: sourcesOf("socket-depth"),
  limit: { low: least("socket-depth"), dimension: "number" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return socketsIn(chair).flatMap(({ joint, part, radii }) => {
      const allowed = (limit.low ?? 0) * 2 * radii[0];
      // One whose shoulder stands so high over the hollow that its tenon ends above the wood has none.
      const deep = Math.max(0, joint.long - (joint.overHollow ?? 0));
      if (!isOwn(part) || joint.facts.through || deep >= allowed - SAME_LENGTH) return [];
      const { round, tenonLong } = joint.facts;
      const own = designOf(chair, part.name);
      const place = placeOf(chair.design, [tenonLong ?? round, own && candidateOf(own, joint.at), own]);
      return tell(socketTooShallow, place, {
        message: sentence("socket-too-shallow", {
          part: plain(part.name),
          deep: length(deep, units),
          diameter: length(2 * radii[0], units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("socket-too-shallow.otherwise"),
        subject: joint.name,
        found: length(deep, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - deep,
      });
    });
  },
};
