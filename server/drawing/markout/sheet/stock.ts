import type { Piece } from "../../../joinery/pieces/piece.ts";
import { type Printer, word } from "./printer.ts";
import type { SheetFigure } from "./sheet.ts";

/** What a piece is cut from: planed, before it is shaped, its tenons in its length. */
export function stockOf(
  { size, timber, turned, plan }: Piece,
  printer: Printer,
): Record<string, SheetFigure> {
  const { thick, wide, long, round } = size;
  return {
    is: word(plan ? "flat" : turned ? "turned" : "squared"),
    ...(timber === undefined ? {} : { timber: word(timber) }),
    ...(round === undefined
      ? { thick: printer.long(thick), wide: printer.long(wide) }
      : { diameter: printer.long(round) }),
    long: printer.long(long, "up"),
  };
}
