import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { jointPlace, sizesOf, tenonOf } from "../joints/joint-places.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell } from "../machinery/say.ts";
import { climateInWords, movementSource } from "./climate.ts";

export const heldAcrossGrain: Rule = {
  code: "held-across-grain",
  severity: "warning",
  title: "Wide tenon held across the grain",
  explanation:
    "A tenon swells and shrinks across its width with the seasons; the post that it is glued into does not along its grain. The wider it is, the more the glue has to hold, until it lets go or the wood splits. Make it narrower, or divide it in two and leave the outer one dry (`glue none`); a quarter-sawn board moves half as much. `climate` says between what the chair lives. `limit held-across-grain to 1mm` changes what is allowed.",
  source: `${sourcesOf("most-movement-glued")} ${movementSource}`,
  limit: { high: most("most-movement-glued"), dimension: "length" },
  late: "only",
  find({ chair, limit, late }) {
    if (!late) return [];
    const { units } = chair.design;
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    const { climate, joints } = late.wood;
    return joints.flatMap(({ joint, wide, across }) => {
      if (joint.facts.glue?.value === "none" || joint.kind === "dowels" || joint.shape === "round") return [];
      if (across <= allowed + SAME_LENGTH) return [];
      const sizes = sizesOf(joint);
      const { low, damp } = climateInWords(climate);
      return tell(heldAcrossGrain, jointPlace(chair, joint, sizes.wide), {
        message: sentence("held-across-grain", {
          Tenon: capital(tenonOf(joint)),
          wide: length(wide, units),
          low,
          high: damp,
          moves: length(across, units),
          most: length(allowed, units),
        }),
        otherwise: sentence("held-across-grain.otherwise"),
        subject: joint.name,
        found: length(across, units),
        allowed: sentence("figure.or-less", { figure: length(allowed, units) }),
        badness: across - allowed,
      });
    });
  },
};
