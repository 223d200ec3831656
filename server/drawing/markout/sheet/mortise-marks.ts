/**
 * Mortises and holes as marks.
 */
import type { Ends, Mortise, Piece } from "../../../joinery/pieces/piece.ts";
import { mortiseSteps } from "../figures.ts";
import { round } from "./end-marks.ts";
import { mark, type Printer, word } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

/** A mortise that leans by less than this is chopped square, radians: a tenth of a degree. */
export const LEAN = 0.1 * (Math.PI / 180);

export const mortiseMarks = (piece: Piece, printer: Printer): SheetMark[] =>
  piece.mortises.flatMap((mortise) => (piece.turned ? roundMarks : squaredMarks)(piece, mortise, printer));

const kindOf = ({ is, deep }: Mortise): string => {
  if (is === "peg") return "peg-hole";
  return deep === undefined ? `through-${is}` : is;
};

function squaredMarks(piece: Piece, mortise: Mortise, printer: Printer): SheetMark[] {
  const { letter, face, datum, gaugedFrom, tenon, diameter, exit, haunch, deep } = mortise;
  const bored = mortise.is !== "mortise";
  const { figures } = printer;
  const common = { letter: word(letter), for: word(mortise.for), gauged: word(gaugedFrom) };
  const marks = [
    mark(kindOf(mortise), face, datum, {
      ...common,
      ...(bored ? middleOf(mortise, printer) : corners(mortise, mortise, printer)),
      deep: deep === undefined ? undefined : printer.long(deep, "up"),
      diameter: diameter === undefined ? undefined : printer.long(diameter),
      thick: bored ? undefined : printer.steps(figures.steps(tenon.thick)),
      wide: bored ? undefined : printer.steps(figures.steps(tenon.wide)),
      ...leansOf(piece, mortise, printer),
      mitred: mortise.mitred ? word("tenons meet") : undefined,
    }),
  ];
  if (haunch)
    marks.push(
      mark(haunch.sloped ? "sloped-socket" : "socket", face, datum, {
        ...common,
        ...corners(haunch, { ...mortise, tenon: { thick: 0, wide: 0 } }, printer),
        deep: printer.long(haunch.deep, "up"),
        ...leansOf(piece, mortise, printer),
      }),
    );
  if (exit) marks.push(mark("exit", exit.face, datum, { ...common, ...corners(exit, mortise, printer) }));
  return marks;
}

type FourEnds = Record<"from" | "to" | "near" | "far", Ends>;

/** `from` and `to` along the stick on its near side, `near` and `far` gauged at its start; `… over` on its far side, `… on` at its end. */
function corners(at: FourEnds, mortise: Mortise, printer: Printer): Record<string, SheetFigure> {
  const { from, to, near, far } = mortiseSteps(printer.figures, { ...mortise, ...pick(at) });
  const found: Record<string, SheetFigure> = {
    from: printer.steps(from[0]),
    to: printer.steps(to[0]),
    near: printer.steps(near[0]),
    far: printer.steps(far[0]),
  };
  if (from[1] !== from[0] || to[1] !== to[0])
    Object.assign(found, { "from over": printer.steps(from[1]), "to over": printer.steps(to[1]) });
  if (near[1] !== near[0] || far[1] !== far[0])
    Object.assign(found, { "near on": printer.steps(near[1]), "far on": printer.steps(far[1]) });
  return found;
}

const pick = ({ from, to, near, far }: FourEnds): FourEnds => ({ from, to, near, far });

const middleOf = ({ from, near }: Mortise, printer: Printer): Record<string, SheetFigure> => ({
  at: printer.long(from[0]),
  in: printer.long(near[0]),
});

/** What it leans going in, and to which end or face. */
function leansOf(piece: Piece, mortise: Mortise, printer: Printer): Record<string, SheetFigure> {
  const { along, across } = mortise.lean;
  const found: Record<string, SheetFigure> = {};
  if (Math.abs(along) > LEAN) found[`leans to ${piece.ends[along > 0 ? 1 : 0]!.name}`] = printer.lean(along);
  if (Math.abs(across) > LEAN) found[`leans ${sideways(piece, mortise, across)}`] = printer.lean(across);
  return found;
}

function sideways(piece: Piece, { gaugedFrom }: Mortise, across: number): string {
  if (piece.turned) return across > 0 ? "onward round" : "back round";
  const gauge = piece.faces.findIndex(({ name }) => name === gaugedFrom);
  return `to ${across > 0 ? piece.faces[(gauge + 2) % 4]!.name : gaugedFrom}`;
}

function roundMarks(piece: Piece, mortise: Mortise, printer: Printer): SheetMark[] {
  const { letter, is, datum, from, to, near, diameter, deep, tenon, turn = 0 } = mortise;
  const common = { letter: word(letter), for: word(mortise.for), round: round(mortise.round ?? 0) };
  const mortised = is === "mortise";
  const steps = mortiseSteps(printer.figures, mortise);
  const off = near[0];
  const offs = printer.isNone(off) ? undefined : printer.long(Math.abs(off));
  return [
    mark(kindOf(mortise), "", datum, {
      ...common,
      ...(mortised
        ? { from: printer.steps(steps.from[0]), to: printer.steps(Math.max(...steps.to)) }
        : { at: printer.long((from[0] + to[0]) / 2) }),
      off: offs,
      "off to":
        offs && word(is === "peg" ? `the side of ${mortise.for}` : off > 0 ? "onward round" : "back round"),
      ...(Math.abs(turn) > LEAN && { [`turns ${turn > 0 ? "onward" : "back"} round`]: printer.lean(turn) }),
      deep: deep === undefined ? undefined : printer.long(deep, "up"),
      diameter: diameter === undefined ? undefined : printer.long(diameter),
      thick: mortised ? printer.long(tenon.thick) : undefined,
      wide: mortised ? printer.long(tenon.wide) : undefined,
      ...leansOf(piece, mortise, printer),
      mitred: mortise.mitred ? word("tenons meet") : undefined,
    }),
  ];
}
