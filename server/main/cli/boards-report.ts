import { boardFeet } from "../../boards/measure.ts";
import type { Plan, PlannedBoard, Stock } from "../../boards/plan.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength, printTimber } from "../../design/units.ts";
import { hidingText, planFigures, stockSums, stockTable } from "../../drawing/boards/words.ts";
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

function stockText(stock: Stock, unit: LengthUnit, paint: Brush): string[] {
  const heading = stock.make === 1 ? "Stock list" : `Stock list for ${stock.make} chairs`;
  if (stock.lines.length === 0) return [paint("bold", heading), "  There is nothing to saw yet."];
  const { headings, rows } = stockTable(stock, unit);
  return [
    paint("bold", heading),
    columns([headings, ...rows], "  "),
    ...stockSums(stock, unit).map((each) => `  ${each}`),
    "  Sizes: thickness × width × length; grain runs along the length.",
  ];
}

function planText(stock: Stock, plan: Plan, unit: LengthUnit, paint: Brush): string[] {
  const lines: string[] = [];
  const bought = plan.boards.filter(({ board }) => board.from !== "hand");
  if (bought.length > 0) lines.push(paint("bold", "To ask for at the yard"), ...askText(bought, unit), "");
  lines.push(paint("bold", "Boards"));
  for (const board of plan.boards) lines.push(...boardText(board, unit));
  lines.push("", ...planFigures(stock, plan, unit).map((each) => wrapped(each, "  ")));
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
      (piece.under ?? []).map((each) => wrapped(harmless(hidingText(piece, each, unit)), "    ")),
    ),
    ...(rest ? [wrapped(`left over: ${rest}`, "    ")] : []),
    wrapped(`cuts in order: ${steps}`, "    "),
  ];
}
