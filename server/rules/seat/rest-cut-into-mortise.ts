import { sentence } from "../../../grammar/sentences/sentence.ts";
import { mortisesNear } from "../../joinery/rest-wood.ts";
import { tenonOf } from "../joints/joint-places.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";

export const restCutIntoMortise: Rule = {
  code: "rest-cut-into-mortise",
  severity: "warning",
  title: "Rebate or groove at a mortise",
  explanation:
    "A rebate or a groove that runs into a mortise of its rail takes the tenon's cheek away; one that comes near leaves a web that breaks out under the chisel. Stop a rebate short of it with `from` and `to`, set the groove higher or lower, or move what is let in there. `limit rest-cut-into-mortise to 5` changes the wood that is left.",
  source: sourcesOf("wood-between-mortises"),
  limit: { low: least("wood-between-mortises"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    return [...chair.rails.values()].flatMap((rail) =>
      (rail.cuts ?? []).flatMap((cut) =>
        mortisesNear(chair, rail, cut).flatMap(({ joint, wall }) => {
          if (wall >= allowed - SAME_LENGTH) return [];
          const cuts = wall < 0;
          const { design } = cut;
          const common = { rest: design.value.is, rail: plain(rail.name), tenon: tenonOf(joint) };
          return tell(restCutIntoMortise, placeOf(chair.design, [design, rail.design]), {
            message: cuts
              ? sentence("rest-cut-into-mortise", { ...common, into: length(-wall, units) })
              : sentence("rest-cut-into-mortise.near", {
                  ...common,
                  wall: length(wall, units),
                  least: lengthOrMore(allowed, units),
                }),
            otherwise: sentence("rest-cut-into-mortise.otherwise"),
            subject: rail.name,
            found: cuts ? sentence("found.into-it", { by: length(-wall, units) }) : length(wall, units),
            allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
            badness: allowed - wall,
          });
        }),
      ),
    );
  },
};
