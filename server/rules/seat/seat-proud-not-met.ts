import { sentence } from "../../../grammar/sentences/sentence.ts";
import { restOf } from "../../chair/seat/seat-rest.ts";
import { printBareLength } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
import { seatRails } from "./rests.ts";

export const seatProudNotMet: Rule = {
  code: "seat-proud-not-met",
  severity: "warning",
  title: "Seat not as proud as its rests make it",
  explanation:
    "On strips, in rebates and in grooves the height of a seat follows from where it rests: its thickness and its covering, less how far the strip's top or the rebate's floor lies below the rails' tops; in grooves its top is level with theirs. A `proud` that says otherwise is not used. Leave it out, or move the rest. `limit seat-proud-not-met to 1` changes how far apart the two may be.",
  source: sourcesOf("proud-as-given"),
  limit: { high: most("proud-as-given"), dimension: "length" },
  find({ chair, limit }) {
    const { seat } = chair;
    const given = seat?.design.proud;
    if (!seat || !given || given.assumed) return [];
    const rest = restOf(seat.design, seatRails(chair, seat.design));
    if (!rest) return [];
    const off = Math.abs(rest.proud - given.value);
    if (off <= (limit.high ?? 0) + 1e-6) return [];
    const { units } = chair.design;
    const found = length(rest.proud, units);
    const place = placeOf(chair.design, [given]);
    return [
      tell(seatProudNotMet, place, {
        message: sentence("seat-proud-not-met", {
          found,
          rests: seat.design.rests?.value ?? "rests",
          given: length(given.value, units),
        }),
        otherwise: sentence("seat-proud-not-met.otherwise"),
        subject: "seat",
        found,
        allowed: length(given.value, units),
        badness: off,
        fixes: [
          {
            title: sentence("fix.say-proud", { figure: found }),
            edits: [{ start: place.start, end: place.end, text: printBareLength(rest.proud, units, 64) }],
          },
        ],
      }),
    ];
  },
};
