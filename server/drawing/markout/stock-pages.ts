/**
 * The stock that the parts are made from: the blank of each, and all of them by thickness and timber.
 */
import { stockFor } from "../../boards/questions.ts";
import type { Chair } from "../../chair/chair.ts";
import { printLength } from "../../design/units.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import { kindOf, stockSums, stockTable } from "../boards/words.ts";
import { inLargestType } from "./larger-type.ts";
import { moved } from "./page.ts";
import type { Paper } from "./paper.ts";
import { roomOn, type Unnumbered } from "./sheet-page.ts";
import { paragraphs, tableBlock } from "./table.ts";

/** A piece with the blank that its first part is planed from; as it is where the stock list has none for it. */
export function withBlank(chair: Chair, piece: Piece): Piece {
  const { lines } = stockFor(chair);
  const line = lines.find(({ members }) => members.includes(piece.parts[0]!.name));
  if (!line) return piece;
  const { blank, sawn } = line;
  const staves = line.glued > 0 ? line.members.length : 1;
  const kind = kindOf(line);
  return {
    ...piece,
    // Ends are sawn to length: the sheet's own length, in its figures, is the one to keep.
    blank: {
      ...blank,
      long: Math.max(blank.long, piece.size.long),
      staves,
      ...(sawn !== undefined && { sawn }),
      ...(kind && { kind }),
    },
  };
}

/** Rows on one page. */
const ROWS = 33;
const GAP = 5;

/** All blanks by thickness, with the sums of each thickness and timber; no page for a chair of which nothing is sawn. */
export const stockPages = (chair: Chair, paper: Paper): Unnumbered[] =>
  inLargestType(roomOn(paper), ({ wide }) => laid(chair, wide));

function laid(chair: Chair, wide: number): Unnumbered[] {
  const stock = stockFor(chair);
  const { units } = chair.design;
  const { headings, rows } = stockTable(stock, units);
  return Array.from({ length: Math.ceil(rows.length / ROWS) }, (_, page): Unnumbered => {
    const table = tableBlock("", headings, rows.slice(page * ROWS, (page + 1) * ROWS), wide);
    const isLast = (page + 1) * ROWS >= rows.length;
    const foot = isLast ? paragraphs([...stockSums(stock, units), allowed(chair)], wide).items : [];
    return {
      titles: {
        part: page > 0 ? "Stock, continued" : "Stock",
        about: stock.make === 1 ? "for one chair" : `for ${stock.make} chairs`,
        scale: "Thickness × width × length; the grain runs along the length.",
        caution:
          "Look at each board before you cut, and leave out what is not sound.\nSaws and planers hurt: work with guards, and by the maker's instructions.",
      },
      items: [...table.items, ...foot.map((item) => moved(item, 0, table.height + GAP))],
      page: { name: page > 0 ? `stock ${page + 1}` : "stock" },
    };
  });
}

function allowed(chair: Chair): string {
  const { plane, ends, saw } = stockFor(chair).allowances;
  const print = (mm: number) => printLength(mm, chair.design.units);
  return `Allowed: ${print(plane)} off each face and each edge in planing, ${print(saw)} for each cut, ${print(ends)} off each end of a board.`;
}
