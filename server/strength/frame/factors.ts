/**
 * A frame's stiffness factored block by block, six unknowns a node (L·D·Lᵀ): all nodes but those that are kept are taken out, and what is
 * left is how the kept ones resist each other (static condensation, any text on matrix analysis of frames).
 */
import { blocksOf, type Element } from "./element.ts";
import type { Plan } from "./plan.ts";

const SIX = 6;
const BLOCK = 36;

/** The matrix could not be factored: what this unknown belongs to is loose. */
export class Loose extends Error {
  readonly unknown: number;
  constructor(unknown: number) {
    super(`unknown ${unknown} is loose`);
    this.unknown = unknown;
  }
}

/** A pivot that has shrunk to this part of what stood there is zero but for rounding. */
const LOOSE = 1e-11;

export interface Factors {
  plan: Plan;
  /** Below the diagonal, rows of the later node; and the inverse of each diagonal block, 0 where an unknown is held for good. */
  below: Float64Array;
  inverse: Float64Array;
  /** How the kept nodes resist, row by row, six unknowns a node. */
  stiffness: Float64Array;
}

/** Factors a frame; `fixed` says which unknowns never move. Throws `Loose` where a pivot vanishes. */
export function factorsOf(elements: readonly Element[], plan: Plan, fixed: Uint8Array): Factors {
  const { order, taken, later, earlier, start } = plan;
  const count = order.length;
  const below = new Float64Array(plan.blocks * BLOCK);
  const diagonal = new Float64Array(count * BLOCK);
  const inverse = new Float64Array(taken * BLOCK);
  /** Where the column at hand keeps the block of each place. */
  const where = new Int32Array(count);
  assemble(elements, plan, below, diagonal);
  const swept = new Float64Array(BLOCK);
  for (let column = 0; column < count; column++) {
    const rows = later[column] as Int32Array;
    const first = start[column] as number;
    for (let k = 0; k < rows.length; k++) where[rows[k] as number] = first + k;
    const own = diagonal.slice(column * BLOCK, column * BLOCK + BLOCK);
    for (const from of earlier[column] as Int32Array) {
      if (from >= taken) break;
      const theirs = later[from] as Int32Array;
      const base = start[from] as number;
      let k = theirs.indexOf(column);
      // What the earlier node passes on: its block here, through its inverse.
      timesTransposed(inverse, from * BLOCK, below, (base + k) * BLOCK, swept);
      takeOff(below, (base + k) * BLOCK, swept, diagonal, column * BLOCK);
      for (k++; k < theirs.length; k++)
        takeOff(below, (base + k) * BLOCK, swept, below, (where[theirs[k] as number] as number) * BLOCK);
    }
    if (column < taken)
      invert(diagonal, column * BLOCK, { own, inverse, fixed, node: order[column] as number });
  }
  return { plan, below, inverse, stiffness: keptOf(plan, diagonal, below) };
}

/** Puts each element's blocks in their places. */
function assemble(
  elements: readonly Element[],
  { place, later, start }: Plan,
  below: Float64Array,
  diagonal: Float64Array,
): void {
  for (const element of elements) {
    const { first, second, between } = blocksOf(element);
    const [a, b] = [place[element.from] as number, place[element.to] as number];
    for (let k = 0; k < BLOCK; k++) {
      diagonal[a * BLOCK + k] = (diagonal[a * BLOCK + k] as number) + (first[k] as number);
      diagonal[b * BLOCK + k] = (diagonal[b * BLOCK + k] as number) + (second[k] as number);
    }
    if (a === b) continue;
    const column = Math.min(a, b);
    const tied = (later[column] as Int32Array).indexOf(Math.max(a, b));
    // One of the two is held for good in every way.
    if (tied < 0) continue;
    const at = (start[column] as number) + tied;
    for (let r = 0; r < SIX; r++)
      for (let c = 0; c < SIX; c++) {
        const to = at * BLOCK + (a < b ? r * SIX + c : c * SIX + r);
        below[to] = (below[to] as number) + (between[r * SIX + c] as number);
      }
  }
}

