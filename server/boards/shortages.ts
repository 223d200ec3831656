/**
 * Where the boards to hand are too few, and by how much: told from the stock list alone, quick enough for every keystroke.
 */
import type { Allowances } from "./allowances.ts";
import { cellsOf, type Wanted } from "./cells.ts";
import { type Stock, wantedOf } from "./plan.ts";
import { mayUse } from "./planner.ts";
import { ofTimber } from "./questions.ts";
import { type StockLine, volumeOf } from "./stock.ts";
import type { WoodBoard } from "./wood.ts";

/** Wood that is lacking, as a length of board of the width and thickness of those to hand, mm. */
interface Lacking {
  long: number;
  wide: number;
  thick: number;
}

/** Of one thickness of board the blanks that are sawn from it take more than there is, mm³. */
export interface ThicknessShort {
  is: "thickness";
  species?: string;
  needed: number;
  there: number;
  lines: StockLine[];
  lacking: Lacking;
}

/** Not so many of one part come out of the boards it may come from, however they are sawn. */
export interface PartShort {
  is: "part";
  line: StockLine;
  number: number;
  there: number;
  /** The boards it is pinned to. */
  only?: string;
  lacking: Lacking;
}

export type Shortage = ThicknessShort | PartShort;

/** Parts that fall short by themselves, then thicknesses that do, thickest first. */
export function shortagesOf(stock: Stock): Shortage[] {
  const parts = partsShort(stock);
  const told = new Set(parts.map(({ line }) => line));
  return [...parts, ...thicknessesShort(stock).filter(({ lines }) => !lines.some((line) => told.has(line)))];
}

function partsShort(stock: Stock): PartShort[] {
  return wantedOf(stock, []).flatMap((wanted, k): PartShort[] => {
    const line = wanted.lines[0]!.stock;
    const boards = stock.wood.filter((board) => mayUse(wanted, board));
    if (boards.length === 0 || boards.some(({ from }) => from !== "hand")) return [];
    const most = boards.map((board) => ({ board, ...mostOf(wanted, k, board, stock.allowances) }));
    const there = most.reduce((sum, { board, number }) => sum + number * usable(wanted, board), 0);
    // Where none comes out of any board that is asked for at the part's size.
    if (there === 0 || there >= wanted.number) return [];
    const best = most.reduce((a, b) => (b.number > a.number ? b : a));
    const rows = Math.ceil((wanted.number - there) / best.across);
    const { wide, thick, source } = best.board;
    return [
      {
        is: "part",
        line,
        number: wanted.number,
        there,
        ...(wanted.only && { only: source }),
        lacking: { long: rows * (best.long + stock.allowances.saw), wide, thick },
      },
    ];
  });
}

/** How many of its boards a thing may come from. */
const usable = ({ only }: Wanted, { names }: WoodBoard): number =>
  names.filter((name) => !only || only.has(name)).length;

/** The most that come out of one board: no more lie across it than fit, nor along it. */
function mostOf(
  wanted: Wanted,
  index: number,
  { clear, thick }: WoodBoard,
  allowances: Allowances,
): { number: number; across: number; long: number } {
  const cells = cellsOf(wanted, index, { long: clear.long, wide: clear.wide, thick }, allowances);
  if (cells.length === 0) return { number: 0, across: 1, long: 0 };
  const across = Math.max(...cells.map(({ count }) => count));
  const long = Math.min(...cells.map((cell) => cell.long));
  const { saw } = allowances;
  return { number: across * Math.floor((clear.long + saw + 1e-9) / (long + saw)), across, long };
}

/** What is left of thicker boards serves thinner blanks. */
function thicknessesShort({ lines, wood }: Stock): ThicknessShort[] {
  const species = [...new Set(lines.map(({ timber }) => timber?.species))];
  return species.flatMap((timber): ThicknessShort[] => {
    const own = lines.filter((line) => line.timber?.species === timber && line.sawn !== undefined);
    const boards = wood.filter((board) => own.some((line) => ofTimber(board, line)));
    if (boards.length === 0 || boards.some(({ from }) => from !== "hand")) return [];
    const thicks = [...new Set(boards.map(({ thick }) => thick))].sort((a, b) => b - a);
    let spare = 0;
    return thicks.flatMap((thick): ThicknessShort[] => {
      const some = own.filter(({ sawn }) => sawn === thick);
      const needed = some.reduce((sum, line) => sum + volumeOf(line), 0);
      const those = boards.filter((board) => board.thick === thick);
      const there = those.reduce((sum, board) => sum + clearVolume(board), 0) + spare;
      spare = Math.max(0, there - needed);
      if (needed <= there) return [];
      const wide = Math.max(...those.map((board) => board.wide));
      const clear = Math.max(...those.map((board) => board.clear.wide));
      return [
        {
          is: "thickness",
          ...(timber !== undefined && { species: timber }),
          needed,
          there,
          lines: some,
          lacking: { long: (needed - there) / (thick * clear), wide, thick },
        },
      ];
    });
  });
}

const clearVolume = ({ clear, thick, count }: WoodBoard): number => clear.long * clear.wide * thick * count;
