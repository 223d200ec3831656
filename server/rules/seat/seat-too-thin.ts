import { sentence } from "../../../grammar/sentences/sentence.ts";
import { caution } from "../../floor/editions.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell } from "../machinery/say.ts";

export const seatTooThin: Rule = {
  code: "seat-too-thin",
  severity: "warning",
  title: "Seat with too little wood in it",
  explanation: `A thin seat of solid wood splits across the grain under the sitter. What counts is its thickness less its hollow. \`limit seat-too-thin to 9\` changes the figure. ${caution}`,
  source: sourcesOf("seat-least-thick"),
  limit: { low: least("seat-least-thick"), dimension: "length" },
  find({ chair, limit }) {
    const { seat, units } = chair.design;
    const thick = seat?.thick;
    if (!seat || !thick || (seat.kind !== "board" && seat.kind !== "solid")) return [];
    const hollow = seat.solid?.hollow;
    const left = thick.value - (hollow?.value.deep ?? 0);
    const allowed = limit.low ?? 0;
    if (left >= allowed - SAME_LENGTH) return [];
    const [found, most] = [length(left, units), length(allowed, units)];
    return [
      tell(seatTooThin, placeOf(chair.design, [hollow, thick]), {
        message: sentence(hollow ? "seat-too-thin.hollow" : "seat-too-thin", { found, least: most }),
        otherwise: sentence("seat-too-thin.otherwise"),
        subject: "seat",
        found,
        allowed: sentence("figure.or-more", { figure: most }),
        badness: allowed - left,
      }),
    ];
  },
};
