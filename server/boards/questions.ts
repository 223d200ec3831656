/**
 * Questions that the rules ask of the boards, quick enough for every keystroke: they go by the stock list, not by a plan.
 */
import type { Chair } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { cellsOf, type Wanted } from "./cells.ts";
import { type Stock, stockList, wantedOf } from "./plan.ts";
import { mayUse } from "./planner.ts";
import type { StockLine } from "./stock.ts";
import type { WoodBoard } from "./wood.ts";

/** The stock list of a chair, worked out once. */
export const stockFor = (chair: Chair): Stock => kept(chair, stockList);

/** A line that no board or yard of its timber is big enough for, and the measure that is too small everywhere it would else fit. */
interface TooBig {
  line: StockLine;
  measure: "thick" | "wide" | "long";
  needs: number;
  /** The most that there is. */
  most: number;
}

export function linesTooBig({ lines, wood }: Stock): TooBig[] {
  return lines.flatMap((line): TooBig[] => {
    const own = wood.filter((board) => ofTimber(board, line));
    if (own.length === 0 || own.some((board) => fits(line, board))) return [];
    const { blank } = line;
    const thick = own.filter((board) => board.thick >= blank.thick - 1e-9);
    if (thick.length === 0) return [tooBig(line, "thick", Math.max(...own.map((board) => board.thick)))];
    const wide = thick.filter((board) => board.clear.wide >= blank.wide - 1e-9);
    if (wide.length === 0) return [tooBig(line, "wide", Math.max(...thick.map(({ clear }) => clear.wide)))];
    return [tooBig(line, "long", Math.max(...wide.map(({ clear }) => clear.long)))];
  });
}

const tooBig = (line: StockLine, measure: TooBig["measure"], most: number): TooBig => ({
  line,
  measure,
  needs: line.blank[measure],
  most,
});

export const ofTimber = (board: WoodBoard, line: StockLine): boolean =>
  !line.timber || !board.timber || line.timber.species === board.timber.species;

const fits = ({ blank }: StockLine, { thick, clear }: WoodBoard): boolean =>
  blank.thick <= thick + 1e-9 && blank.wide <= clear.wide + 1e-9 && blank.long <= clear.long + 1e-9;

/** A matched set without room: `boards` are those of its name and of the timber of all its parts; without any, `named` is of another. */
interface WithoutRoom {
  match: number;
  wanted: Wanted;
  boards: WoodBoard[];
  named?: WoodBoard;
}

/** Matched sets that no board they name has room for, by their place among the file's matches. */
export function matchesWithoutRoom(chair: Chair): WithoutRoom[] {
  const stock = stockFor(chair);
  return chair.design.matches.flatMap((match, k): WithoutRoom[] => {
    const wanted = wantedOf(stock, [match]).find(({ laid }) => laid !== undefined);
    if (!wanted) return [];
    const boards = stock.wood.filter((board) => mayUse(wanted, board));
    const roomy = boards.some((board) => {
      const room = { long: board.clear.long, wide: board.clear.wide, thick: board.thick };
      return cellsOf(wanted, 0, room, stock.allowances).length > 0;
    });
    const named = stock.wood.find(({ names }) => names.some((name) => wanted.only?.has(name)));
    if (roomy || !named) return [];
    return [{ match: k, wanted, boards, ...(boards.length === 0 && { named }) }];
  });
}
