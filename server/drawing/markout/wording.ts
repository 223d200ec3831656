/**
 * What the sheets say in words, made from the sheet's own marks: nothing is printed that they do not hold.
 */
import type { Piece } from "../../joinery/pieces/piece.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";

/** How many, and which are mirror images. */
export function quantity({ parts }: Piece): string {
  const drawn = parts.filter(({ mirrored }) => !mirrored).map(({ name }) => name);
  const others = parts.filter(({ mirrored }) => mirrored).map(({ name }) => name);
  if (others.length) {
    return `${parts.length} off: ${drawn.length} as drawn (${drawn.join(", ")}), ${others.length} its mirror image (${others.join(", ")})`;
  }
  return parts.length === 1 ? `1 off: ${drawn[0]}` : `${parts.length} off, alike: ${drawn.join(", ")}`;
}

export const marksOf = ({ marks }: SheetPart, ...kinds: string[]): SheetMark[] =>
  marks.filter(({ kind }) => kinds.includes(kind));

/** The size of the finished stuff, its tenons in its length. */
export function size({ stock }: SheetPart, sign: string, between: string): string {
  const section = stock.diameter ? `Ø ${stock.diameter.text}` : `${stock.thick?.text} × ${stock.wide?.text}`;
  return `${section}, ${stock.long?.text} ${sign} long over all${between}`;
}

/** The blank that the stuff is planed from; nothing where it is not known. */
export function blankLine({ stock }: SheetPart): string {
  const [thick, wide, long] = ["blank thick", "blank wide", "blank long"].map((name) => stock[name]?.text);
  if (thick === undefined) return "";
  const staves = stock.staves ? `${stock.staves.text} staves glued side by side, each ` : "";
  const sawn = stock.sawn ? `, sawn ${stock.sawn.text} thick` : "";
  const kind = stock["blank is"] && !stock.staves ? ` (${stock["blank is"].text})` : "";
  return `Stock: ${staves}${thick} × ${wide} × ${long}${sawn}, grain along its length${kind}.`;
}

/** `D1: squared round where the centre line meets the floor`; of a datum beyond a bend how far off it is, and how the stick turns there. */
export function datumLine(datum: SheetMark): string {
  const { figures } = datum;
  const first = `${told(datum, "name")}: ${told(datum, "where")}`;
  if (!figures.along) return first;
  const towards = (word: string) =>
    Object.keys(figures)
      .filter((name) => name.startsWith(word))
      .map((name) => `${told(datum, name)} to the ${name.slice(word.length)}`);
  const off = towards("to ");
  const turn = towards("turns to ");
  const along = told(datum, "along").replace("-", "");
  const way = told(datum, "along").startsWith("-") ? " below it" : "";
  const turns = turn.length ? `; there the stick's line is ${turn.join(" and ")}` : "";
  return `${first}, ${along} from ${datum.datum} along its line${way}${off.length ? `, ${off.join(", ")}` : ""}${turns}`;
}

/** An arch or a bow in one sentence. */
export const curveLine = (curve: SheetMark): string =>
  `${curve.kind === "arch" ? `The ${curve.face} is arched` : `Bowed to the ${told(curve, "towards")}`}: from ${told(curve, "from")} to ${told(curve, "to")} it rises ${told(curve, "rise")}, radius ${told(curve, "radius")}.`;

/** The ends of a mortise, or those of its near and its far side where they differ. */
function pair(
  mark: SheetMark,
  [a, b]: [string, string],
  [c, d]: [string, string],
  where: [string, string],
): string {
  const one = `${told(mark, a)} – ${told(mark, b)}`;
  return mark.figures[c] ? `${one} ${where[0]}, ${told(mark, c)} – ${told(mark, d)} ${where[1]}` : one;
}

export const mortiseHeadings = ["", "face", "for", "along the stick", "gauged", "deep", "tenon", "notes"];

/** One row of the table of mortises; an exit and a haunch's socket stand with the mortise they belong to. */
export function mortiseRow(sheet: SheetPart, mark: SheetMark): string[] {
  const { kind, face, figures } = mark;
  const many = marksOf(sheet, "datum").length > 1;
  const letter = told(mark, "letter");
  const part = told(mark, "for");
  const gauged = told(mark, "gauged");
  const along = figures.at
    ? told(mark, "at")
    : pair(mark, ["from", "to"], ["from over", "to over"], ["near", "far"]);
  const gauge = figures.in
    ? told(mark, "in")
    : pair(
        mark,
        ["near", "far"],
        ["near on", "far on"],
        [`at ${told(mark, "from")}`, `at ${told(mark, "to")}`],
      );
  return [
    letter,
    face,
    kind === "peg-hole" ? `peg of ${part}` : part,
    `${along}${many ? ` from ${mark.datum}` : ""}`,
    `${gauge} from ${gauged}`,
    told(mark, "deep") || "through",
    figures.diameter ? `Ø ${told(mark, "diameter")}` : `${told(mark, "thick")} × ${told(mark, "wide")}`,
    [...leansOf(mark), ...beside(sheet, mark)].join("; "),
  ];
}

