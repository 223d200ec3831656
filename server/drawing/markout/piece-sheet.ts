/**
 * The sheets of one piece: its faces, its mortises, its ends; on a second page what the first has no room for.
 */
import type { Piece } from "../../joinery/pieces/piece.ts";
import { boreTable } from "./bores-block.ts";
import { bowBlocks } from "./bow-block.ts";
import { endsBlock } from "./ends-block.ts";
import { type Block, facesBlock } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { grainSign } from "./grain.ts";
import { linesOf, widthOf } from "./lettering.ts";
import { orderOfWork } from "./order-of-work.ts";
import { outlineBlocks } from "./outline-block.ts";
import { BODY, enlarged, type Item, moved, SMALL, TYPE, words } from "./page.ts";
import type { Paper } from "./paper.ts";
import { planBlock } from "./plan-block.ts";
import { restLine } from "./rest-words.ts";
import { sheetOf } from "./sheet/part.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
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
const SMALLER = 1.5;
const GAP = 3;

/** Larger letters may make the drawing so much smaller. */
const FOR_LETTERS = 2;

/** What stands on the pages of a piece, in a room that all of it is enlarged from afterwards; the drawing is among the blocks. */
interface Laid {
  blocks: Block[];
  /** Which of them is the drawing, and its scale. */
  drawing: number;
  scale: number;
  room: PageRoom;
}

/** The blocks of one page: from this one, up to that one. */
type Span = readonly [from: number, to: number];

/** The pages of a piece, each in the largest letters that cost no further page and not too much of the drawing's size. */
export function pieceDrawn(piece: Piece, figures: Figures, paper: Paper): Drawn[] {
  const { wide, high } = roomOn(paper);
  const laid = TYPE.map((by) => blocksOf(piece, figures, { wide: wide / by, high: high / by, by }));
  const plain = laid[laid.length - 1]!;
  const most = spansOf(plain).length;
  const isLegible = ({ scale }: Laid) => scale <= plain.scale * FOR_LETTERS;
  const all =
    laid.find((each) => {
      const spans = spansOf(each);
      return spans.length <= most && isLegible(each) && spans.every((span) => fits(each, span));
    }) ?? plain;
  const spans = spansOf(all);
  const pages = spans.map((span, k) => {
    // A page with less on it than the others may be in larger letters than they are.
    const own = laid.find(
      (each) =>
        each === all ||
        (each.blocks.length === all.blocks.length &&
          (!holds(span, all.drawing) || isLegible(each)) &&
          fits(each, span)),
    )!;
    const items = onPage(own, span, k + 1 < spans.length);
    return {
      items: items.map((item) => enlarged(item, own.room.by)),
      scale: own.scale,
      drawn: holds(span, own.drawing),
    };
  });
  const { scale } = pages.find(({ drawn }) => drawn)!;
  return pages.map(({ items }) => ({ items, scale }));
}

const holds = ([from, to]: Span, which: number): boolean => from <= which && which < to;

/** The blocks page by page, as many on each as it has room for. */
function spansOf({ blocks, room }: Laid): Span[] {
  const spans: Span[] = [];
  let [from, height] = [0, 0];
  blocks.forEach((block, k) => {
    const top = height ? height + GAP : 0;
    if (top > 0 && top + block.height > usable(room)) {
      spans.push([from, k]);
      [from, height] = [k, block.height];
    } else height = top + block.height;
  });
  return [...spans, [from, blocks.length]];
}

/** The last line of a page says that the next one goes on with it. */
const usable = ({ high }: PageRoom): number => high - LINE;

function fits({ blocks, room }: Laid, [from, to]: Span): boolean {
  const some = blocks.slice(from, to);
  const height = some.reduce((sum, block) => sum + block.height, 0) + (some.length - 1) * GAP;
  return height <= room.high && some.every(({ items }) => widthOver(items) <= room.wide);
}

