/**
 * Datums, and the outline of stuff that is not plain.
 */
import type { Datum, Outline, Piece } from "../../../joinery/pieces/piece.ts";
import { LEAST, mark, type Printer, word } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

/** Every datum: where it is, and beyond a bend how far from the one that the outline runs from and how the stick turns there. */
export function datumMarks(piece: Piece, printer: Printer): SheetMark[] {
  const { datums, faces, turned } = piece;
  const names = turned?.faces ?? faces.map(({ name }) => name);
  const line = turned ? "axis" : piece.is === "post" ? "centre line" : `${names[0]} outside arris`;
  return datums.map((datum) =>
    mark("datum", "", datum.place?.from ?? "", {
      name: word(datum.name),
      where: word(datum.says),
      ...(datum.place ? placed(datum, names, printer) : { line: word(line), faces: word(names.join(", ")) }),
    }),
  );
}

function placed({ place }: Datum, names: readonly string[], printer: Printer): Record<string, SheetFigure> {
  if (!place) return {};
  const found: Record<string, SheetFigure> = { along: printer.long(place.along) };
  for (const axis of [0, 1] as const) {
    const [off, turn] = [place.off[axis], place.turn[axis]];
    if (!printer.isNone(off)) found[`to ${names[off > 0 ? axis : axis + 2]}`] = printer.long(Math.abs(off));
    if (Math.abs(turn) > LEAST) found[`turns to ${names[turn > 0 ? axis : axis + 2]}`] = printer.lean(turn);
  }
  return found;
}

/** A row for each station: how far the faces lie from the line there, at either arris where those differ. */
export function outlineMarks(piece: Piece, outline: Outline, printer: Printer): SheetMark[] {
  const names = piece.faces.map(({ name }) => name);
  const datum = ownDatum(piece);
  const rows = outline.rows.map(({ at, offsets }) => {
    const figures: Record<string, SheetFigure> = { at: printer.long(at) };
    offsets.forEach((pair, k) => {
      // A flat face is not made to look twisted by how two distances that are nearly the same are rounded.
      if (Math.abs(pair[0] - pair[1]) < printer.figures.step)
        figures[names[k]!] = printer.long((pair[0] + pair[1]) / 2);
      else {
        figures[`${names[k]} at ${names[(k + 3) % 4]}`] = printer.long(pair[0]);
        figures[`${names[k]} at ${names[(k + 1) % 4]}`] = printer.long(pair[1]);
      }
    });
    return mark("station", "", datum, figures);
  });
  // Two arrises that end within a step of each other are one row on paper.
  const told = rows.filter((row, k) => k === 0 || row.figures.at!.text !== rows[k - 1]!.figures.at!.text);
  return [...curveMarks(piece, outline, printer), ...told];
}

function curveMarks({ faces }: Piece, { curves = [] }: Outline, printer: Printer): SheetMark[] {
  const name = (face: string) =>
    face === "top" ? faces[0]!.name : face === "bottom" ? faces[2]!.name : face;
  return curves.map(({ is, face, towards, from, to, rise, radius }) =>
    mark(is, name(face), "D", {
      towards: word(name(towards)),
      from: printer.long(from),
      to: printer.long(to),
      rise: printer.long(rise),
      radius: printer.long(radius),
    }),
  );
}

/** The datum that has no place of its own: the outline runs from it. */
const ownDatum = ({ datums }: Piece): string => (datums.find(({ place }) => !place) ?? datums[0])?.name ?? "";
