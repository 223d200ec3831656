/**
 * The sheets of one piece: its faces, its mortises, its ends; on a second page what the first has no room for.
 */
import type { Piece } from "../../joinery/pieces/piece.ts";
import { boreTable } from "./bores-block.ts";
import { endsBlock } from "./ends-block.ts";
import { type Block, facesBlock } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { outlineBlocks } from "./outline-block.ts";
import { BODY, type Item, moved, SMALL, words } from "./page.ts";
import type { Paper } from "./paper.ts";
import { planBlock } from "./plan-block.ts";
import { restLine } from "./rest-words.ts";
import { sheetOf } from "./sheet/part.ts";
import type { SheetPart } from "./sheet/sheet.ts";
import { roomOn } from "./sheet-page.ts";
import { LINE, paragraphs, tableBlock } from "./table.ts";
import { turnedBlock } from "./turned-block.ts";
import {
  blankLine,
  datumLine,
  marksOf,
  mortiseHeadings,
  mortiseRow,
  notchLine,
  quantity,
  size,
  turnedHeadings,
  turnedRow,
} from "./wording.ts";

/** What one page of a piece shows, still without its titles. */
interface Drawn {
  items: Item[];
  scale: number;
}

/** Where not all has room on one page, the faces take no more of the height than this. */
const DRAWING = 0.8;
/** Nor are they drawn so much smaller to be on one page with the rest. */
const SMALLER = 2;
const GAP = 3;

export function pieceDrawn(piece: Piece, figures: Figures, paper: Paper): Drawn[] {
  const { wide, high } = roomOn(paper);
  if (piece.plan) return planDrawn(piece, figures, wide, high);
  const sheet = sheetOf(piece, figures);
  const head = headBlock(piece, sheet, figures, wide);
  const below = [
    endsBlock(piece, sheet, wide),
    ...mortiseTables(piece, sheet, wide, high),
    ...outlineBlocks(sheet, wide, high),
  ];
  const room = (blocks: readonly Block[]) =>
    blocks.reduce((sum, { height }) => sum + (height ? height + GAP : 0), head.height + GAP);
  // All on one page if it can be, else without its last tables.
  const rests = below.map((_, k) => room(below.slice(0, below.length - k)));
  const drawing = piece.turned
    ? turnedBlock(piece, figures, wide)
    : facesFor(piece, figures, wide, high, rests);
  const blocks = [head, drawing, ...below];
  const pages: Drawn[] = [{ items: [], scale: drawing.scale }];
  let y = 0;
  for (const { items, height } of blocks) {
    if (height === 0) continue;
    if (y > 0 && y + height > high) {
      pages.push({ items: [], scale: drawing.scale });
      y = 0;
    }
    pages[pages.length - 1]!.items.push(...items.map((item) => moved(item, 0, y)));
    y += height + GAP;
  }
  return pages;
}

/** A part in plan, on one page. */
function planDrawn(piece: Piece, figures: Figures, wide: number, high: number): Drawn[] {
  const title = words([0, 3.4], quantity(piece), BODY + 1, { bold: true });
  const { long, wide: deep, thick } = piece.size;
  const sizes = [long, deep, thick].map((mm) => figures.print(mm)).join(" × ");
  const bores = boreTable(sheetOf(piece, figures), wide);
  const below = bores.height ? bores.height + GAP : 0;
  const plan = planBlock(piece, figures, wide, high - 12 - below);
  const items = [
    title,
    words([0, 7.6], `${sizes} ${figures.sign} over all. ${blankLine(sheetOf(piece, figures))}`, SMALL),
    ...plan.items.map((item) => moved(item, 0, 12)),
    ...bores.items.map((item) => moved(item, 0, 12 + plan.height + GAP)),
  ];
  return [{ items, scale: plan.scale }];
}

/** The faces as large as leaves room for as much of the rest as can be on the page, unless that would make them too small. */
function facesFor(piece: Piece, figures: Figures, wide: number, high: number, rests: readonly number[]) {
  const alone = facesBlock(piece, figures, wide, high * DRAWING);
  for (const rest of rests) {
    const together = facesBlock(piece, figures, wide, high - rest);
    if (together.height <= high - rest && together.scale <= alone.scale * SMALLER) return together;
  }
  return alone;
}

function headBlock(piece: Piece, sheet: SheetPart, figures: Figures, wide: number): Block {
  const items: Item[] = [words([0, 3.4], quantity(piece), BODY + 1, { bold: true })];
  const datums = marksOf(sheet, "datum").map(datumLine);
  const sizes = size(sheet, figures.sign, betweenOf(piece, figures));
  const run = datums.length > 1 ? "" : ` Distances run from ${datums[0]}.`;
  const { items: more, height } = paragraphs(
    [
      `${capital(sizes)}. ${blankLine(sheet)}${run}`.replace(/ {2,}/g, " ").trim(),
      ...(datums.length > 1 ? datums.map((each) => `${each}.`) : []),
      ...marksOf(sheet, "notch").map(notchLine),
      ...marksOf(sheet, "rebate", "groove", "strip").map(restLine),
      ...piece.notes,
    ],
    wide,
  );
  items.push(...more.map((item) => moved(item, 0, 4.6)));
  return { items, height: 4.6 + height };
}

function betweenOf({ between, ends, faces }: Piece, figures: Figures): string {
  if (between === undefined) return "";
  const shouldered = ends.every(({ enters }) => enters) ? "between the shoulders " : "";
  return `, ${figures.print(between)} ${shouldered}on the ${faces.length ? `${faces[0]!.name} outside arris` : "axis"}`;
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** The mortises in one table, or in several where one would not fit on a page. */
function mortiseTables(piece: Piece, sheet: SheetPart, wide: number, high: number): Block[] {
  const marks = marksOf(sheet, ...CUT_INTO);
  if (marks.length === 0) return [];
  const rows = marks.map((each) => (piece.turned ? turnedRow(sheet, each) : mortiseRow(sheet, each)));
  const most = Math.floor((high - 12) / (LINE * 1.5));
  const blocks: Block[] = [];
  for (let k = 0; k < rows.length; k += most) {
    const headings = piece.turned ? turnedHeadings : mortiseHeadings;
    const title = k === 0 ? "Mortises and holes" : "Mortises and holes, continued";
    blocks.push(tableBlock(title, headings, rows.slice(k, k + most), wide));
  }
  return blocks;
}

const CUT_INTO = ["mortise", "through-mortise", "hole", "through-hole", "peg-hole"];
