/**
 * The stock list, each board drawn to scale, and the curved parts as they nest at full size: pages to print.
 */
import type { Plan, PlannedBoard, Stock } from "../../boards/plan.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";
import type { Block } from "../markout/faces.ts";
import { BODY, type Item, moved, type Page, SMALL, words } from "../markout/page.ts";
import { type Paper, type PaperName, papers } from "../markout/paper.ts";
import { roomOn, sheetPage, type Titles } from "../markout/sheet-page.ts";
import { LINE, paragraphs, tableBlock } from "../markout/table.ts";
import { checkSquare, tiles } from "../markout/tiles.ts";
import { boardBlock, type Numbered, sizeOfBoard } from "./board-block.ts";
import { nestTemplates } from "./nest-templates.ts";
import { hidingText, planFigures, stockSums, stockTable } from "./words.ts";

export interface BoardsAsked {
  title: string;
  stock: Stock;
  plan: Plan;
  unit: LengthUnit;
  paper: PaperName;
}

/** A page before it is known how many there are. */
interface Unnumbered {
  titles: Omit<Titles, "sheet" | "chair">;
  items: Item[];
  page: Pick<Page, "name" | "fullSize">;
}

const GAP = 5;

export function boardsPages(asked: BoardsAsked): Page[] {
  const paper = papers[asked.paper];
  const all = [...stockPages(asked, paper), ...boardPages(asked, paper), ...templatePages(asked, paper)];
  return all.map(({ titles, items, page }, k) =>
    sheetPage(paper, { ...titles, chair: asked.title, sheet: `${k + 1} of ${all.length}` }, items, page),
  );
}

const CAUTION =
  "Sizes as sawn, before planing. Look at each board before you cut: what the file does not say, the plan does not know.\nSaws and planers hurt: work with guards, and by the maker's instructions.";

/** Rows of the stock list on one page. */
const ROWS = 38;

function stockPages({ stock, plan, unit }: BoardsAsked, paper: Paper): Unnumbered[] {
  const { wide } = roomOn(paper);
  const { headings, rows } = stockTable(stock, unit);
  const pages: Unnumbered[] = [];
  for (let from = 0; from < Math.max(1, rows.length); from += ROWS) {
    const some = rows.slice(from, from + ROWS);
    const table = tableBlock("", headings, some, wide);
    const last = from + ROWS >= rows.length;
    const foot = last
      ? below(
          paragraphs([...stockSums(stock, unit), ...planFigures(stock, plan, unit)], wide),
          table.height + GAP,
        )
      : [];
    pages.push({
      titles: {
        part: from > 0 ? "Stock list, continued" : "Stock list",
        about: stock.make === 1 ? "for one chair" : `for ${stock.make} chairs`,
        scale: "Thickness × width × length; grain runs along the length.",
        caution: CAUTION,
      },
      items: [...table.items, ...foot],
      page: { name: from > 0 ? `stock ${from / ROWS + 1}` : "stock" },
    });
  }
  return pages;
}

const below = ({ items }: Block, y: number): Item[] => items.map((item) => moved(item, 0, y));

/** Boards under each other, all at one scale, as many on a page as it has room for. */
function boardPages({ stock, plan, unit }: BoardsAsked, paper: Paper): Unnumbered[] {
  const { wide, high } = roomOn(paper);
  const longest = Math.max(0, ...plan.boards.map(({ board }) => board.long));
  if (longest === 0) return [];
  // A scale that a ruler has.
  const scale = 1 / (ratios.find((ratio) => longest / ratio <= wide) ?? longest / wide);
  const pages: Unnumbered[] = [];
  let items: Item[] = [];
  let names: string[] = [];
  let y = 0;
  const close = () => {
    if (names.length === 0) return;
    pages.push({
      titles: {
        part: names.length === 1 ? names[0]! : `${names[0]} to ${names[names.length - 1]}`,
        about: "each board from its first end, its first edge below; crossed out: defects; grey: waste",
        scale: `Drawn 1 : ${Number((1 / scale).toFixed(1))}. Cuts are numbered in the order to make them.`,
        caution: CAUTION,
      },
      items,
      page: { name: `boards ${names[0]}` },
    });
    [items, names, y] = [[], [], 0];
  };
  let number = 0;
  for (const planned of plan.boards) {
    const pieces = planned.pieces.map((piece): Numbered => ({ piece, number: ++number }));
    const head = words([0, 3.4], headOf(planned, unit), BODY, { bold: true });
    const drawing = boardBlock({ planned, pieces, scale, saw: stock.allowances.saw });
    const list = paragraphs(listOf(planned, pieces, unit), wide);
    const tall = 5 + sizeOfBoard(planned, scale).high + list.height + GAP;
    if (y > 0 && y + tall > high) close();
    items.push(
      moved(head, 0, y),
      ...drawing.items.map((item) => moved(item, 0, y + 5)),
      ...list.items.map((item) => moved(item, 0, y + 5 + drawing.height)),
    );
    names.push(planned.name);
    y += tall;
  }
  close();
  return pages;
}