/** into = A · Bᵀ. */
function timesTransposed(A: Float64Array, a: number, B: Float64Array, b: number, into: Float64Array): void {
  for (let r = 0; r < SIX; r++) {
    const row = a + r * SIX;
    const [a0, a1, a2] = [A[row] as number, A[row + 1] as number, A[row + 2] as number];
    const [a3, a4, a5] = [A[row + 3] as number, A[row + 4] as number, A[row + 5] as number];
    for (let c = 0; c < SIX; c++) {
      const other = b + c * SIX;
      into[r * SIX + c] =
        a0 * (B[other] as number) +
        a1 * (B[other + 1] as number) +
        a2 * (B[other + 2] as number) +
        a3 * (B[other + 3] as number) +
        a4 * (B[other + 4] as number) +
        a5 * (B[other + 5] as number);
    }
  }
}

/** into −= A · B. */
function takeOff(A: Float64Array, a: number, B: Float64Array, into: Float64Array, at: number): void {
  for (let c = 0; c < SIX; c++) {
    const [b0, b1, b2] = [B[c] as number, B[c + 6] as number, B[c + 12] as number];
    const [b3, b4, b5] = [B[c + 18] as number, B[c + 24] as number, B[c + 30] as number];
    for (let r = 0; r < SIX; r++) {
      const row = a + r * SIX;
      const to = at + r * SIX + c;
      into[to] =
        (into[to] as number) -
        ((A[row] as number) * b0 +
          (A[row + 1] as number) * b1 +
          (A[row + 2] as number) * b2 +
          (A[row + 3] as number) * b3 +
          (A[row + 4] as number) * b4 +
          (A[row + 5] as number) * b5);
    }
  }
}

/** Inverts a diagonal block over the unknowns that may move; `own` is what stood there before anything was taken off. */
function invert(
  from: Float64Array,
  at: number,
  {
    own,
    inverse,
    fixed,
    node,
  }: { own: Float64Array; inverse: Float64Array; fixed: Uint8Array; node: number },
): void {
  // The lower factor and the pivots, in a copy; an unknown that is fixed stands by itself.
  const L = from.slice(at, at + BLOCK);
  for (let j = 0; j < SIX; j++) {
    if (!fixed[node * SIX + j]) continue;
    for (let k = 0; k < SIX; k++) L[j * SIX + k] = L[k * SIX + j] = 0;
    L[j * SIX + j] = 1;
  }
  for (let j = 0; j < SIX; j++) {
    for (let k = 0; k < j; k++) {
      const share = (L[j * SIX + k] as number) * (L[k * SIX + k] as number);
      for (let i = j; i < SIX; i++)
        L[i * SIX + j] = (L[i * SIX + j] as number) - (L[i * SIX + k] as number) * share;
    }
    const pivot = L[j * SIX + j] as number;
    if (!fixed[node * SIX + j] && !(pivot > LOOSE * (own[j * SIX + j] as number)))
      throw new Loose(node * SIX + j);
    for (let i = j + 1; i < SIX; i++) L[i * SIX + j] = (L[i * SIX + j] as number) / pivot;
  }
  for (let column = 0; column < SIX; column++) {
    if (fixed[node * SIX + column]) continue;
    unit.fill(0);
    unit[column] = 1;
    for (let j = 0; j < SIX; j++)
      for (let i = j + 1; i < SIX; i++)
        unit[i] = (unit[i] as number) - (L[i * SIX + j] as number) * (unit[j] as number);
    for (let j = 0; j < SIX; j++) unit[j] = (unit[j] as number) / (L[j * SIX + j] as number);
    for (let j = SIX - 1; j >= 0; j--)
      for (let i = j + 1; i < SIX; i++)
        unit[j] = (unit[j] as number) - (L[i * SIX + j] as number) * (unit[i] as number);
    for (let row = 0; row < SIX; row++) inverse[at + row * SIX + column] = unit[row] as number;
  }
}

const unit = new Float64Array(SIX);

/** What the kept nodes are left with, as one square matrix. */
function keptOf(
  { order, taken, later, start }: Plan,
  diagonal: Float64Array,
  below: Float64Array,
): Float64Array {
  const kept = order.length - taken;
  const size = kept * SIX;
  const out = new Float64Array(size * size);
  const put = (row: number, column: number, from: Float64Array, at: number) => {
    for (let r = 0; r < SIX; r++)
      for (let c = 0; c < SIX; c++) {
        const value = from[at + r * SIX + c] as number;
        out[(row * SIX + r) * size + column * SIX + c] = value;
        out[(column * SIX + c) * size + row * SIX + r] = value;
      }
  };
  for (let column = taken; column < order.length; column++) {
    put(column - taken, column - taken, diagonal, column * BLOCK);
    for (const [k, row] of (later[column] as Int32Array).entries())
      put(row - taken, column - taken, below, ((start[column] as number) + k) * BLOCK);
  }
  return out;
}

