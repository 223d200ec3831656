import type { Piece } from "../../../joinery/pieces/piece.ts";
import { mark, type Printer } from "./printer.ts";
import type { SheetMark } from "./sheet.ts";

/** The corners of a part in plan, in order round it, from the left and from the front of the box about it. */
export function planMarks({ ring, seen }: NonNullable<Piece["plan"]>, printer: Printer): SheetMark[] {
  return ring.map(([x, y]) =>
    mark("corner", seen, "lower left", { right: printer.long(x), up: printer.long(y) }),
  );
}
