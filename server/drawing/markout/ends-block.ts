/**
 * Both ends of a piece beside each other: where the line crosses each arris, the bevels to set, the tenon.
 */
import type { Piece } from "../../joinery/pieces/piece.ts";
import type { Block } from "./faces.ts";
import { type Item, moved, SMALL, words } from "./page.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { paragraphs, tableBlock } from "./table.ts";
import { tenonLines } from "./tenon-words.ts";
import { marksOf } from "./wording.ts";

export function endsBlock(piece: Piece, sheet: SheetPart, wide: number): Block {
  const each = (wide - 8) / 2;
  const blocks = marksOf(sheet, "end").map((end) => endBlock(piece, sheet, end, each));
  const items = blocks.flatMap(({ items: own }, k) => own.map((item) => moved(item, k * (each + 8), 0)));
  return { items, height: Math.max(0, ...blocks.map(({ height }) => height)) };
}

function endBlock(piece: Piece, sheet: SheetPart, end: SheetMark, wide: number): Block {
  const name = piece.is === "post" ? end.face : `${end.face} end`;
  const enters = told(end, "enters");
  const title = `${name.charAt(0).toUpperCase()}${name.slice(1)}${enters ? `, into ${enters}` : ""}`;
  const items: Item[] = [words([0, 3.2], title, SMALL + 1, { bold: true })];
  let y = 4;
  const add = (block: Block) => {
    items.push(...block.items.map((item) => moved(item, 0, y)));
    y += block.height;
  };
  const lines = marksOf(sheet, "line").filter((line) => told(line, "end") === end.face);
  const from = marksOf(sheet, "datum").length > 1 ? ` from ${end.datum}` : "";
  if (lines.length && !isSquare(lines)) {
    const rows = lines.map((line) => [
      line.face,
      told(line, "at"),
      told(line, "across"),
      told(line, "bevel"),
      told(line, "slope"),
      `on the ${told(line, "stock")}`,
    ]);
    add(tableBlock("", ["line on", `at the stock${from}`, "across", "bevel", "", "stock"], rows, wide));
  } else if (lines.length) {
    const at = lines[0]!.figures.at!;
    add(
      paragraphs(
        [`Square all round${at.value === 0 ? ` at ${end.datum}` : `, ${at.text} from ${end.datum}`}.`],
        wide,
      ),
    );
  }
  if (end.figures.slant) {
    const what = enters ? "The shoulder lies" : "Cut";
    add(
      paragraphs(
        [
          `${what} at ${told(end, "slant")} to the axis, longest at ${told(end, "longest at")} round from the front.`,
        ],
        wide,
      ),
    );
  } else if (piece.turned && !enters) add(paragraphs(["Cut square."], wide));
  if (end.figures["runs on"])
    add(
      paragraphs(
        [
          `Beyond the shoulder line the wood runs on ${told(end, "runs on")} and is hollowed to fit over Ø ${told(end, "hollowed over")}.`,
        ],
        wide,
      ),
    );
  add(paragraphs(tenonLines(sheet, end.face), wide));
  return { items, height: y };
}

const isSquare = (lines: readonly SheetMark[]): boolean =>
  lines.every(
    ({ figures }) =>
      figures.bevel?.value === 90 &&
      figures.at?.value === lines[0]!.figures.at?.value &&
      figures.across?.value === figures.at?.value,
  );
