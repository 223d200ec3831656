import seats from "../../sitter/seats.json" with { type: "json" };
import type { Rule } from "../machinery/rule.ts";
import { seatCaution, tellSeat } from "./seat-sizes.ts";

export const seatTooLow: Rule = {
  code: "seat-too-low",
  severity: "warning",
  title: "Seat too low",
  explanation: `The knees come up and the weight goes onto the bones. Raise the seat rails. Children's seats are judged by the size marks of the school-chair standard, a named sitter by the height behind the knee with shoes on. \`limit seat-too-low to 380mm\` changes the figure for grown sitters. ${seatCaution}`,
  source: `Range for grown sitters: ${seats.height.source} (${seats.height.seen}); body sizes: the survey's own tables; shoes from memory.`,
  limit: { low: seats.height.low, dimension: "length" },
  asksForMissing: true,
  find: ({ chair, limit }) =>
    tellSeat(
      seatTooLow,
      chair,
      { value: "seat.height", says: "stands", end: "low", check: "not too low" },
      limit,
    ),
};
