import { sentence } from "../../../grammar/sentences/sentence.ts";
import { socketsIn } from "../../joinery/sockets.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn, seatedBy } from "./seated.ts";

export const socketNearEdge: Rule = {
  code: "socket-near-edge",
  severity: "warning",
  title: "Socket too near the seat's edge",
  explanation:
    "A socket near the edge of a solid seat leaves a thin web that splits off when the leg or the stick works, first where the grain runs out at the edge. It is measured from the bore's rim to the outline, in both faces that it opens in, less what a bevel takes off there. Move it in, or make it smaller. `limit socket-near-edge to 10mm` changes the figure.",
  source: sourcesOf("socket-edge-wood"),
  limit: { low: least("socket-edge-wood"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    return socketsIn(chair).flatMap(({ joint, part }) => {
      const wood = joint.mortiseWall;
      // One that breaks out is another fault.
      if (!isOwn(part) || wood < 0 || wood >= allowed - SAME_LENGTH) return [];
      return tell(socketNearEdge, placeOf(chair.design, seatedBy(part)), {
        message: sentence("socket-near-edge", {
          part: plain(part.name),
          wood: length(wood, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("socket-near-edge.otherwise"),
        subject: joint.name,
        found: length(wood, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - wood,
      });
    });
  },
};
