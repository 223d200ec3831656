/**
 * Questions that the rules ask of the boards, quick enough for every keystroke: they go by the stock list, not by a plan.
 */
import type { Chair } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { cellsOf, type Wanted } from "./cells.ts";
import { type Stock, stockList, wantedOf } from "./plan.ts";
import { mayUse } from "./planner.ts";
import { type StockLine, volumeOf } from "./stock.ts";
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

const ofTimber = (board: WoodBoard, line: StockLine): boolean =>
  !line.timber || !board.timber || line.timber.species === board.timber.species;

const fits = ({ blank }: StockLine, { thick, clear }: WoodBoard): boolean =>
  blank.thick <= thick + 1e-9 && blank.wide <= clear.wide + 1e-9 && blank.long <= clear.long + 1e-9;

/** Matched sets that no board they name has room for, by their place among the file's matches. */
export function matchesWithoutRoom(chair: Chair): { match: number; wanted: Wanted; boards: WoodBoard[] }[] {
  const stock = stockFor(chair);
  return chair.design.matches.flatMap((match, k) => {
    const wanted = wantedOf(stock, [match]).find(({ laid }) => laid !== undefined);
    if (!wanted) return [];
    const boards = stock.wood.filter((board) => mayUse(wanted, board));
    const roomy = boards.some((board) => {
      const room = { long: board.clear.long, wide: board.clear.wide, thick: board.thick };
      return cellsOf(wanted, 0, room, stock.allowances).length > 0;
    });
    return roomy || boards.length === 0 ? [] : [{ match: k, wanted, boards }];
  });
}

/** Wood that runs short: the thickness from which it does, what is needed and what there is, mm³. */
interface Shortage {
  thick: number;
  species?: string;
  needed: number;
  there: number;
  lines: StockLine[];
}

/** Where only boards to hand are given: what their clear wood, less the defects, falls short of the blanks, from some thickness up. */
export function shortagesOf({ lines, wood }: Stock): Shortage[] {
  const species = [...new Set(lines.map(({ timber }) => timber?.species))];
  return species.flatMap((timber): Shortage[] => {
    const own = lines.filter((line) => line.timber?.species === timber);
    const boards = wood.filter((board) => own.some((line) => ofTimber(board, line)));
    if (boards.length === 0 || boards.some(({ from }) => from !== "hand")) return [];
    const thicks = [...new Set(own.map(({ blank }) => blank.thick))].sort((a, b) => b - a);
    const shortages = thicks.flatMap((thick): Shortage[] => {
      const some = own.filter(({ blank }) => blank.thick >= thick - 1e-9);
      const needed = some.reduce((sum, line) => sum + volumeOf(line), 0);
      const there = boards
        .filter((board) => board.thick >= thick - 1e-9)
        .reduce((sum, board) => sum + clearVolume(board), 0);
      // Where no board is so thick that is said of the part.
      return needed > there && there > 0
        ? [{ thick, needed, there, lines: some, ...(timber !== undefined && { species: timber }) }]
        : [];
    });
    shortages.sort((a, b) => b.needed - b.there - (a.needed - a.there));
    return shortages.slice(0, 1);
  });
}

function clearVolume({ clear, thick, count }: WoodBoard): number {
  return clear.long * clear.wide * thick * count;
}
