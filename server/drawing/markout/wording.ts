/**
 * What the sheets say in words.
 */
import { printAngle, printSlope } from "../../design/units.ts";
import type { CutEnd, CutTenon, Mortise, Piece } from "../../joinery/pieces/piece.ts";
import { type Figures, mortiseSteps, shoulderSteps, tenonSteps } from "./figures.ts";

/** Leans smaller than this are none, radians: a twentieth of a degree. */
const LEAST = 0.05 * (Math.PI / 180);
/** A mortise that strays by less than this on its way in is chopped square, mm. */
const STRAY = 0.15;

/** How many, and which are mirror images. */
export function quantity({ parts }: Piece): string {
  const drawn = parts.filter(({ mirrored }) => !mirrored).map(({ name }) => name);
  const others = parts.filter(({ mirrored }) => mirrored).map(({ name }) => name);
  if (others.length) {
    return `${parts.length} off: ${drawn.length} as drawn (${drawn.join(", ")}), ${others.length} its mirror image (${others.join(", ")})`;
  }
  return parts.length === 1 ? `1 off: ${drawn[0]}` : `${parts.length} off, alike: ${drawn.join(", ")}`;
}

export function size(piece: Piece, figures: Figures): string {
  const { long, wide, thick, round } = piece.size;
  const section = round ? `Ø ${figures.print(round)}` : `${figures.print(thick)} × ${figures.print(wide)}`;
  const between =
    piece.between === undefined
      ? ""
      : `, ${figures.print(piece.between)} ${shouldered(piece)}on the ${arrisOf(piece)}`;
  return `${section}, ${figures.print(long, "up")} ${figures.sign} long over all${between}`;
}

const shouldered = ({ ends }: Piece): string =>
  ends.every(({ enters }) => enters) ? "between the shoulders " : "";

const arrisOf = ({ faces }: Piece): string => (faces.length ? `${faces[0]!.name} outside arris` : "axis");

/** `2.2° (1 in 26)`. */
export const lean = (angle: number): string => `${printAngle(Math.abs(angle))} (${rise(angle)})`;

/** A lean as a rise in a run: `1 in 26`. */
export const rise = (angle: number): string => printSlope(angle).replace(" : ", " in ");

/** A bevel with what it leans from square: `86.0°`, `1 in 14.3`; or square. */
export function bevel(angle: number): [string, string] {
  const off = Math.PI / 2 - angle;
  return Math.abs(off) < LEAST ? ["square", ""] : [printAngle(angle), rise(off)];
}

/** `9–17`, or both ends where it runs out: `13.7–19.7, 14.1–20.1`. */
const stretch = (figures: Figures, [a, b]: readonly number[], [c, d]: readonly number[]): string => {
  const one = `${figures.text(a!)} – ${figures.text(c!)}`;
  const other = `${figures.text(b!)} – ${figures.text(d!)}`;
  return one === other ? one : `${one}; ${other}`;
};

export const mortiseHeadings = ["", "face", "for", "along the stick", "gauged", "deep", "tenon", "notes"];

/** One row of the table of mortises. */
export function mortiseRow(piece: Piece, mortise: Mortise, figures: Figures): string[] {
  const steps = mortiseSteps(figures, mortise);
  const { letter, face, for: part, datum, gaugedFrom, tenon, diameter } = mortise;
  const bored = mortise.is !== "mortise";
  const from = piece.datums.length > 1 ? ` from ${datum}` : "";
  const along = bored ? figures.text(steps.from[0]) : stretch(figures, steps.from, steps.to);
  const gauge = bored ? figures.text(steps.near[0]) : stretch(figures, steps.near, steps.far);
  const section = diameter
    ? `Ø ${figures.print(diameter)}`
    : `${figures.print(tenon.thick)} × ${figures.print(tenon.wide)}`;
  return [
    letter,
    face,
    mortise.is === "peg" ? `peg of ${part}` : part,
    `${along}${from}`,
    `${gauge} from ${gaugedFrom}`,
    steps.deep === undefined ? (mortise.is === "peg" ? "" : "through") : figures.text(steps.deep),
    section,
    notesOf(piece, mortise, figures).join("; "),
  ];
}

