import { sentence } from "../../../grammar/sentences/sentence.ts";
import { alongGrain, socketPairs } from "../../joinery/sockets.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plainBoth } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn, seatedBy } from "./seated.ts";

export const socketsInLine: Rule = {
  code: "sockets-in-line",
  severity: "warning",
  title: "Sockets in line along the grain",
  explanation:
    "Sockets that lie one behind another along the grain of a solid seat part the same fibres: the seat splits from one to the next. Those whose middles lie less than half of the larger bore's diameter apart across the grain count as in line. Leave wood between them along the grain, or move one of them sideways. `limit sockets-in-line to 1` changes how many times the smaller diameter is left.",
  source: sourcesOf("wood-in-line"),
  limit: { low: least("wood-in-line"), dimension: "number" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return socketPairs(chair).flatMap(([a, b]) => {
      if (!isOwn(a.part) && !isOwn(b.part)) return [];
      const line = alongGrain(chair, a, b);
      const [smaller, larger] = [Math.min(a.radii[0], b.radii[0]), Math.max(a.radii[0], b.radii[0])];
      const allowed = (limit.low ?? 0) * 2 * smaller;
      if (!line || line.across >= larger || line.wood >= allowed - SAME_LENGTH || line.wood <= 0) return [];
      const { wood } = line;
      return tell(socketsInLine, placeOf(chair.design, [...seatedBy(b.part), ...seatedBy(a.part)]), {
        message: sentence("sockets-in-line", {
          ...plainBoth(b.part.name, a.part.name),
          wood: length(wood, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("sockets-in-line.otherwise"),
        subject: b.joint.name,
        found: length(wood, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - wood,
      });
    });
  },
};
