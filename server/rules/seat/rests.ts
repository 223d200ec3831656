/**
 * What the rules about a loose seat's rests share.
 */
import type { Chair, Rail } from "../../chair/chair.ts";
import type { SeatDesign } from "../../design/design.ts";
import { plain } from "../machinery/names.ts";

/** The rails that carry the seat, each of a pair and of a row. */
export function seatRails({ rails }: Pick<Chair, "rails">, seat: SeatDesign): Rail[] {
  return [...rails.values()].filter((rail) =>
    seat.on.some(
      ({ value }) => value.name === rail.id.stem && (value.side === undefined || value.side === rail.side),
    ),
  );
}

/** Names without sides, each once. */
export const plainNames = (rails: readonly Rail[]): string[] => [
  ...new Set(rails.map(({ name }) => plain(name))),
];
