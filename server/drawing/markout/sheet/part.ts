/**
 * A piece's sheet as data.
 */
import type { Piece } from "../../../joinery/pieces/piece.ts";
import type { Figures } from "../figures.ts";
import { bowMarks } from "./bow-marks.ts";
import { endMarks } from "./end-marks.ts";
import { mortiseMarks } from "./mortise-marks.ts";
import { notchMarks } from "./notch-marks.ts";
import { datumMarks, outlineMarks } from "./outline-marks.ts";
import { planMarks } from "./plan-marks.ts";
import { mark, Printer, word } from "./printer.ts";
import { restMarks } from "./rest-marks.ts";
import type { SheetPart, Sheets } from "./sheet.ts";
import { stockOf } from "./stock.ts";
import { turnedMarks } from "./turned-marks.ts";

/** What the sheet of one piece says, for those made as it is drawn. */
export function sheetOf(piece: Piece, figures: Figures): SheetPart {
  const printer = new Printer(figures);
  const drawn = piece.parts.filter(({ mirrored }) => !mirrored);
  return {
    name: drawn.map(({ name }) => name).join(", "),
    number: drawn.length,
    stock: stockOf(piece, printer),
    marks: piece.plan
      ? planMarks(piece.plan, printer)
      : piece.form
        ? bowMarks(piece.form, printer)
        : [
            ...datumMarks(piece, printer),
            ...(piece.outline ? outlineMarks(piece, piece.outline, printer) : []),
            ...(piece.turned ? turnedMarks(piece.turned, printer) : []),
            ...endMarks(piece, printer),
            ...mortiseMarks(piece, printer),
            ...notchMarks(piece, printer),
            ...restMarks(piece, printer),
            ...(piece.levelling
              ? [mark("levelling", "foot", "", { off: printer.long(piece.levelling, "up") })]
              : []),
          ],
  };
}

/** All sheets of a chair; a mirror image is a part of its own that says which it mirrors. */
export function sheetsOf(pieces: readonly Piece[], figures: Figures): Sheets {
  const parts = pieces.flatMap((piece) => {
    const own = sheetOf(piece, figures);
    const mirrored = piece.parts.filter((part) => part.mirrored).map(({ name }) => name);
    if (mirrored.length === 0) return [own];
    const marks = [mark("mirror", "", "", { of: word(piece.parts[0]!.name) })];
    return [own, { name: mirrored.join(", "), number: mirrored.length, stock: own.stock, marks }];
  });
  const step = figures.unit === "in" ? 1 / figures.parts : figures.unit === "cm" ? 0.01 : 0.1;
  return { unit: figures.unit, step, parts };
}