function onPage({ blocks, room }: Laid, [from, to]: Span, goesOn: boolean): Item[] {
  let top = 0;
  const items = blocks.slice(from, to).flatMap((block) => {
    const own = block.items.map((item) => moved(item, 0, top));
    top += block.height + GAP;
    return own;
  });
  if (goesOn) items.push(words([room.wide, room.high - 0.5], GOES_ON, SMALL, { anchor: "end", bold: true }));
  return items;
}

/** How far level words reach to the right. */
const widthOver = (items: readonly Item[]): number =>
  Math.max(
    0,
    ...items.map((item) =>
      item.is !== "words" || item.upright || item.anchor
        ? 0
        : item.at[0] + widthOf(item.text, item.size, item.bold),
    ),
  );

/** The room on a page, and how much all of it is enlarged afterwards. */
interface PageRoom {
  wide: number;
  high: number;
  by: number;
}

function blocksOf(piece: Piece, figures: Figures, room: PageRoom): Laid {
  const { wide, by } = room;
  if (piece.plan) return planLaid(piece, figures, room);
  const high = usable(room);
  const sheet = sheetOf(piece, figures);
  const head = headBlock(piece, sheet, figures, wide);
  const bow = piece.form && bowBlocks(piece, sheet, { wide, high: high * BENT, by }, figures);
  const below = bow?.below ?? [
    endsBlock(piece, sheet, wide),
    ...mortiseTables(piece, sheet, wide, high),
    ...outlineBlocks(sheet, wide, high),
  ];
  const heightOf = (blocks: readonly Block[]) =>
    blocks.reduce((sum, { height }) => sum + (height ? height + GAP : 0), head.height + GAP);
  // All on one page if it can be, else without its last tables.
  const rests = below.map((_, k) => heightOf(below.slice(0, below.length - k)));
  const drawing =
    bow?.drawing ??
    (piece.turned
      ? turnedBlock(piece, figures, wide, by)
      : facesFor(piece, figures, { ...room, high }, rests));
  const blocks = [head, drawing, ...below].filter(({ height }) => height > 0);
  return { blocks, drawing: 1, scale: drawing.scale, room };
}

/** The form of a bow takes no more of the height than this. */
const BENT = 0.45;

const GOES_ON = "Continued on the next sheet";

/** A part in plan; its bores on the same page, unless the plan would be too small there. */
function planLaid(piece: Piece, figures: Figures, room: PageRoom): Laid {
  const { wide, by } = room;
  const title = words([0, 3.4], quantity(piece), BODY + 1, { bold: true });
  const { long, wide: deep, thick } = piece.size;
  const sizes = [long, deep, thick].map((mm) => figures.print(mm)).join(" × ");
  const bores = boreTable(sheetOf(piece, figures), wide);
  const says = paragraphs(
    [
      `${sizes} ${figures.sign} over all. ${blankLine(sheetOf(piece, figures))}`,
      ...saidOf(piece),
      ...[orderOfWork(piece)].filter(Boolean),
    ],
    wide,
  );
  const top = 4.6 + says.height + 2;
  const inRoom = (high: number) => planBlock(piece, figures, wide, high - top, by);
  const rest = bores.height ? bores.height + GAP : 0;
  const together = inRoom(room.high - rest);
  const alone = rest ? inRoom(usable(room)) : together;
  const isTogether =
    top + together.height + rest <= room.high && together.scale <= alone.scale * PLAN_SMALLER;
  const plan = isTogether ? together : alone;
  const items = [
    title,
    ...says.items.map((item) => moved(item, 0, 4.6)),
    ...plan.items.map((item) => moved(item, 0, top)),
  ];
  const blocks = [{ items, height: top + plan.height }, bores].filter(({ height }) => height > 0);
  return { blocks, drawing: 0, scale: plan.scale, room };
}

/** A plan is drawn so much smaller at the most to be on one page with its bores. */
const PLAN_SMALLER = 1.5;

/** The faces as large as leaves room for as much of the rest as can be on the page, unless that would make them too small. */
function facesFor(piece: Piece, figures: Figures, { wide, high, by }: PageRoom, rests: readonly number[]) {
  const alone = facesBlock(piece, figures, wide, high * DRAWING, by);
  for (const rest of rests) {
    const together = facesBlock(piece, figures, wide, high - rest, by);
    if (together.height <= high - rest && together.scale <= alone.scale * SMALLER) return together;
  }
  return alone;
}