export const turnedHeadings = ["", "for", "along the axis", "round from front", "deep", "hole", "notes"];

export function turnedRow(piece: Piece, mortise: Mortise, figures: Figures): string[] {
  const steps = mortiseSteps(figures, mortise);
  const from = piece.datums.length > 1 ? ` from ${mortise.datum}` : "";
  const hole = mortise.is !== "mortise";
  const peg = mortise.is === "peg";
  const along = hole ? figures.text(steps.from[0]) : stretch(figures, steps.from, steps.to);
  const round = (((mortise.round ?? 0) * 180) / Math.PI + 360) % 360;
  return [
    mortise.letter,
    peg ? `peg of ${mortise.for}` : mortise.for,
    `${along}${from}`,
    `${Number(round.toFixed(1)) % 360}°`,
    steps.deep === undefined ? (peg ? "" : "through") : figures.text(steps.deep),
    hole
      ? `Ø ${figures.print(mortise.diameter!)}`
      : `${figures.print(mortise.tenon.thick)} × ${figures.print(mortise.tenon.wide)}`,
    peg
      ? `${figures.text(steps.near[0])} off the axis, on the side of ${mortise.for}`
      : notesOf(piece, mortise, figures).join("; "),
  ];
}

function notesOf(piece: Piece, mortise: Mortise, figures: Figures): string[] {
  const notes: string[] = [];
  const { along, across } = mortise.lean;
  const verb = mortise.is === "mortise" ? "leans" : "bored";
  const strays = (angle: number) => Math.abs(Math.tan(angle)) * (mortise.deep ?? 40) > STRAY;
  if (strays(along))
    notes.push(`${verb} ${lean(along)} to the ${endNamed(piece, along > 0 ? 1 : 0)} going in`);
  if (strays(across)) {
    const side = mortise.gaugedFrom;
    const way = !side
      ? across > 0
        ? "onward round"
        : "back round"
      : across > 0
        ? `away from ${side}`
        : `to ${side}`;
    notes.push(`${verb} ${lean(across)} ${way} going in`);
  }
  const { haunch } = mortise;
  if (haunch) {
    const socket = `${figures.print(haunch.from)} – ${figures.print(haunch.to)}, ${figures.print(haunch.deep, "up")} deep`;
    notes.push(haunch.sloped ? `sloped haunch ${socket}, running out` : `haunch ${socket}`);
  }
  if (mortise.mitred) notes.push("tenons meet: mitre them");
  return notes;
}

/** The name of an end of the piece, with the word when it is not plain. */
export function endNamed({ is, ends }: Piece, which: 0 | 1): string {
  const name = ends[which]!.name;
  return is === "post" ? name : `${name} end`;
}

/** What is to be known of the tenon at an end. */
export function tenonLines(piece: Piece, end: CutEnd, figures: Figures): string[] {
  const { tenon } = end;
  if (!tenon) return [];
  const steps = tenonSteps(figures, tenon);
  const aslant = Math.abs(tenon.run - tenon.long) > figures.step;
  const along = aslant ? ` square to the face it enters (${figures.print(tenon.run, "down")} along it)` : "";
  const line = tenon.lean > LEAST ? `, ${lean(tenon.lean)} out of the stick's own line` : "";
  const long =
    tenon.kind === "fork" || tenon.kind === "dowels" ? "" : `, ${figures.text(steps.long)} long${along}`;
  const lines = [`${tenonNamed(piece, tenon, figures)}${long}${line}.`];
  if (tenon.kind === "tenon") lines.push(shoulderLine(piece, tenon, figures));
  const more = [
    tenon.haunch
      ? `Haunch ${figures.print(tenon.haunch.wide)} wide, ${figures.print(tenon.haunch.long, "down")} long${tenon.haunch.sloped ? ", sloped to nothing" : ""}.`
      : "",
    tenon.mitred ? "Mitre its end where it meets the other tenon." : "",
    tenon.through ? (tenon.wedged ? "Right through, wedged." : "Right through.") : "",
    tenon.peg ? pegLine(tenon.peg, figures) : "",
    tenon.fit
      ? `Make it ${figures.unit === "in" ? `${(Math.abs(tenon.fit) / 25.4).toFixed(3)} in` : `${Math.abs(tenon.fit)} mm`} ${tenon.fit > 0 ? "looser" : "tighter"} than the figures.`
      : "",
  ];
  return [...lines, more.filter(Boolean).join(" ")].filter(Boolean);
}

