import { sentence } from "../../../grammar/sentences/sentence.ts";
import { leftBehind } from "../../joinery/rest-wood.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";

export const restCutTooDeep: Rule = {
  code: "rest-cut-too-deep",
  severity: "warning",
  title: "Rebate or groove too deep for its rail",
  explanation:
    "A rebate or a groove takes away the wood that keeps a rail stiff, and what is left at its side breaks off under a sitter. A third of the rail's thickness is left behind it, and a third of its width; two cuts that lie back to back count together. Make the cut shallower, or the rail thicker. `limit rest-cut-too-deep to 0.4` changes the share.",
  source: sourcesOf("wood-behind-rest"),
  limit: { low: least("wood-behind-rest"), dimension: "share", of: "share of the rail" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return [...chair.rails.values()].flatMap((rail) =>
      (rail.cuts ?? []).flatMap((cut) => {
        const { left, which, whole } = leftBehind(rail, cut);
        const allowed = (limit.low ?? 0) * whole;
        // What does not lie within the rail at all is another fault.
        if (left <= 0 || left >= allowed - SAME_LENGTH) return [];
        const { design } = cut;
        return tell(restCutTooDeep, placeOf(chair.design, [design, rail.design]), {
          message: sentence("rest-cut-too-deep", {
            rest: design.value.is,
            left: length(left, units),
            which,
            rail: plain(rail.name),
            whole: length(whole, units),
            least: lengthOrMore(allowed, units),
          }),
          otherwise: sentence("rest-cut-too-deep.otherwise"),
          subject: rail.name,
          found: length(left, units),
          allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
          badness: allowed - left,
        });
      }),
    );
  },
};
