/**
 * The ways to cut some pieces of one stock line, or one match, out of one rectangle of a board.
 */
import type { Allowances } from "./allowances.ts";
import { type Hides, hidesLaid } from "./hidden.ts";
import { nestOf } from "./nest.ts";
import { moved, ringOf, type Spot, type Way } from "./outline.ts";
import type { StockLine } from "./stock.ts";

/** A piece as cut, before planing, from the lower left near corner of what holds it, mm. */
export interface CutPiece {
  /** Index of its stock line. */
  line: number;
  x: number;
  y: number;
  z: number;
  long: number;
  wide: number;
  thick: number;
  /** Its outline is turned or turned over against the one beside it. */
  turned: boolean;
  outline?: Spot[];
  /** Where a defect may lie in it, as it lies itself. */
  hides?: Hides;
}

/** A rectangle of a board and the pieces it holds; the first ones are cut where not all are needed. */
export interface Cell {
  /** Index of what is needed. */
  wanted: number;
  long: number;
  wide: number;
  pieces: CutPiece[];
  /** How many of what is needed it holds. */
  count: number;
  /** Its pieces lie in each other, so that they take less together than apart. */
  nested?: true;
}

/** Something to be cut, a number of times. */
export interface Wanted {
  /** Of each time: which stock lines' pieces; several for a match. */
  lines: { line: number; stock: StockLine }[];
  laid?: "side by side" | "end to end";
  number: number;
  /** Names of the boards it may come from; absent: any of its timber. */
  only?: ReadonlySet<string>;
}

/** How many of a line lie over each other in one thickness, resawn: the whole board where only one does. */
const layersOf = (thick: number, board: number, saw: number): number =>
  thick > board + 1e-9 ? 0 : Math.max(1, Math.floor((board + saw + 1e-9) / (thick + saw)));

/** Most curved parts nested in one row. */
const MOST_NESTED = 12;

/** Every way to cut what is needed from a board so thick, so long and so wide. Empty where it does not fit. */
export function cellsOf(
  wanted: Wanted,
  index: number,
  room: { long: number; wide: number; thick: number },
  allowances: Allowances,
): Cell[] {
  if (wanted.laid !== undefined) return matched(wanted, index, room, allowances);
  const [{ line, stock }] = wanted.lines as [Wanted["lines"][number]];
  const { saw } = allowances;
  const { blank, outline } = stock;
  const layers = layersOf(blank.thick, room.thick, saw);
  if (layers === 0) return [];
  const cells: Cell[] = [];
  for (let count = 1; count <= Math.min(MOST_NESTED, wanted.number); count++) {
    const nest = outline && nestOf(outline, count, saw);
    const wide = nest?.wide ?? count * blank.wide + (count - 1) * saw;
    const long = nest?.long ?? blank.long;
    if (wide > room.wide + 1e-9 || long > room.long + 1e-9) break;
    const plan = Array.from({ length: count }, (_, k): Omit<CutPiece, "z" | "thick"> => {
      const piece = nest?.pieces[k];
      if (!piece) {
        const { long: own, wide: across } = blank;
        return {
          line,
          x: 0,
          y: k * (across + saw),
          long: own,
          wide: across,
          turned: false,
          ...hiding(stock),
        };
      }
      const box = boxed(ringOf(piece.outline));
      return { line, ...box, turned: piece.way !== "as it is", ...hiding(stock, piece.way, box.long) };
    });
    cells.push({
      wanted: index,
      long,
      wide,
      count: count * layers,
      ...(nest && { nested: true as const }),
      pieces: plan.flatMap((piece) => stacked(piece, layers, blank.thick, room.thick, saw)),
    });
  }
  return cells;
}

/** What of a piece is hidden, laid this way. */
function hiding({ hides }: StockLine, way: Way = "as it is", long = 0): Pick<CutPiece, "hides"> {
  if (!hides) return {};
  const ends = way === "half round" || way === "end for end";
  const edges = way === "half round" || way === "edge for edge";
  return { hides: hidesLaid(hides, long, { ends, edges }) };
}

/** Of a board resawn no layer is known to have the defect at its face. */
function resawn({ hides, ...piece }: Omit<CutPiece, "z" | "thick">): Omit<CutPiece, "z" | "thick"> {
  const { flat: _, ...edges } = hides ?? { joints: [], firstEnd: "" };
  return edges.low || edges.high ? { ...piece, hides: edges } : piece;
}

/** A piece once for each of the layers that a board is resawn to; a lone one keeps the board's thickness until it is planed. */
function stacked(
  piece: Omit<CutPiece, "z" | "thick">,
  layers: number,
  thick: number,
  board: number,
  saw: number,
): CutPiece[] {
  if (layers === 1) return [{ ...piece, z: 0, thick: board }];
  return Array.from({ length: layers }, (_, k) => ({ ...resawn(piece), z: k * (thick + saw), thick }));
}

/** The box around an outline, and the outline. */
function boxed(outline: Spot[]): {
  x: number;
  y: number;
  long: number;
  wide: number;
  outline: Spot[];
} {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, long: Math.max(...xs) - x, wide: Math.max(...ys) - y, outline };
}

/** One set of matched pieces: side by side across the board, or end to end along it; equal thin ones opened like a book. */
function matched(
  { lines, laid }: Wanted,
  index: number,
  room: { long: number; wide: number; thick: number },
  { saw }: Allowances,
): Cell[] {
  if (lines.some(({ stock }) => stock.blank.thick > room.thick + 1e-9)) return [];
  const cells: Cell[] = [];
  const put = (long: number, wide: number, pieces: CutPiece[]) => {
    if (long <= room.long + 1e-9 && wide <= room.wide + 1e-9)
      cells.push({ wanted: index, long, wide, pieces, count: 1 });
  };
  let at = 0;
  const flat = lines.map(({ line, stock }): CutPiece => {
    const { long, wide } = stock.blank;
    const [x, y] = laid === "end to end" ? [at, 0] : [0, at];
    at += (laid === "end to end" ? long : wide) + saw;
    const outline = stock.outline && ringOf(moved(stock.outline, x, y));
    const box = { line, x, y, z: 0, long, wide, thick: room.thick, turned: false };
    return { ...box, ...(outline && { outline }), ...hiding(stock) };
  });
  const reach = (pick: "long" | "wide") => Math.max(...flat.map((piece) => piece[pick]));
  if (laid === "end to end") put(at - saw, reach("wide"), flat);
  else put(reach("long"), at - saw, flat);
  const [first] = lines;
  const same = lines.every(({ line }) => line === first?.line);
  if (first && same && lines.length === 2 && layersOf(first.stock.blank.thick, room.thick, saw) >= 2) {
    const { long, wide, thick } = first.stock.blank;
    const book = [0, 1].map(
      (k): CutPiece => ({ ...resawn(flat[0]!), x: 0, y: 0, z: k * (thick + saw), thick }),
    );
    put(long, wide, book);
  }
  return cells;
}

/** The pieces of a cell that are needed. */
export const piecesUsed = (pieces: readonly CutPiece[], count: number, used: number): CutPiece[] =>
  pieces.slice(0, Math.round((pieces.length * used) / count));