const ratios = [5, 10, 12, 15, 20, 25, 30, 40, 50];

const headOf = ({ name, board }: PlannedBoard, unit: LengthUnit): string =>
  `${name}: ${[board.long, board.wide, board.thick].map((mm) => printLength(mm, unit)).join(" × ")}${board.timber ? `, ${board.timber.species.replaceAll("-", " ")}` : ""}`;

/** Which numbers are which parts, the cuts in order, what stays hidden, what is left. */
function listOf(planned: PlannedBoard, pieces: readonly Numbered[], unit: LengthUnit): string[] {
  const mm = (number: number) => printLength(number, unit);
  const byPart = new Map<string, number[]>();
  for (const { piece, number } of pieces) byPart.set(piece.part, [...(byPart.get(piece.part) ?? []), number]);
  const cuts = planned.cuts.map(({ is, at }, k) => `${k + 1} ${is} ${mm(at)}`).join("; ");
  const left = planned.offcuts.map(({ long, wide }) => `${mm(long)} × ${mm(wide)}`).join(", ");
  return [
    `Pieces: ${[...byPart].map(([part, numbers]) => `${runs(numbers)} ${part}`).join("; ")}.`,
    `Cuts: ${cuts}.`,
    ...pieces.flatMap(({ piece, number }) =>
      (piece.under ?? []).map((each) => `${number}: ${hidingText(piece, each, unit)}.`),
    ),
    ...(left ? [`Left over: ${left}.`] : []),
  ];
}

/** `1–4, 7`. */
function runs(numbers: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const n of numbers) {
    const last = spans[spans.length - 1];
    if (last && n === last[1] + 1) last[1] = n;
    else spans.push([n, n]);
  }
  return spans.map(([a, b]) => (a === b ? String(a) : `${a}–${b}`)).join(", ");
}

const FULL_SIZE = {
  scale: "Full size. Print at 100 %, not fitted to the page.",
  caution:
    "Check the 100 mm square before using a template.\nJoin pages at the circles: lay one cross on the other.",
};

function templatePages({ plan }: BoardsAsked, paper: Paper): Unnumbered[] {
  const made = nestTemplates(plan).flatMap(({ part, count, drawing }) => {
    const pages = tiles(drawing, paper);
    return pages.map(({ items, column, row, rows }): Unnumbered => {
      const place = rows > 1 ? `${row + 1}.${column + 1}` : `${column + 1}`;
      const of = pages.length > 1 ? `, page ${place} of ${pages.length}` : "";
      return {
        titles: {
          part,
          about: `${count === 1 ? "its outline to saw to" : `${count} as they lie in each other`}${of}`,
          ...FULL_SIZE,
        },
        items,
        page: { name: `${part} ${count} ${place}`, fullSize: true },
      };
    });
  });
  return made.length > 0 ? [checkPage(), ...made] : [];
}

/** The first of the full-size pages. */
function checkPage(): Unnumbered {
  const sentences = [
    "The pages that follow are true only at full size. Print this one first, at 100 % (“actual size”), and measure the square both ways with a steel rule.",
    "Each shows curved parts as they lie in each other on a board, planing allowed for, a saw cut apart. Lay the printed outline on the board with its long side along the grain.",
  ];
  const text = paragraphs(sentences, 120, BODY);
  return {
    titles: { part: "Full-size pages: check first", about: "outlines of curved parts", ...FULL_SIZE },
    items: [...checkSquare([4, 4]), ...text.items.map((item) => moved(item, 118, 4 + LINE - SMALL / 4))],
    page: { name: "check", fullSize: true },
  };
}
