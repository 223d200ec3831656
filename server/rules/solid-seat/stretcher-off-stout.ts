import { sentence } from "../../../grammar/sentences/sentence.ts";
import { radiusAt } from "../../chair/posts/post-query.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";

export const stretcherOffStout: Rule = {
  code: "stretcher-off-stout",
  severity: "warning",
  title: "Stretcher that misses the leg's stout part",
  explanation:
    "A turned leg is left stout where its stretcher is let in, since the mortise takes half of it away there. A stretcher that meets the leg where it is already slender weakens it at its worst place. Set the stretcher where the leg is stoutest, or turn the leg stouter there. `limit stretcher-off-stout to 0.75` changes the share of its greatest diameter that the leg is to have.",
  source: sourcesOf("leg-at-stretcher"),
  limit: { low: least("leg-at-stretcher"), dimension: "share" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return [...chair.joints.values()].flatMap((joint) => {
      const leg = chair.posts.get(joint.entered.name);
      const rail = chair.rails.get(joint.part);
      if (!leg?.design.intoSeat || !rail || leg.side === "right") return [];
      const radius = radiusAt(leg, joint.root[2]);
      if (radius === undefined) return [];
      const stoutest = Math.max(...leg.pieces.flatMap(({ radii }) => radii ?? []));
      const allowed = (limit.low ?? 0) * 2 * stoutest;
      if (2 * radius >= allowed - SAME_LENGTH) return [];
      const design = rail.design.is === "rail" ? rail.design : undefined;
      return tell(stretcherOffStout, placeOf(chair.design, [design?.ups[0], leg.design.shape, rail.design]), {
        message: sentence("stretcher-off-stout", {
          Rail: named(chair, rail.name),
          leg: plain(leg.name),
          found: length(2 * radius, units),
          whole: length(2 * stoutest, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("stretcher-off-stout.otherwise"),
        subject: joint.name,
        found: length(2 * radius, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - 2 * radius,
      });
    });
  },
};
