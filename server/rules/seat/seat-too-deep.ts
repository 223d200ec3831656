import seats from "../../sitter/seats.json" with { type: "json" };
import type { Rule } from "../machinery/rule.ts";
import { seatCaution, tellSeat } from "./seat-sizes.ts";

export const seatTooDeep: Rule = {
  code: "seat-too-deep",
  severity: "warning",
  title: "Seat too deep",
  explanation: `Whoever sits in it cannot reach the back without the front edge pressing behind the knee. Bring the back nearer or the front edge back. \`limit seat-too-deep to 480mm\` changes the figure for grown sitters. ${seatCaution}`,
  source: `Range for grown sitters: ${seats.depth.source} (${seats.depth.seen}); body sizes: the survey's own tables; shoes from memory.`,
  limit: { high: seats.depth.high, dimension: "length" },
  asksForMissing: true,
  find: ({ chair, limit }) =>
    tellSeat(seatTooDeep, chair, { value: "seat.depth", says: "deep", end: "high", check: "depth" }, limit),
};
