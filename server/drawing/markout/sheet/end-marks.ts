/**
 * The ends of a stick as marks: the lines round it, and the tenon with what belongs to it.
 */
import type { EndKind } from "../../../design/joint-facts.ts";
import type { CutEnd, CutTenon, Piece } from "../../../joinery/pieces/piece.ts";
import { type Figures, shoulderSteps, tenonSteps } from "../figures.ts";
import { count, LEAST, mark, type Printer, word } from "./printer.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

export function endMarks(piece: Piece, printer: Printer): SheetMark[] {
  return piece.ends.flatMap((end, which) => [
    mark("end", end.name, end.datum, {
      is: word(which === 0 ? "first" : "last"),
      enters: end.enters === undefined ? undefined : word(end.enters),
      slant: end.slant && printer.angle(end.slant.angle),
      "longest at": end.slant && round(end.slant.round),
      "runs on": end.hollowed && printer.long(end.hollowed.past),
      "hollowed over": end.hollowed && printer.long(end.hollowed.over),
    }),
    ...lineMarks(end, printer),
    ...(end.tenon ? tenonMarks(piece, end, end.tenon, printer) : []),
  ]);
}

/** Degrees round from the front, whole turns away. */
export function round(radians: number): SheetFigure {
  const value = Number((((radians * 180) / Math.PI + 360) % 360).toFixed(1)) % 360;
  return { value, text: `${value}°` };
}

/** The line on each face: where it crosses the arris that the bevel's stock lies on, and the other one. */
function lineMarks(end: CutEnd, printer: Printer): SheetMark[] {
  return end.bevels.map(({ face, from: stock, angle }, k) => {
    const next = end.bevels[(k + 1) % 4]!.face === stock;
    const [near, far] = [end.cuts[next ? k : (k + 3) % 4]!, end.cuts[next ? (k + 3) % 4 : k]!];
    const square = Math.abs(Math.PI / 2 - angle) < LEAST;
    return mark("line", face, end.datum, {
      end: word(end.name),
      stock: word(stock),
      at: printer.long(near.at),
      across: printer.long(far.at),
      bevel: square ? { value: 90, text: "square" } : printer.angle(angle),
      ...(square ? {} : { slope: { ...printer.lean(Math.PI / 2 - angle), text: slopeOf(printer, angle) } }),
    });
  });
}

const slopeOf = (printer: Printer, angle: number): string =>
  printer.lean(Math.PI / 2 - angle).text.replace(/^.*\((.*)\)$/, "$1");

const SHOULDER = "shoulder";

/** What a tenon of each kind of joint is called among the marks. */
export const TENON_MARKS = {
  rectangular: "tenon",
  twin: "tenon",
  round: "round-tenon",
  "loose-tenon": "loose-tenon",
  dowels: "dowels",
  fork: "fork",
} as const satisfies Record<EndKind, string>;

export type TenonMark = (typeof TENON_MARKS)[EndKind];

