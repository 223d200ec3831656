import { sentence } from "../../../grammar/sentences/sentence.ts";
import { andList, capital } from "../../../grammar/wording.ts";
import { backrestOf } from "../../chair/values/backrest.ts";
import { loinsOf } from "../../sitter/loins.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
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
      ...(under === undefined ? [] : [sentence("lumbar.under", { under: print(under) })]),
      ...(over === undefined ? [] : [sentence("lumbar.over", { over: print(over) })]),
    ];
    return [
      tell(lumbarUnsupported, placeOf(chair.design, decidersOfRail(back.lowest)), {
        message: sentence("lumbar-unsupported", {
          low: print(from),
          high: print(to),
          found: andList(found),
        }),
        subject: back.lowest.name,
        found: andList(found),
        allowed: sentence("lumbar.allowed", { from: print(from), to: print(to) }),
        badness: 1,
      }),
    ];
  },
};
