/**
 * A symmetric matrix kept as columns from the first number that is not zero to the diagonal, and its factors L·D·Lᵀ.
 */

export interface Skyline {
  size: number;
  /** First row of each column. */
  first: Int32Array;
  /** Where each column's diagonal stands in `values`. */
  diagonal: Int32Array;
  values: Float64Array;
}

/** An empty matrix whose columns reach up to `first`. */
export function emptySkyline(first: Int32Array): Skyline {
  const size = first.length;
  const diagonal = new Int32Array(size);
  let end = -1;
  for (let column = 0; column < size; column++) {
    end += column - (first[column] as number) + 1;
    diagonal[column] = end;
  }
  return { size, first, diagonal, values: new Float64Array(end + 1) };
}

/** Adds to one number and its mirror. */
export function addTo({ diagonal, values }: Skyline, a: number, b: number, value: number): void {
  const [row, column] = a <= b ? [a, b] : [b, a];
  const at = (diagonal[column] as number) - (column - row);
  values[at] = (values[at] as number) + value;
}

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

/** Factors the matrix in place. Throws `Loose` where a pivot vanishes. */
export function factor({ size, first, diagonal, values }: Skyline): void {
  for (let j = 0; j < size; j++) {
    const top = first[j] as number;
    const base = (diagonal[j] as number) - j;
    const was = Math.abs(values[diagonal[j] as number] as number);
    for (let i = top + 1; i < j; i++) {
      const from = Math.max(top, first[i] as number);
      const column = (diagonal[i] as number) - i;
      let sum = values[base + i] as number;
      for (let k = from; k < i; k++) sum -= (values[column + k] as number) * (values[base + k] as number);
      values[base + i] = sum;
    }
    let pivot = values[diagonal[j] as number] as number;
    for (let i = top; i < j; i++) {
      const u = values[base + i] as number;
      const l = u / (values[diagonal[i] as number] as number);
      values[base + i] = l;
      pivot -= l * u;
    }
    if (!(pivot > LOOSE * was) || was === 0) throw new Loose(j);
    values[diagonal[j] as number] = pivot;
  }
}

/** Solves with the factors. */
export function solveFactored({ size, first, diagonal, values }: Skyline, right: Float64Array): Float64Array {
  const x = Float64Array.from(right);
  for (let j = 0; j < size; j++) {
    const base = (diagonal[j] as number) - j;
    let sum = x[j] as number;
    for (let i = first[j] as number; i < j; i++) sum -= (values[base + i] as number) * (x[i] as number);
    x[j] = sum;
  }
  for (let j = 0; j < size; j++) x[j] = (x[j] as number) / (values[diagonal[j] as number] as number);
  for (let j = size - 1; j >= 0; j--) {
    const base = (diagonal[j] as number) - j;
    const known = x[j] as number;
    for (let i = first[j] as number; i < j; i++)
      x[i] = (x[i] as number) - (values[base + i] as number) * known;
  }
  return x;
}
