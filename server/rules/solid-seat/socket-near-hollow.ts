import { sentence } from "../../../grammar/sentences/sentence.ts";
import { woodUnderHollow } from "../../chair/seat/solid/hollow.ts";
import { dot } from "../../geometry/vec.ts";
import { socketsIn } from "../../joinery/sockets.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn, seatedBy } from "./seated.ts";

export const socketNearHollow: Rule = {
  code: "socket-near-hollow",
  severity: "warning",
  title: "Blind socket near the hollow",
  explanation:
    "A blind socket bored from below ends under the hollow that the sitter sits in: with too little wood left, the bit's point comes through, or the bottom breaks out when the leg is driven home. Make the tenon shorter, move the leg towards the rim, or make the hollow shallower. `limit socket-near-hollow to 4mm` changes the figure.",
  source: sourcesOf("wood-under-hollow"),
  limit: { low: least("wood-under-hollow"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const { seat } = chair;
    const allowed = limit.low ?? 0;
    return socketsIn(chair).flatMap(({ joint, part }) => {
      if (!seat || !isOwn(part) || joint.facts.through || dot(joint.direction, seat.plane.normal) < 0)
        return [];
      const wood = woodUnderHollow(
        seat,
        joint.tenon.flatMap(({ points }) => points),
      );
      if (wood === undefined || wood >= allowed - SAME_LENGTH) return [];
      const into = wood < 0;
      const place = placeOf(chair.design, [joint.facts.round, ...seatedBy(part), seat.design.solid?.hollow]);
      return tell(socketNearHollow, place, {
        message: sentence(into ? "socket-near-hollow.into" : "socket-near-hollow", {
          part: plain(part.name),
          wood: length(Math.abs(wood), units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("socket-near-hollow.otherwise"),
        subject: joint.name,
        found: into ? "none" : length(wood, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - wood,
      });
    });
  },
};
