import type { BowForm } from "../../../joinery/pieces/piece.ts";
import { mark, type Printer, word } from "./printer.ts";
import type { SheetMark } from "./sheet.ts";

/** A bow: the form that it is bent to, by places of its centre line; its section at the ends; its feet; its bores along that line. */
export const bowMarks = (form: BowForm, printer: Printer): SheetMark[] => [
  mark("bend", "", "left end", {
    along: printer.long(form.along),
    between: printer.long(form.between),
    radius: printer.long(form.radius, "down"),
    "thick at the ends": form.ends && printer.long(form.ends.thick),
    "wide at the ends": form.ends && printer.long(form.ends.wide),
  }),
  ...form.spots.map(({ along, across, rise }) =>
    mark("form", "", "left end", {
      along: printer.long(along),
      across: printer.long(across),
      rise: printer.long(rise),
    }),
  ),
  ...form.feet.map((foot) =>
    mark("foot", foot.end, "", {
      enters: word(foot.enters),
      ...(foot.round
        ? { diameter: printer.long(foot.thick) }
        : { thick: printer.long(foot.thick), wide: printer.long(foot.wide) }),
      "at its end": foot.cone && printer.long(foot.cone.tip),
      long: printer.long(foot.long),
      "along it": printer.long(foot.run),
      lean: printer.angle(foot.lean),
    }),
  ),
  ...form.bores.map((bore) =>
    mark(bore.deep === undefined ? "through-bow-bore" : "bow-bore", bore.face, "left end", {
      letter: word(bore.letter),
      for: word(bore.for),
      along: printer.long(bore.along),
      diameter: printer.long(bore.diameter),
      "leans to": word(bore.lean.along < 0 ? "left end" : "right end"),
      "leans along": printer.angle(Math.abs(bore.lean.along)),
      "leans over": word(bore.towards),
      "leans across": printer.angle(bore.lean.across),
      deep: bore.deep === undefined ? undefined : printer.long(bore.deep, "up"),
    }),
  ),
];
