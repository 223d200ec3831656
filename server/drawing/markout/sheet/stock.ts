import type { Piece } from "../../../joinery/pieces/piece.ts";
import { count, type Printer, word } from "./printer.ts";
import type { SheetFigure } from "./sheet.ts";

/** What a piece is cut from: planed, before it is shaped, its tenons in its length; and the blank that is planed to that, where it is known. */
export function stockOf(
  { size, timber, turned, plan, form, blank, outline }: Piece,
  printer: Printer,
): Record<string, SheetFigure> {
  const from = (mm: number) => printer.long(mm, "up");
  const { thick, wide, long, round } = size;
  return {
    is: word(plan ? "flat" : form ? "bent" : turned ? "turned" : "squared"),
    ...(timber === undefined ? {} : { timber: word(timber) }),
    ...(round === undefined
      ? { thick: printer.long(thick), wide: printer.long(wide) }
      : { diameter: printer.long(round) }),
    long: printer.long(long, "up"),
    // From the drawing's right, anticlockwise; a padded seat is of no board.
    ...(plan && blank && { grain: printer.angle(plan.grain) }),
    ...(outline?.square && { section: word("square all along") }),
    ...(blank && {
      "blank thick": from(blank.thick),
      "blank wide": from(blank.wide),
      "blank long": from(blank.long),
      ...(blank.sawn !== undefined && { sawn: printer.long(blank.sawn) }),
      ...(blank.staves > 1 && { staves: count(blank.staves) }),
      ...(blank.kind && { "blank is": word(blank.kind) }),
    }),
  };
}
