import { sentence } from "../../../grammar/sentences/sentence.ts";
import { socketPairs, woodBetween } from "../../joinery/sockets.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plainBoth } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn, seatedBy } from "./seated.ts";

export const socketsTooClose: Rule = {
  code: "sockets-too-close",
  severity: "warning",
  title: "Sockets too near each other",
  explanation:
    "Two sockets of a solid seat that come near each other leave little wood between, which splits when a wedge is driven or a leg works. It is measured between the bores, wherever they come nearest, a stick's from above as well as a leg's from below. Move one of them, or make one shallower. `limit sockets-too-close to 6mm` changes the figure.",
  source: sourcesOf("wood-between-sockets"),
  limit: { low: least("wood-between-sockets"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    return socketPairs(chair).flatMap(([a, b]) => {
      if (!isOwn(a.part) && !isOwn(b.part)) return [];
      const wood = woodBetween(a, b);
      if (wood >= allowed - SAME_LENGTH) return [];
      const into = wood < 0;
      return tell(socketsTooClose, placeOf(chair.design, [...seatedBy(b.part), ...seatedBy(a.part)]), {
        message: sentence(into ? "sockets-too-close.into" : "sockets-too-close", {
          ...plainBoth(b.part.name, a.part.name),
          wood: length(Math.abs(wood), units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("sockets-too-close.otherwise"),
        subject: b.joint.name,
        found: into ? "none" : length(wood, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - wood,
      });
    });
  },
};
