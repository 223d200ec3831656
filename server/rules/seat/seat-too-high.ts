import seats from "../../sitter/seats.json" with { type: "json" };
import type { Rule } from "../machinery/rule.ts";
import { seatCaution, tellSeat } from "./seat-sizes.ts";

export const seatTooHigh: Rule = {
  code: "seat-too-high",
  severity: "warning",
  title: "Seat too high",
  explanation: `The feet of whoever sits in it hang or only touch with the toes, and the front edge presses behind the knee. Lower the seat rails. Children's seats are judged by the size marks of the school-chair standard, a named sitter by the height behind the knee with shoes on. \`limit seat-too-high to 480mm\` changes the figure for grown sitters. ${seatCaution}`,
  source: `Range for grown sitters: ${seats.height.source} (${seats.height.seen}); body sizes: the survey's own tables; shoes from memory.`,
  limit: { high: seats.height.high, dimension: "length" },
  asksForMissing: true,
  find: ({ chair, limit }) =>
    tellSeat(
      seatTooHigh,
      chair,
      { value: "seat.height", says: "stands", end: "high", check: "height" },
      limit,
    ),
};