function tenonMarks(piece: Piece, end: CutEnd, tenon: CutTenon, printer: Printer): SheetMark[] {
  const { figures } = printer;
  const steps = tenonSteps(figures, tenon);
  const several = tenon.count > 1 && tenon.kind !== "fork";
  const marks = [
    mark(TENON_MARKS[tenon.kind], end.name, SHOULDER, {
      thick: printer.steps(steps.thick),
      wide: tenon.kind === "round" ? undefined : printer.steps(steps.wide),
      "at its end": tenon.cone && printer.long(tenon.cone.tip),
      long: printer.steps(figures.steps(tenon.deep, "down")),
      "along it":
        tenon.run - tenon.long > figures.step
          ? printer.long((tenon.run * tenon.deep) / tenon.long, "down")
          : undefined,
      bore:
        tenon.kind === "dowels" || tenon.kind === "loose-tenon"
          ? printer.long(boreOf(tenon), "up")
          : undefined,
      cheeks: word(tenon.cheeks[0]),
      edges: word(tenon.edges[0]),
      ...shoulders(piece, tenon, figures, printer),
      turn: tenon.turn ? printer.lean(tenon.turn) : undefined,
      "turned to": tenon.turn ? word(tenon.turn > 0 ? tenon.edges[0] : tenon.edges[1]) : undefined,
      ...leans(tenon, printer),
      square: tenon.square ? word("to the shoulder") : undefined,
      count: several ? count(tenon.count) : undefined,
      ...(several
        ? Object.fromEntries(tenon.middles.map((mm, k) => [`middle ${k + 1}`, printer.long(mm)]))
        : {}),
      fit: tenon.fit ? printer.fine(Math.abs(tenon.fit)) : undefined,
      "fit is": tenon.fit ? word(tenon.fit > 0 ? "looser" : "tighter") : undefined,
      glue: tenon.glue === undefined ? undefined : word(tenon.glue),
      through: tenon.through ? word("right through") : undefined,
    }),
  ];
  const { haunch, peg, wedges } = tenon;
  if (haunch)
    marks.push(
      mark(haunch.sloped ? "sloped-haunch" : "haunch", end.name, SHOULDER, {
        at: word(tenon.edges[0]),
        wide: printer.long(haunch.wide),
        long: printer.long(haunch.long, "down"),
      }),
    );
  for (const { cheek, at, angle } of tenon.mitres)
    marks.push(
      mark("mitre", end.name, SHOULDER, {
        cheek: word(tenon.cheeks[cheek]),
        [`at ${tenon.edges[0]}`]: printer.long(at[0], "down"),
        [`at ${tenon.edges[1]}`]: printer.long(at[1], "down"),
        angle: printer.angle(angle),
      }),
    );
  if (wedges)
    marks.push(
      mark("wedges", end.name, "end of the tenon", {
        count: count(wedges.count),
        in: printer.long(wedges.in),
        cut: printer.long(wedges.deep),
        thick: printer.long(wedges.thick),
        wide: printer.steps(steps.thick),
        long: printer.long(wedges.long),
        set: wedges.across && word("across the seat's grain"),
      }),
    );
  if (peg)
    marks.push(
      mark("peg", end.name, SHOULDER, {
        count: count(peg.count),
        diameter: printer.long(peg.diameter),
        setback: printer.long(peg.setback),
        draw: peg.draw ? printer.long(peg.draw) : undefined,
      }),
    );
  return marks;
}

/** How deep a dowel's hole is bored along itself: a slanting end has its near side up in the hole. */
const boreOf = ({ run, long, thick }: CutTenon): number =>
  run + (thick / 2) * Math.tan(Math.acos(Math.min(1, long / run)));

/** From each face to the tenon; with the tenon they come to the stuff's own thickness and width as it is printed. */
function shoulders(
  piece: Piece,
  tenon: CutTenon,
  figures: Figures,
  printer: Printer,
): Record<string, SheetFigure> {
  const { cheeks, edges } = tenon;
  if (tenon.kind === "round" && isCentral(tenon, figures)) return {};
  const steps = tenonSteps(figures, tenon);
  const over = tenon.middles.length > 1 ? figures.steps(widthOver(tenon)) : steps.wide;
  const stuff = stuffOf(piece, tenon);
  const pair = (one: number, other: number, size: number, whole: number): [number, number] =>
    Math.abs(one + other + size * figures.step - whole) < figures.step
      ? shoulderSteps(figures, size, [one, other], whole)
      : [figures.steps(one), figures.steps(other)];
  const [a, b] = pair(tenon.shoulders[0], tenon.shoulders[1], steps.thick, stuff[0]);
  const [c, d] = pair(tenon.shoulders[2], tenon.shoulders[3], over, stuff[1]);
  const named = [cheeks[0], cheeks[1], edges[0], edges[1]];
  return Object.fromEntries([a, b, c, d].map((size, k) => [named[k]!, printer.steps(size)]));
}

const isCentral = ({ shoulders: [a, b, c, d] }: CutTenon, figures: Figures): boolean =>
  [b, c, d].every((each) => Math.abs(each - a) < figures.step);

const widthOver = ({ middles, wide }: CutTenon): number => middles[middles.length - 1]! - middles[0]! + wide;

/** The stuff's size across the tenon's thickness and its width; none where it is not known to be plain. */
function stuffOf({ is, faces, size, turned }: Piece, { cheeks, turn }: CutTenon): [number, number] {
  if (is === "post" || turn || turned) return [0, 0];
  return cheeks[0] === faces[1]?.name || cheeks[0] === faces[3]?.name
    ? [size.thick, size.wide]
    : [size.wide, size.thick];
}

function leans({ lean, cheeks, edges }: CutTenon, printer: Printer): Record<string, SheetFigure> {
  const found: Record<string, SheetFigure> = {};
  for (const [k, names] of [cheeks, edges].entries()) {
    const angle = lean[k as 0];
    if (Math.abs(angle) > LEAST) found[`leans to ${names[angle > 0 ? 0 : 1]}`] = printer.lean(angle);
  }
  return found;
}