/** Presses forces, one for each unknown of the frame, on the kept nodes: by place and way, those of the kept nodes last. */
export function pressed({ plan, below, inverse }: Factors, given: Float64Array): Float64Array {
  const { order, taken, later, start } = plan;
  const forces = new Float64Array(given.length);
  for (let at = 0; at < order.length; at++) {
    const node = order[at] as number;
    for (let way = 0; way < SIX; way++) forces[at * SIX + way] = given[node * SIX + way] as number;
  }
  const moved = new Float64Array(SIX);
  for (let column = 0; column < taken; column++) {
    if (!timesInverse(inverse, column, forces, moved)) continue;
    const [m0, m1, m2] = [moved[0] as number, moved[1] as number, moved[2] as number];
    const [m3, m4, m5] = [moved[3] as number, moved[4] as number, moved[5] as number];
    const rows = later[column] as Int32Array;
    let row = (start[column] as number) * BLOCK;
    for (let k = 0; k < rows.length; k++) {
      const to = (rows[k] as number) * SIX;
      for (let r = to; r < to + SIX; r++, row += SIX)
        forces[r] =
          (forces[r] as number) -
          ((below[row] as number) * m0 +
            (below[row + 1] as number) * m1 +
            (below[row + 2] as number) * m2 +
            (below[row + 3] as number) * m3 +
            (below[row + 4] as number) * m4 +
            (below[row + 5] as number) * m5);
    }
  }
  return forces;
}

/** A diagonal block's inverse times the forces at its place; whether there are any. */
function timesInverse(
  inverse: Float64Array,
  column: number,
  forces: Float64Array,
  into: Float64Array,
): boolean {
  const at = column * SIX;
  const [f0, f1, f2] = [forces[at] as number, forces[at + 1] as number, forces[at + 2] as number];
  const [f3, f4, f5] = [forces[at + 3] as number, forces[at + 4] as number, forces[at + 5] as number];
  if (f0 === 0 && f1 === 0 && f2 === 0 && f3 === 0 && f4 === 0 && f5 === 0) {
    into.fill(0);
    return false;
  }
  for (let r = 0, row = column * BLOCK; r < SIX; r++, row += SIX)
    into[r] =
      (inverse[row] as number) * f0 +
      (inverse[row + 1] as number) * f1 +
      (inverse[row + 2] as number) * f2 +
      (inverse[row + 3] as number) * f3 +
      (inverse[row + 4] as number) * f4 +
      (inverse[row + 5] as number) * f5;
  return true;
}

/** How every unknown of the frame moves under what was pressed, its kept nodes moving as given. */
export function wholeMoves(
  { plan, below, inverse }: Factors,
  forces: Float64Array,
  kept: Float64Array,
): Float64Array {
  const { order, taken, later, start } = plan;
  const left = Float64Array.from(forces);
  left.set(kept, taken * SIX);
  const moved = new Float64Array(SIX);
  for (let column = taken - 1; column >= 0; column--) {
    const rows = later[column] as Int32Array;
    const at = column * SIX;
    let [s0, s1, s2, s3, s4, s5] = [0, 0, 0, 0, 0, 0];
    let row = (start[column] as number) * BLOCK;
    for (let k = 0; k < rows.length; k++) {
      const from = (rows[k] as number) * SIX;
      for (let r = from; r < from + SIX; r++, row += SIX) {
        const by = left[r] as number;
        s0 += (below[row] as number) * by;
        s1 += (below[row + 1] as number) * by;
        s2 += (below[row + 2] as number) * by;
        s3 += (below[row + 3] as number) * by;
        s4 += (below[row + 4] as number) * by;
        s5 += (below[row + 5] as number) * by;
      }
    }
    left[at] = (left[at] as number) - s0;
    left[at + 1] = (left[at + 1] as number) - s1;
    left[at + 2] = (left[at + 2] as number) - s2;
    left[at + 3] = (left[at + 3] as number) - s3;
    left[at + 4] = (left[at + 4] as number) - s4;
    left[at + 5] = (left[at + 5] as number) - s5;
    timesInverse(inverse, column, left, moved);
    for (let way = 0; way < SIX; way++) left[at + way] = moved[way] as number;
  }
  const whole = new Float64Array(forces.length);
  for (let at = 0; at < order.length; at++) {
    const node = order[at] as number;
    for (let way = 0; way < SIX; way++) whole[node * SIX + way] = left[at * SIX + way] as number;
  }
  return whole;
}
