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

/** Lengths are filled in steps of this, mm, rounded up. */
const STEP = 1;

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

/** The best cells for a length: each kind as often as what is left wants, longest first. */
function best(
  long: number,
  cells: readonly Cell[],
  left: readonly number[],
  saw: number,
  prices: Prices,
): Chosen {
  const room = Math.floor((long + saw) / STEP + 1e-6);
  let worth = new Float64Array(room + 1).fill(Number.NEGATIVE_INFINITY);
  worth[0] = 0;
  const kinds: { cell: Cell; size: number; took: Uint8Array }[] = [];
  const byWanted = new Map<number, Cell[]>();
  for (const cell of cells) byWanted.set(cell.wanted, [...(byWanted.get(cell.wanted) ?? []), cell]);
  for (const [wanted, group] of byWanted) {
    // Of one thing wanted the cell that holds most is taken, and where fewer are left, the least that holds them.
    const there = left[wanted]!;
    if (there <= 0) continue;
    const cell = group.reduce((a, b) => (pick(b, there) > pick(a, there) ? b : a));
    const size = Math.ceil((cell.long + saw) / STEP - 1e-6);
    const most = Math.min(Math.ceil(there / cell.count), Math.floor(room / size), 255);
    if (most === 0) continue;
    const took = new Uint8Array(room + 1);
    const next = worth.slice();
    for (let many = 1; many <= most; many++) {
      const used = Math.min(there, many * cell.count);
      const gain =
        prices.worth(cell, Math.min(cell.count, there)) * Math.floor(used / cell.count) +
        (used % cell.count ? prices.worth(cell, used % cell.count) : 0);
      for (let at = many * size; at <= room; at++) {
        const value = worth[at - many * size]! + gain;
        if (value > next[at]! + 1e-9) {
          next[at] = value;
          took[at] = many;
        }
      }
    }
    worth = next;
    kinds.push({ cell, size, took });
  }
  let at = 0;
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= room; k++) {
    if (worth[k] === Number.NEGATIVE_INFINITY) continue;
    const value = worth[k]! - prices.loss(long + saw - k * STEP);
    if (value > top + 1e-9) {
      top = value;
      at = k;
    }
  }
  const chosen: Chosen = { cells: [], worth: worth[at]! };
  for (let k = kinds.length - 1; k >= 0; k--) {
    const { cell, size, took } = kinds[k]!;
    const many = took[at]!;
    let there = left[cell.wanted]!;
    for (let n = 0; n < many; n++) {
      const used = Math.min(cell.count, there);
      chosen.cells.push({ cell, used });
      there -= used;
    }
    at -= many * size;
  }
  chosen.cells.reverse();
  return chosen;
}

/** How well a cell uses what is left: the most pieces for its room. */
const pick = (cell: Cell, left: number): number => Math.min(cell.count, left) * 1e6 - cell.wide;
