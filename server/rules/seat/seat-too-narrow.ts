import type { Chair } from "../../chair/chair.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
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
    isSatAstride(chair, limit.low)
      ? []
      : tellSeat(
          seatTooNarrow,
          chair,
          { value: "seat.front-width", says: "wide", end: "low", check: "width" },
          limit,
        ),
};

/** Whether the sitter has a leg on either side of the seat's front, which is wide enough further back. */
function isSatAstride({ values }: Chair, least = 0): boolean {
  const [front, widest] = (["seat.front-width", "seat.width"] as const).map(
    (name) => values.get(name)?.number,
  );
  return front !== undefined && widest !== undefined && widest >= least && front < widest / 2;
}
