import { boardFeet } from "../../boards/measure.ts";
import type { Hiding, Plan, PlannedBoard, PlannedPiece, Stock } from "../../boards/plan.ts";
import { volumeOf } from "../../boards/stock.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength, printQuantity, printTimber } from "../../design/units.ts";
import { densityOf } from "../../timber/weight.ts";
import { type Brush, columns, harmless, wrapped } from "./terminal.ts";

/** The stock list, what to ask for at a yard, and the plan of each board, as text. */
export function boardsReport(
  title: string,
  stock: Stock,
  plan: Plan,
  unit: LengthUnit,
  paint: Brush,
): string {
  const lines = [paint("bold", harmless(title)), "", ...stockText(stock, unit, paint)];
  if (stock.lines.length > 0) lines.push("", ...planText(stock, plan, unit, paint));
  return `${lines.join("\n")}\n`;
}

type Sized = { thick: number; wide: number; long: number };

const sizeText = ({ thick, wide, long }: Sized, unit: LengthUnit): string =>
  [thick, wide, long].map((mm) => printLength(mm, unit)).join(" x ");

function stockText({ lines: stock, make, assumed }: Stock, unit: LengthUnit, paint: Brush): string[] {
  const heading = make === 1 ? "Stock list" : `Stock list for ${make} chairs`;
  if (stock.length === 0) return [paint("bold", heading), "  There is nothing to saw yet."];
  const rows = stock.map((line) => [
    line.sawn === undefined ? "no board" : `from ${printLength(line.sawn, unit)}`,
    line.name,
    String(line.number),
    line.timber?.species ?? "no timber",
    sizeText(line.finished, unit),
    sizeText(line.blank, unit),
    kindOf(line),
  ]);
  const volume = stock.reduce((sum, line) => sum + volumeOf(line), 0);
  const known = stock.every((line) => densityOf(line.timber) !== undefined);
  const mass = stock.reduce((sum, line) => sum + (volumeOf(line) / 1e9) * (densityOf(line.timber) ?? 0), 0);
  return [
    paint("bold", heading),
    columns([["sawn", "part", "number", "timber", "finished", "blank", ""], ...rows], "  "),
    `  In all ${volumeText(volume, stock, unit)}${known ? `, ${printQuantity({ number: mass, dimension: "mass" }, unit)}` : ""} as blanks. Sizes: thickness x width x length.`,
    ...(assumed.length > 0
      ? [
          wrapped(
            `No board or yard is given for ${assumed.map((each) => each || "timber without a name").join(", ")}: usual sawn thicknesses are taken.`,
            "  ",
          ),
        ]
      : []),
  ];
}

function kindOf({ is, outline, glued }: Stock["lines"][number]): string {
  if (glued > 0) return "a stave, glued";
  if (is === "turned") return "the square it is turned from";
  if (outline) return "sawn to its outline";
  return is === "curved" ? "curve sawn through its width" : "";
}

function volumeText(mm3: number, lines: Stock["lines"], unit: LengthUnit): string {
  if (unit !== "in") return printTimber(mm3, unit);
  const feet = lines.reduce((sum, { blank, number }) => sum + boardFeet(blank) * number, 0);
  return `${feet.toFixed(1)} board feet`;
}

