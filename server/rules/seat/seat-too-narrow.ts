import seats from "../../sitter/seats.json" with { type: "json" };
import { widthAstride } from "../../sitter/sizes.ts";
import type { Rule } from "../machinery/rule.ts";
import { seatCaution, tellSeat } from "./seat-sizes.ts";

export const seatTooNarrow: Rule = {
  code: "seat-too-narrow",
  severity: "warning",
  title: "Seat too narrow",
  explanation: `The hips and thighs find no room. Move the front posts out. A solid seat that runs to a corner in front is sat on with a leg on either side: its widest counts. \`limit seat-too-narrow to 360mm\` changes the figure for grown sitters. ${seatCaution}`,
  source: `Range for grown sitters: ${seats.frontWidth.source} (${seats.frontWidth.seen}); body sizes: the survey's own tables; shoes from memory.`,
  limit: { low: seats.frontWidth.low, dimension: "length" },
  asksForMissing: true,
  find: ({ chair, limit }) =>
    (widthAstride(chair) ?? 0) >= (limit.low ?? Number.POSITIVE_INFINITY)
      ? []
      : tellSeat(
          seatTooNarrow,
          chair,
          { value: "seat.front-width", says: "wide", end: "low", check: "width" },
          limit,
        ),
};
