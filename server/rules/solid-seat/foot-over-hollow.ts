import { sentence } from "../../../grammar/sentences/sentence.ts";
import { socketsIn } from "../../joinery/sockets.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn, seatedBy } from "./seated.ts";

export const footOverHollow: Rule = {
  code: "foot-over-hollow",
  severity: "warning",
  title: "Shoulder over the hollow",
  explanation:
    "Sticks, posts and bows stand on the seat's top face, which the hollow falls away from: over the hollow a shoulder stands above the wood, its tenon shows under it, and so much of its length is not held. Keep their feet on the rim, or make the rim wider. `limit foot-over-hollow to 2mm` changes the figure.",
  source: sourcesOf("foot-over-hollow"),
  limit: { high: most("foot-over-hollow"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.high ?? 0;
    return socketsIn(chair).flatMap(({ joint, part }) => {
      const over = joint.overHollow ?? 0;
      if (!isOwn(part) || over <= allowed + SAME_LENGTH) return [];
      const place = placeOf(chair.design, [...seatedBy(part), chair.seat?.design.solid?.hollow]);
      return tell(footOverHollow, place, {
        message: sentence("foot-over-hollow", {
          part: plain(part.name),
          over: length(over, units),
          long: length(joint.long, units),
          most: lengthOrLess(allowed, units),
        }),
        otherwise: sentence("foot-over-hollow.otherwise"),
        subject: joint.name,
        found: length(over, units),
        allowed: sentence("figure.or-less", { figure: lengthOrLess(allowed, units) }),
        badness: over - allowed,
      });
    });
  },
};
