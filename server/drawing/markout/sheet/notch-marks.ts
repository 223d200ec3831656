/**
 * Notches for rails that cross, as marks.
 */
import type { CutNotch, Ends, Piece } from "../../../joinery/pieces/piece.ts";
import { mark, type Printer, word } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

export const notchMarks = ({ notches = [] }: Piece, printer: Printer): SheetMark[] =>
  notches.map((notch) => mark("notch", notch.face, notch.datum, figuresOf(notch, printer)));

/** On each face beside: `from` and `to` at the arris, at the floor too where they print otherwise; `deep` at the start and at the end. */
function figuresOf({ for: other, sides }: CutNotch, printer: Printer): Record<string, SheetFigure> {
  const found: Record<string, SheetFigure> = { for: word(other) };
  for (const { face, mouth, floor, deep } of sides) {
    const both = (names: readonly [string, string], ends: Ends) =>
      names.forEach((name, k) => {
        found[`${name} on ${face}`] = printer.long(ends[k as 0]);
      });
    both(["from", "to"], mouth);
    const same = mouth.every((end, k) => printer.long(end).text === printer.long(floor[k as 0]).text);
    if (!same) both(["floor from", "floor to"], floor);
    found[`deep on ${face}`] = printer.long(deep[0]);
    if (printer.long(deep[1]).text !== printer.long(deep[0]).text)
      found[`deep at its end on ${face}`] = printer.long(deep[1]);
  }
  return found;
}
