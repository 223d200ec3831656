/**
 * Filling one strip of a board, as wide as its widest cell, with cells end to end: a knapsack along each clear stretch.
 */
import type { Cell } from "./cells.ts";

/** A cell at a place along a strip. */
export interface Placed {
  cell: Cell;
  x: number;
  /** How many of its pieces are needed. */
  used: number;
}

export interface Filled {
  placed: Placed[];
  /** Sum of what the cells are worth. */
  worth: number;
  /** What is left of each stretch, from x. */
  rests: { x: number; long: number }[];
}

export interface Stretch {
  x: number;
  long: number;
}

/** What filling asks: what a cell with so many of its pieces needed is worth, and what a leftover costs. */
export interface Prices {
  worth: (cell: Cell, used: number) => number;
  loss: (rest: number) => number;
  /** What has been filled before at these prices, by the strip's width, the length and what is left. */
  known: Map<string, Chosen>;
  wide: number;
}

/**
 * Fills the stretches with the cells given, none wider than the strip, no more of anything than `left` says (by what is needed; changed
 * as it goes). `saw` lies between cells.
 */
export function fillStrip(
  stretches: readonly Stretch[],
  cells: readonly Cell[],
  left: number[],
  saw: number,
  prices: Prices,
): Filled {
  const filled: Filled = { placed: [], worth: 0, rests: [] };
  const inOrder = stretches
    .map((stretch, k) => ({ stretch, k }))
    .sort((a, b) => b.stretch.long - a.stretch.long || a.k - b.k);
  for (const { stretch } of inOrder) {
    const chosen = chosenFor(stretch.long, cells, left, saw, prices);
    let x = stretch.x;
    for (const { cell, used } of chosen.cells) {
      filled.placed.push({ cell, x, used });
      left[cell.wanted]! -= used;
      x += cell.long + saw;
    }
    filled.worth += chosen.worth;
    const rest = stretch.x + stretch.long - x;
    if (rest > 0) filled.rests.push({ x, long: rest });
  }
  return filled;
}

/** The best cells for a length. */
export function chosenFor(
  long: number,
  cells: readonly Cell[],
  left: readonly number[],
  saw: number,
  prices: Prices,
): Chosen {
  const key = keyOf(long, cells, left, saw, prices.wide);
  let chosen = prices.known.get(key);
  if (!chosen) {
    chosen = best(long, cells, left, saw, prices);
    prices.known.set(key, chosen);
  }
  return chosen;
}

/** The same length and width with as much left as it could use is filled the same way. */
function keyOf(
  long: number,
  cells: readonly Cell[],
  left: readonly number[],
  saw: number,
  wide: number,
): string {
  let key = `${wide} ${long.toFixed(2)}`;
  let last = -1;
  let most = 0;
  for (const cell of cells) {
    if (cell.wanted !== last) {
      if (last >= 0) key += `,${last}:${Math.min(left[last]!, most)}`;
      last = cell.wanted;
      most = 0;
    }
    most = Math.max(most, cell.count * Math.floor((long + saw) / (cell.long + saw)));
  }
  return last >= 0 ? `${key},${last}:${Math.min(left[last]!, most)}` : key;
}

export interface Chosen {
  cells: { cell: Cell; used: number }[];
  worth: number;
}

/** Some cells of the kinds looked at so far: none that is shorter is worth as much. */
interface Row {
  size: number;
  worth: number;
  before?: Row;
  cell?: Cell;
  many: number;
}

/** Lengths nearer than this are one, mm. */
const NEAR = 1e-6;

/** The best cells for a length: each kind as often as what is left wants, longest first. */
function best(
  long: number,
  cells: readonly Cell[],
  left: readonly number[],
  saw: number,
  prices: Prices,
): Chosen {
  const room = long + saw + NEAR;
  let rows: Row[] = [{ size: 0, worth: 0, many: 0 }];
  const byWanted = new Map<number, Cell[]>();
  for (const cell of cells) byWanted.set(cell.wanted, [...(byWanted.get(cell.wanted) ?? []), cell]);
  for (const [wanted, group] of byWanted) {
    // Of one thing wanted the cell that holds most is taken, and where fewer are left, the least that holds them.
    const there = left[wanted]!;
    if (there <= 0) continue;
    const cell = group.reduce((a, b) => (pick(b, there) > pick(a, there) ? b : a));
    const size = cell.long + saw;
    const most = Math.min(Math.ceil(there / cell.count), Math.floor(room / size));
    if (most === 0) continue;
    const full = prices.worth(cell, Math.min(cell.count, there));
    const all = [...rows];
    for (let many = 1; many <= most; many++) {
      const used = Math.min(there, many * cell.count);
      const part = used % cell.count;
      const gain = full * Math.floor(used / cell.count) + (part ? prices.worth(cell, part) : 0);
      for (const row of rows) {
        const sum = row.size + many * size;
        if (sum > room) break;
        all.push({ size: sum, worth: row.worth + gain, before: row, cell, many });
      }
    }
    rows = bestOfEach(all);
  }
  let top = rows[0]!;
  const value = (row: Row) => row.worth - prices.loss(long + saw - row.size);
  for (const row of rows) if (value(row) > value(top) + 1e-9) top = row;
  const chosen: Chosen = { cells: [], worth: top.worth };
  for (let row: Row | undefined = top; row; row = row.before) {
    if (!row.cell) continue;
    let there = left[row.cell.wanted]!;
    for (let n = 0; n < row.many; n++) {
      const used = Math.min(row.cell.count, there);
      chosen.cells.push({ cell: row.cell, used });
      there -= used;
    }
  }
  chosen.cells.reverse();
  return chosen;
}

/** Those that none beats by being as short and worth as much, by size. */
function bestOfEach(rows: Row[]): Row[] {
  rows.sort((a, b) => a.size - b.size || b.worth - a.worth);
  const kept: Row[] = [];
  let worth = Number.NEGATIVE_INFINITY;
  for (const row of rows) {
    if (row.worth <= worth + 1e-9) continue;
    kept.push(row);
    worth = row.worth;
  }
  return kept;
}

/** How well a cell uses what is left: the most pieces for its room. */
const pick = (cell: Cell, left: number): number => Math.min(cell.count, left) * 1e6 - cell.wide;
