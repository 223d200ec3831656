import { sentence } from "../../../grammar/sentences/sentence.ts";
import { restAt } from "../../chair/seat/seat-rest.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { listed, tell } from "../machinery/say.ts";
import { plainNames, seatRails } from "./rests.ts";

export const seatRestMissing: Rule = {
  code: "seat-rest-missing",
  severity: "warning",
  title: "Rails without what the seat rests in",
  explanation:
    "A seat that `rests` on strips, in rebates or in grooves needs them in every rail that carries it, on the inside and, of rebates, at the top. Give the rails named a `strip`, a `rebate` or a `groove`, or let the seat rest in what its rails have.",
  source: "Common practice: a loose seat frame lies on a strip, a rebate or a groove all round.",
  find({ chair }) {
    const { seat } = chair;
    const rests = seat?.design.rests;
    if (!seat || !rests || rests.value === "rails") return [];
    const { value } = rests;
    const without = seatRails(chair, seat.design).filter((rail) => !restAt(rail, value));
    if (without.length === 0) return [];
    const names = plainNames(without);
    return [
      tell(seatRestMissing, placeOf(chair.design, [rests]), {
        message: sentence(
          names.length === 1 ? (`seat-rest-missing.${value}-one` as const) : `seat-rest-missing.${value}`,
          { rails: listed(names) },
        ),
        otherwise: sentence("seat-rest-missing.otherwise", { rest: value.slice(0, -1) }),
        subject: "seat",
        found: sentence("found.none-in", { rails: listed(names) }),
        allowed: sentence("found.rest-in-each", { rest: value.slice(0, -1) }),
        badness: names.length,
      }),
    ];
  },
};
