/**
 * The tenon at an end in words.
 */
import { TENON_MARKS, type TenonMark } from "./sheet/end-marks.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { marksOf } from "./wording.ts";

const KINDS = new Set<string>(Object.values(TENON_MARKS));

/** What is to be known of the tenon at an end, each thing a sentence. */
export function tenonLines(sheet: SheetPart, end: string): string[] {
  const of = (...kinds: string[]) => marksOf(sheet, ...kinds).filter(({ face }) => face === end);
  const tenon = sheet.marks.find(({ kind, face }) => face === end && KINDS.has(kind));
  if (!tenon) return [];
  const more = [
    ...of("haunch", "sloped-haunch").map(
      (haunch) =>
        `Haunch at the ${told(haunch, "at")}: ${told(haunch, "wide")} wide, ${told(haunch, "long")} long${haunch.kind === "haunch" ? "" : ", sloped to nothing"}.`,
    ),
    ...of("mitre").map(mitreLine),
    tenon.figures.through && of("wedges").length === 0 ? "Right through." : "",
    ...of("wedges").map(wedgeLine),
    ...of("peg").map(pegLine),
    tenon.figures.fit
      ? `Make the tenon ${told(tenon, "fit")} ${told(tenon, "fit is")} in its mortise than the figures.`
      : "",
    tenon.figures.glue ? `Glue: ${told(tenon, "glue")}.` : "",
  ];
  return [`${named(tenon)}${long(tenon)}${leaning(tenon)}.`, shoulderLine(tenon), ...more].filter(Boolean);
}

/** One tenon, twins, dowels or a fork, with its sizes. */
function named(tenon: SheetMark): string {
  const { figures } = tenon;
  const kind = tenon.kind as TenonMark;
  const [thick, wide, edge] = ["thick", "wide", "edges"].map((name) => told(tenon, name));
  const middles = Object.keys(figures)
    .filter((name) => name.startsWith("middle "))
    .map((name) => told(tenon, name))
    .join(", ");
  switch (kind) {
    case "round-tenon":
      return figures["at its end"]
        ? `Tenon Ø ${thick} at the shoulder, tapering to Ø ${told(tenon, "at its end")} at its end`
        : `Tenon Ø ${thick}`;
    case "dowels":
      return `${told(tenon, "count") || "1"} dowels Ø ${thick}, bored ${told(tenon, "bore")} deep in this end${middles ? `, their middles ${middles} from the ${edge}` : ""}`;
    case "loose-tenon": {
      const tongue = `${thick} thick × ${wide} wide`;
      const mortise = `mortised ${told(tenon, "bore")} deep into this end as into what it enters`;
      return figures.count
        ? `${told(tenon, "count")} loose tenons, each ${tongue}, ${mortise}, their middles ${middles} from the ${edge}`
        : `Loose tenon ${tongue}, ${mortise}`;
    }
    case "fork":
      return `Fork: slot ${thick} wide and ${told(tenon, "long")} deep`;
    case "tenon":
      return figures.count
        ? `${told(tenon, "count")} tenons, each ${thick} thick × ${wide} wide, their middles ${middles} from the ${edge}`
        : `Tenon ${thick} thick × ${wide} wide`;
    default:
      return kind satisfies never;
  }
}

function long(tenon: SheetMark): string {
  if (["fork", "dowels", "loose-tenon"].includes(tenon.kind)) return "";
  const along = tenon.figures["along it"]
    ? ` square to the shoulder (${told(tenon, "along it")} along it)`
    : "";
  return `, ${told(tenon, "long")} long${along}`;
}

/** Its leans out of the stick's own line, and how it stands turned about it. */
function leaning({ figures }: SheetMark): string {
  const leans = Object.entries(figures)
    .filter(([name]) => name.startsWith("leans to "))
    .map(([name, { text }]) => `${text} to the ${name.slice(9)}`);
  const lean = leans.length
    ? `, leaning ${leans.join(" and ")}${figures.square ? ", square to the shoulder" : ""}`
    : "";
  const turn = figures.turn
    ? `, turned ${figures.turn.text} about the stick: its ${figures.cheeks?.text} cheek towards the ${figures["turned to"]?.text}`
    : "";
  return `${lean}${turn}`;
}

/** From each face to the tenon. */
function shoulderLine({ kind, figures }: SheetMark): string {
  const names = Object.keys(figures).filter((name) => !OTHERS.has(name) && !/^(middle|leans to) /.test(name));
  if (names.length === 0) return "";
  const each = names.map((name) => `${name} ${figures[name]!.text}`).join(", ");
  const what =
    kind === "fork"
      ? "the slot"
      : kind === "dowels"
        ? "the dowels"
        : kind === "loose-tenon"
          ? "its mortise"
          : "it";
  return `From each face to ${what} at the shoulder, square to the face${figures.turn ? ", to the nearest corner" : ""}: ${each}.`;
}

/** Figures of a tenon that do not belong to a face. */
const OTHERS = new Set([
  "thick",
  "wide",
  "long",
  "along it",
  "bore",
  "cheeks",
  "edges",
  "turn",
  "turned to",
  "square",
  "count",
  "fit",
  "fit is",
  "glue",
  "through",
  "at its end",
]);

function mitreLine(mitre: SheetMark): string {
  const [one, other] = Object.entries(mitre.figures).filter(([name]) => name.startsWith("at "));
  const at =
    one![1].text === other![1].text
      ? one![1].text
      : [one!, other!].map(([name, { text }]) => `${text} at the ${name.slice(3)}`).join(", ");
  if (mitre.figures.angle?.value === 90)
    return `Cut off where it meets the other tenon: ${at} from the shoulder.`;
  return `Mitre its end where it meets the other: on the ${told(mitre, "cheek")} cheek ${at} from the shoulder, at ${told(mitre, "angle")} to that cheek, longer on the other.`;
}

const wedgeLine = (wedges: SheetMark): string =>
  `Right through, wedged: ${told(wedges, "count")} saw cut${told(wedges, "count") === "1" ? "" : "s"} ${told(wedges, "cut")} deep, ${told(wedges, "in")} in from ${told(wedges, "count") === "1" ? "its edge" : "either edge"}; wedges ${told(wedges, "thick")} thick at the head, ${told(wedges, "wide")} wide, ${told(wedges, "long")} long${wedges.figures.set ? `, set ${told(wedges, "set")}` : ""}.`;

function pegLine(peg: SheetMark): string {
  const many = told(peg, "count") === "1" ? "Peg" : `${told(peg, "count")} pegs`;
  const draw = peg.figures.draw ? `; bore the tenon ${told(peg, "draw")} nearer the shoulder` : "";
  return `${many} Ø ${told(peg, "diameter")}, ${told(peg, "setback")} from the shoulder in the mortise${draw}.`;
}