/** What belongs to a mortise: where it comes out, its haunch's socket. */
function beside(sheet: SheetPart, mark: SheetMark): string[] {
  const notes: string[] = [];
  const letter = told(mark, "letter");
  for (const each of marksOf(sheet, "exit", "socket", "sloped-socket")) {
    if (told(each, "letter") !== letter) continue;
    const along = pair(each, ["from", "to"], ["from over", "to over"], ["near", "far"]);
    const gauge = pair(
      each,
      ["near", "far"],
      ["near on", "far on"],
      [`at ${told(each, "from")}`, `at ${told(each, "to")}`],
    );
    if (each.kind === "exit") {
      notes.push(`comes out on the ${each.face} at ${along}, gauged ${gauge}`);
      continue;
    }
    const same =
      gauge ===
      pair(
        mark,
        ["near", "far"],
        ["near on", "far on"],
        [`at ${told(mark, "from")}`, `at ${told(mark, "to")}`],
      );
    const socket = `${along}, ${told(each, "deep")} deep${same ? "" : `, gauged ${gauge}`}`;
    notes.push(each.kind === "socket" ? `haunch ${socket}` : `sloped haunch ${socket}, running out`);
  }
  if (mark.figures.mitred) notes.push("tenons meet: mitre them");
  return notes;
}

/** A notch for a rail that crosses this one: where it is on the faces at either side, and how deep. */
export function notchLine(notch: SheetMark): string {
  const faces = Object.keys(notch.figures).flatMap((name) =>
    name.startsWith("from on ") ? [name.slice("from on ".length)] : [],
  );
  const each = faces.map((face) => {
    const figure = (name: string) => told(notch, `${name} on ${face}`);
    const floor = figure("floor from")
      ? ` (at its floor ${figure("floor from")} – ${figure("floor to")})`
      : "";
    const deep = figure("deep at its end")
      ? `${figure("deep")} deep at the first, ${figure("deep at its end")} at the second`
      : `${figure("deep")} deep`;
    return `on the ${face} ${figure("from")} – ${figure("to")}${floor}, ${deep}`;
  });
  return `Notch in the ${notch.face} for ${told(notch, "for")}: ${each.join("; ")}.`;
}

/** `leans 2.2° (1 in 26) to the top going in`. */
export function leansOf(mark: SheetMark): string[] {
  const verb = mark.kind.endsWith("mortise") ? "leans" : "bored";
  return Object.entries(mark.figures)
    .filter(([name]) => name.startsWith("leans "))
    .map(([name, { text }]) => `${verb} ${text} ${name.slice(6).replace(/^to /, "to the ")} going in`);
}

export const turnedHeadings = ["", "for", "along the axis", "round from front", "deep", "hole", "notes"];

export function turnedRow(sheet: SheetPart, mark: SheetMark): string[] {
  const { figures, kind } = mark;
  const many = marksOf(sheet, "datum").length > 1;
  const along = figures.at ? told(mark, "at") : `${told(mark, "from")} – ${told(mark, "to")}`;
  const off = figures.off
    ? [
        `${told(mark, "off")} off the axis${told(mark, "off to").startsWith("the") ? ", on" : ","} ${told(mark, "off to")}`,
      ]
    : [];
  const turned = ["onward round", "back round"].flatMap((way) =>
    figures[`turns ${way}`]
      ? [`its line turns ${told(mark, `turns ${way}`)} ${way} towards the ${marksOf(sheet, "end")[1]?.face}`]
      : [],
  );
  return [
    told(mark, "letter"),
    kind === "peg-hole" ? `peg of ${told(mark, "for")}` : told(mark, "for"),
    `${along}${many ? ` from ${mark.datum}` : ""}`,
    told(mark, "round"),
    told(mark, "deep") || "through",
    figures.diameter ? `Ø ${told(mark, "diameter")}` : `${told(mark, "thick")} × ${told(mark, "wide")}`,
    [...off, ...turned, ...leansOf(mark), ...(figures.mitred ? ["tenons meet: mitre them"] : [])].join("; "),
  ];
}
