import type { SeatBore } from "../../../joinery/pieces/piece.ts";
import { mark, type Printer, word } from "./printer.ts";
import type { SheetMark } from "./sheet.ts";

/** The sockets of a solid seat, each with what a maker sets: place, sight line, lean and bevel, bit and reamer, depth. */
export const boreMarks = (bores: readonly SeatBore[], printer: Printer): SheetMark[] =>
  bores.map((bore) =>
    mark(bore.deep === undefined ? "through-bore" : "bore", bore.face, "middle line and front edge", {
      letter: word(bore.letter),
      for: word(bore.for),
      out: printer.long(bore.out),
      side: word(bore.side),
      behind: printer.long(bore.behind),
      "sight line": printer.angle(bore.sightLine),
      towards: word(bore.towards),
      lean: printer.angle(bore.lean),
      // A hoop or a long leg shows a tenth of a degree: the bevel is set by its rise there.
      "rise in 200": printer.figures.unit === "in" ? undefined : printer.long(200 * Math.tan(bore.lean)),
      bevel: printer.angle(Math.PI / 2 - bore.lean),
      diameter: printer.long(bore.diameter),
      "at its end": bore.cone && printer.long(bore.cone.tip),
      "tapers over": bore.cone && printer.long(bore.cone.over),
      cone: bore.cone && printer.angle(2 * Math.atan((bore.diameter - bore.cone.tip) / 2 / bore.cone.over)),
      deep: bore.deep === undefined ? undefined : printer.long(bore.deep, "up"),
    }),
  );
