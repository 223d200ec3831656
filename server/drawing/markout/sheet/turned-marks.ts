import type { Turned } from "../../../joinery/pieces/piece.ts";
import { mark, type Printer } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

/** A station for each diameter, along the axis; and where a bent one's axis lies off the line of its own datum. */
export function turnedMarks({ stations, axis = [], faces }: Turned, printer: Printer): SheetMark[] {
  const sizes = stations.map(({ at, diameter }) =>
    mark("station", "", "", { at: printer.long(at), diameter: printer.long(diameter) }),
  );
  const bent = axis.map(({ at, off }) => {
    const figures: Record<string, SheetFigure> = { at: printer.long(at) };
    for (const k of [0, 1] as const)
      if (!printer.isNone(off[k]))
        figures[`to ${faces[off[k] > 0 ? k : k + 2]}`] = printer.long(Math.abs(off[k]));
    return mark("axis", "", "", figures);
  });
  return [...sizes, ...bent];
}