/** Room at the right of the first line for which way the grain runs, mm. */
const GRAIN = 28;

function headBlock(piece: Piece, sheet: SheetPart, figures: Figures, wide: number): Block {
  // Heavy letters are some 7 % wider than plain ones.
  const lines = linesOf(quantity(piece), BODY + 1, (wide - GRAIN) / 1.07);
  const items: Item[] = [
    ...lines.map((text, k) => words([0, 3.4 + k * 4], text, BODY + 1, { bold: true })),
    ...grainSign([wide - GRAIN / 2, 3.4]),
  ];
  const top = 4.6 + (lines.length - 1) * 4;
  const datums = marksOf(sheet, "datum").map(datumLine);
  const sizes = size(sheet, figures.sign, betweenOf(piece, figures));
  const run = datums.length === 1 ? ` Distances run from ${datums[0]}.` : "";
  const { items: more, height } = paragraphs(
    [
      `${capital(sizes)}. ${blankLine(sheet)}${run}`.replace(/ {2,}/g, " ").trim(),
      ...(datums.length > 1 ? datums.map((each) => `${each}.`) : []),
      ...marksOf(sheet, "notch").map(notchLine),
      ...marksOf(sheet, "rebate", "groove", "strip").map(restLine),
      ...marksOf(sheet, "levelling").map(levellingLine),
      ...piece.notes,
      ...saidOf(piece),
      ...[orderOfWork(piece)].filter(Boolean),
    ],
    wide,
  );
  items.push(...more.map((item) => moved(item, 0, top)));
  return { items, height: top + height };
}

/** What the maker wrote over the part in the file. */
const saidOf = ({ comment }: Piece): string[] => (comment ? [`From the file: ${comment}`] : []);

function betweenOf({ between, ends, faces }: Piece, figures: Figures): string {
  if (between === undefined) return "";
  const shouldered = ends.every(({ enters }) => enters) ? "between the shoulders " : "";
  return `, ${figures.print(between)} ${shouldered}on the ${faces.length ? `${faces[0]!.name} outside arris` : "axis"}`;
}

/** How a leg's foot is left for the floor. */
const levellingLine = (each: SheetMark): string =>
  `Levelling: leave the foot whole until the chair stands together on a level floor; the cut to the floor takes up to ${told(each, "off")} more off one side of it than off the other.`;

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** The mortises in one table, or in several where one would not fit on a page. */
function mortiseTables(piece: Piece, sheet: SheetPart, wide: number, high: number): Block[] {
  const marks = marksOf(sheet, ...CUT_INTO);
  if (marks.length === 0) return [];
  const rows = marks.map((each) => (piece.turned ? turnedRow(sheet, each) : mortiseRow(sheet, each)));
  const bored = piece.turned !== undefined && marks.every(({ kind }) => !kind.endsWith("mortise"));
  const name = bored ? "Boring schedule" : "Mortises and holes";
  const most = Math.floor((high - 12) / (LINE * 1.5));
  const blocks: Block[] = [];
  for (let k = 0; k < rows.length; k += most) {
    const headings = piece.turned ? turnedHeadings : mortiseHeadings;
    const title = k === 0 ? name : `${name}, continued`;
    blocks.push(tableBlock(title, headings, rows.slice(k, k + most), wide));
  }
  return bored ? [...blocks, paragraphs([HOW_TO_BORE], wide)] : blocks;
}

const HOW_TO_BORE =
  "Bore in this order. Strike a line along the front and lay the post in V-blocks; turn it by the degrees round from the front, anticlockwise as the top is looked at, and keep the bit level across. A hole that leans is bored along a bevel that stands on the post, set as the bevel sheet has it. Set the depth on the bit for each diameter.";

const CUT_INTO = ["mortise", "through-mortise", "hole", "through-hole", "peg-hole"];
