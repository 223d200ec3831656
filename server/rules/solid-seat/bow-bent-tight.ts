import { sentence } from "../../../grammar/sentences/sentence.ts";
import { tightestOf } from "../../chair/bows/bow.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";

export const bowBentTight: Rule = {
  code: "bow-bent-tight",
  severity: "warning",
  title: "Bow bent tighter than its thickness bears",
  explanation:
    "A strip that is bent is stretched outside and crushed inside: the tighter the bend for its thickness, the more of them break. The tightest radius of its inside face is compared with its thickness in the plane of the bend. Below 20 to 30 thicknesses dry stuff fails; steamed, with a strap and stops at its ends, straight-grained ash, oak, elm and hickory go to about this figure with few losses, and tighter with more. Make the bow thinner or wider, or bend it of glued strips. Hot steam and a strip under load can hurt: wear gloves, and stand clear of the ends. `limit bow-bent-tight to 6` changes how many thicknesses the radius is to be.",
  source: sourcesOf("bow-radius"),
  limit: { low: least("bow-radius"), dimension: "number", of: "times the thickness" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return [...chair.bows.values()].flatMap((bow) => {
      const { thick } = bow.sizeAt(bow.path.length / 2);
      const radius = tightestOf(bow);
      const allowed = (limit.low ?? 0) * thick;
      if (radius >= allowed - SAME_LENGTH) return [];
      const { design } = bow;
      const place = placeOf(chair.design, [design.section ?? design.round, design.wide, design.rise, design]);
      return tell(bowBentTight, place, {
        message: sentence("bow-bent-tight", {
          Bow: named(chair, bow.name),
          radius: length(radius, units),
          thick: length(thick, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("bow-bent-tight.otherwise"),
        subject: bow.name,
        found: length(radius, units),
        allowed: `${lengthOrMore(allowed, units)} or more`,
        badness: allowed - radius,
      });
    });
  },
};
