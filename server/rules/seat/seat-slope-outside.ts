import seats from "../../sitter/seats.json" with { type: "json" };
import type { Rule } from "../machinery/rule.ts";
import { seatCaution, tellSeat } from "./seat-sizes.ts";

export const seatSlopeOutside: Rule = {
  code: "seat-slope-outside",
  severity: "warning",
  title: "Seat slopes too far back",
  explanation: `A seat that falls further to the back than this is hard to rise from and hard to eat from. Trim less off the back feet, or raise the back of the seat. For grown sitters. \`limit seat-slope-outside to 8deg\` changes the figure for grown sitters. ${seatCaution}`,
  source: `Range for grown sitters: ${seats.slope.source} (${seats.slope.seen}); body sizes: the survey's own tables; shoes from memory.`,
  limit: { high: seats.slope.high * (Math.PI / 180), dimension: "angle" },
  asksForMissing: true,
  find: ({ chair, limit }) => tellSeat(seatSlopeOutside, chair, { value: "seat.slope", end: "high" }, limit),
};
