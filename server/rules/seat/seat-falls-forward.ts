import seats from "../../sitter/seats.json" with { type: "json" };
import type { Rule } from "../machinery/rule.ts";
import { seatCaution, tellSeat } from "./seat-sizes.ts";

export const seatFallsForward: Rule = {
  code: "seat-falls-forward",
  severity: "warning",
  title: "Seat falls forward",
  explanation: `A seat that falls forward slides its sitter off. Trim the back feet, or lower the back of the seat. For grown sitters. \`limit seat-falls-forward to -1deg\` changes the figure for grown sitters. ${seatCaution}`,
  source: `Range for grown sitters: ${seats.slope.source} (${seats.slope.seen}); body sizes: the survey's own tables; shoes from memory.`,
  limit: { low: seats.slope.low * (Math.PI / 180), dimension: "angle" },
  asksForMissing: true,
  find: ({ chair, limit }) => tellSeat(seatFallsForward, chair, { value: "seat.slope", end: "low" }, limit),
};
