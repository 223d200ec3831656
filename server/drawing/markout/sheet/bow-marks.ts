import type { BowForm } from "../../../joinery/pieces/piece.ts";
import { LEAN } from "./mortise-marks.ts";
import { mark, type Printer, word } from "./printer.ts";
import type { SheetMark } from "./sheet.ts";

/** A bow: the form that it is bent to, by places of its centre line; its section at the ends; its feet; its bores along that line. */
export const bowMarks = (form: BowForm, printer: Printer): SheetMark[] => [
  mark("bend", "", "left end", {
    along: printer.long(form.along),
    between: printer.long(form.between),
    ...leans("ends lean to", form.lean, ["outside", "inside"], printer),
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
      // The end is longer on the side that the seat's square leans away from.
      ...leans("longer to", foot.lean.outward, ["inside", "outside"], printer),
      ...leans("longer to", foot.lean.back, ["front", "back"], printer),
    }),
  ),
  ...form.bores.map((bore) =>
    mark(bore.deep === undefined ? "through-bow-bore" : "bow-bore", bore.face, "left end", {
      letter: word(bore.letter),
      for: word(bore.for),
      along: printer.long(bore.along),
      diameter: printer.long(bore.diameter),
      beside: word(bore.round !== undefined && bore.round < 0 ? opposite(bore.towards) : bore.towards),
      in: bore.gauge === undefined ? undefined : printer.long(bore.gauge),
      round: bore.round === undefined ? undefined : printer.angle(Math.abs(bore.round)),
      ...leans("leans to", bore.lean.along, ["right end", "left end"], printer),
      ...leans("leans to", bore.lean.across, [bore.towards, opposite(bore.towards)], printer),
      deep: bore.deep === undefined ? undefined : printer.long(bore.deep, "up"),
    }),
  ),
];

const leans = (before: string, by: number, [one, other]: [string, string], printer: Printer) =>
  Math.abs(by) < LEAN ? {} : { [`${before} ${by > 0 ? one : other}`]: printer.lean(by) };

const opposite = (face: string): string => ({ top: "bottom", back: "front" })[face] ?? "inside";