function planText(stock: Stock, plan: Plan, unit: LengthUnit, paint: Brush): string[] {
  const lines: string[] = [];
  const bought = plan.boards.filter(({ board }) => board.from !== "hand");
  if (bought.length > 0) lines.push(paint("bold", "To ask for at the yard"), ...askText(bought, unit), "");
  lines.push(paint("bold", "Boards"));
  for (const board of plan.boards) lines.push(...boardText(board, unit));
  for (const { part, number } of plan.lacking)
    lines.push(`  ${number} of ${part} ${number === 1 ? "has" : "have"} no room on any board.`);
  const share = plan.bound > 0 ? ` (${((plan.used / plan.bound - 1) * 100).toFixed(1)} % over it)` : "";
  lines.push(
    "",
    `  Used ${printTimber(plan.used, unit)}, offcuts left out; no plan of this kind can use less than ${printTimber(plan.bound, unit)}${share}.`,
  );
  if (plan.price)
    lines.push(`  The boards cost ${plan.price.atLeast ? "at least " : ""}${plan.price.sum.toFixed(2)}.`);
  const { saw, plane, ends, jointing } = stock.allowances;
  const mm = (number: number) => printLength(number, unit);
  lines.push(
    wrapped(
      `Allowed for: saw ${mm(saw)}, plane ${mm(plane)} off each face and edge, ends ${mm(ends)}, jointing ${mm(jointing)}.`,
      "  ",
    ),
  );
  return lines;
}

/** What to buy: of each thickness how much, and how long and wide its boards must be at least. */
function askText(boards: readonly PlannedBoard[], unit: LengthUnit): string[] {
  const mm = (number: number) => printLength(number, unit);
  const groups = new Map<string, PlannedBoard[]>();
  for (const each of boards) {
    const key = `${each.board.timber?.species ?? ""} ${each.board.thick}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  const rows = [...groups.values()].map((group) => {
    const { thick, timber, source, from } = group[0]!.board;
    const volume = group.reduce((sum, { board }) => sum + board.long * board.wide * thick, 0);
    const feet = group.reduce((sum, { board }) => sum + boardFeet(board), 0);
    const pieces = group.flatMap((each) => each.pieces);
    const long = Math.max(...pieces.map((piece) => piece.long));
    const wide = Math.max(...pieces.map((piece) => piece.wide));
    return [
      timber?.species ?? "",
      `${mm(thick)} thick`,
      unit === "in" ? `${feet.toFixed(1)} board feet` : printTimber(volume, unit, 3),
      `none shorter than ${mm(long)} clear, none narrower than ${mm(wide)} clear`,
      from === "yard" ? source : "",
    ];
  });
  return [columns(rows, "  ")];
}

function boardText({ name, board, pieces, cuts, offcuts }: PlannedBoard, unit: LengthUnit): string[] {
  const mm = (number: number) => printLength(number, unit);
  const counts = new Map<string, number>();
  for (const { part } of pieces) counts.set(part, (counts.get(part) ?? 0) + 1);
  const list = [...counts].map(([part, number]) => (number === 1 ? part : `${number} ${part}`)).join(", ");
  const rest = offcuts.map(({ long, wide }) => `${mm(long)} x ${mm(wide)}`).join(", ");
  const steps = cuts.map(({ is, at }) => `${is} ${mm(at)}`).join("; ");
  return [
    `  ${harmless(name)}: ${mm(board.long)} x ${mm(board.wide)} x ${mm(board.thick)}`,
    wrapped(`pieces: ${list}`, "    "),
    ...pieces.flatMap((piece) =>
      (piece.under ?? []).map((each) => wrapped(hidingText(piece, each, unit), "    ")),
    ),
    ...(rest ? [wrapped(`left over: ${rest}`, "    ")] : []),
    wrapped(`cuts in order: ${steps}`, "    "),
  ];
}

/** That a defect stays in a piece, where, and what to look at before it is sawn. */
export function hidingText({ part }: PlannedPiece, hiding: Hiding, unit: LengthUnit): string {
  const { what, x, y, face, deepest, firstEnd } = hiding;
  const mm = (number: number) => printLength(number, unit);
  const where = `the ${harmless(what ?? "defect")} at ${mm(x)}, ${mm(y)} from the edge, stays in ${part}`;
  const turn = `turn its ${face === "below" ? "lower" : face} face to it${firstEnd === undefined ? "" : `, its ${firstEnd} towards the board's first end`}`;
  const look =
    deepest === undefined
      ? ""
      : `; first look that it goes no deeper than ${mm(deepest)} into the finished part and does not show on the other side`;
  return `hidden: ${where}: ${turn}${look}`;
}
