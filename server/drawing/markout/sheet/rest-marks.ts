/**
 * Rebates, grooves and strips for a loose seat, as marks.
 */
import type { CutRest, Ends, Piece } from "../../../joinery/pieces/piece.ts";
import { mark, type Printer, word } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

export const restMarks = ({ rests = [] }: Piece, printer: Printer): SheetMark[] =>
  rests.map((rest) => mark(rest.is, rest.face, rest.datum, figuresOf(rest, printer)));

function figuresOf(rest: CutRest, printer: Printer): Record<string, SheetFigure | undefined> {
  const wide = printer.long(rest.wide);
  if (rest.is === "rebate")
    return {
      edge: word(rest.edge),
      wide,
      deep: printer.long(rest.deep),
      from: rest.along && printer.long(rest.along[0]),
      to: rest.along && printer.long(rest.along[1]),
    };
  const at = printer.long(rest.at);
  if (rest.is === "groove") {
    const inEdge = rest.face === "top" || rest.face === "bottom";
    return { wide, deep: printer.long(rest.deep), at, "measured from": word(inEdge ? "outside" : "top") };
  }
  const [on, far, below] = [rest.on, rest.far, rest.below].map((ends) => both(ends, printer)) as Printed[];
  return {
    wide,
    thick: printer.long(rest.thick),
    at,
    long: printer.long(rest.long, "up"),
    from: on![0],
    to: on![1],
    ...(same(on!, far!) ? {} : { "from at its far side": far![0], "to at its far side": far![1] }),
    ...(same(on!, below!) ? {} : { "from below": below![0], "to below": below![1] }),
    butts: rest.butts && word(rest.butts.join(" and ")),
  };
}

type Printed = [SheetFigure, SheetFigure];

const both = ([from, to]: Ends, printer: Printer): Printed => [printer.long(from), printer.long(to)];
const same = (a: Printed, b: Printed): boolean => a.every(({ text }, k) => text === b[k as 0].text);
