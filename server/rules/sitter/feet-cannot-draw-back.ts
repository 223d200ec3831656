import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { heelStops } from "../../sitter/heels.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { comfortCaution, decidersOfRail, isForGrown } from "./comfort.ts";

export const feetCannotDrawBack: Rule = {
  code: "feet-cannot-draw-back",
  severity: "information",
  title: "A rail stops the feet drawing back",
  explanation: `Whoever rises draws the feet back under the seat first. A rail across the front, low down, stops the shins. Lay it further back, between the side rails, or leave it out; a rung to rest the heels on is a choice to be accepted with its reason. For grown sitters. \`limit feet-cannot-draw-back to 60mm\` changes how far the heels must come behind the knees. ${comfortCaution}`,
  source: `${capital(seats.drawBack.source)}.`,
  limit: { low: seats.drawBack.low, dimension: "length" },
  asksForMissing: true,
  find({ chair, limit: { low } }) {
    if (!isForGrown(chair) || low === undefined) return [];
    const print = (mm: number) => length(Math.max(0, mm), chair.design.units);
    return heelStops(chair).flatMap(({ rail, reach, backFor }) => {
      if (reach >= low - SAME_LENGTH) return [];
      return [
        tell(feetCannotDrawBack, placeOf(chair.design, decidersOfRail(rail)), {
          message: sentence("feet-cannot-draw-back", {
            Rail: named(chair, rail.name),
            reach: print(reach),
            least: print(low),
          }),
          otherwise: sentence("feet-cannot-draw-back.otherwise", {
            by: lengthOrMore(backFor(low), chair.design.units),
          }),
          subject: rail.name,
          found: print(reach),
          allowed: sentence("figure.or-more", { figure: print(low) }),
          badness: low - reach,
        }),
      ];
    });
  },
};
