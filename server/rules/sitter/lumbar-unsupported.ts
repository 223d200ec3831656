import { capital } from "../../../grammar/wording.ts";
import { backrestOf } from "../../chair/values/backrest.ts";
import { loinsOf } from "../../sitter/loins.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
import { sentence } from "../machinery/sentence.ts";
import { comfortCaution, decidersOfRail, isForGrown } from "./comfort.ts";

export const lumbarUnsupported: Rule = {
  code: "lumbar-unsupported",
  was: ["loins-unsupported"],
  severity: "information",
  title: "Nothing behind the lower back",
  explanation: `The small of the back is where a back carries most. Let a rail or slats lie there. For grown sitters. ${comfortCaution}`,
  source: `${capital(seats.lumbar.source)}.`,
  asksForMissing: true,
  find({ chair }) {
    const loins = isForGrown(chair) ? loinsOf(chair) : undefined;
    const back = backrestOf(chair);
    if (!loins || loins.meets || !back) return [];
    const print = (mm: number) => length(mm, chair.design.units);
    const { from, to, under, over } = loins;
    const found = [
      under !== undefined && `up to ${print(under)}`,
      over !== undefined && `from ${print(over)} up`,
    ].filter(Boolean);
    return [
      tell(lumbarUnsupported, placeOf(chair.design, decidersOfRail(back.lowest)), {
        message: sentence("lumbar-unsupported", {
          low: print(from),
          high: print(to),
          found: found.join(" and "),
        }),
        subject: back.lowest.name,
        found: found.join(" and "),
        allowed: `something from ${print(from)} to ${print(to)}`,
        badness: 1,
      }),
    ];
  },
};