/** What is cut at an end: one tenon, twins, dowels or a fork, with its sizes. */
function tenonNamed(piece: Piece, tenon: CutTenon, figures: Figures): string {
  const { thick, wide, long } = tenonSteps(figures, tenon);
  const name = piece.faces[0]?.name ?? "top";
  const edge = piece.is === "post" || name.endsWith("edge") ? name : `${name} edge`;
  const middles = tenon.middles.map((mm) => figures.print(mm)).join(", ");
  switch (tenon.kind) {
    case "round":
      return `Tenon Ø ${figures.text(thick)}`;
    case "dowels":
      return `${tenon.count} dowels Ø ${figures.text(thick)}, ${figures.text(long)} into either part, their middles ${middles} from the ${edge} and ${figures.print(tenon.shoulders.outside + tenon.thick / 2)} from the outside`;
    case "fork":
      return `Fork: slot ${figures.text(thick)} wide and ${figures.text(long)} deep, ${figures.print(tenon.shoulders.outside)} from the outside`;
    default:
      return tenon.count > 1
        ? `${tenon.count} tenons, each ${figures.text(thick)} thick × ${figures.text(wide)} wide, their middles ${middles} from the ${edge}`
        : `Tenon ${figures.text(thick)} thick × ${figures.text(wide)} wide`;
  }
}

function shoulderLine(piece: Piece, tenon: CutTenon, figures: Figures): string {
  const { outside, inside, top, bottom } = tenon.shoulders;
  const { thick, wide } = tenonSteps(figures, tenon);
  const stuff = piece.is === "post" ? undefined : piece.size;
  const [one, other] =
    stuff && Math.abs(outside + inside + tenon.thick - stuff.thick) < figures.step
      ? shoulderSteps(figures, thick, [outside, inside], stuff.thick)
      : [figures.steps(outside), figures.steps(inside)];
  const [up, down] =
    stuff && tenon.count === 1 && Math.abs(top + bottom + tenon.wide - stuff.wide) < figures.step
      ? shoulderSteps(figures, wide, [top, bottom], stuff.wide)
      : [figures.steps(top), figures.steps(bottom)];
  if (piece.is === "post") {
    const across =
      one === other ? `${figures.text(one)} each side` : `${figures.text(one)} and ${figures.text(other)}`;
    const along =
      up === down
        ? `${figures.text(up)} each side`
        : `${figures.text(up)} away from the middle, ${figures.text(down)} towards it`;
    return `Shoulders: across what it enters ${across}, along it ${along}.`;
  }
  const edge = piece.faces[0]?.name ?? "top";
  const opposite = piece.faces[2]?.name ?? "bottom";
  return `Shoulders: outside ${figures.text(one)}, inside ${figures.text(other)}, ${edge} ${figures.text(up)}, ${opposite} ${figures.text(down)}.`;
}

function pegLine(peg: NonNullable<CutTenon["peg"]>, figures: Figures): string {
  const count = peg.count > 1 ? `${peg.count} pegs` : "Peg";
  const back = figures.print(peg.setback);
  const draw = peg.draw ? `; bore the tenon ${figures.print(peg.draw)} nearer the shoulder` : "";
  return `${count} Ø ${figures.print(peg.diameter)}, ${back} from the shoulder in the mortise${draw}.`;
}
