/** Damping against slopes that say the same, as a part of the largest. */
const DAMPING = 1e-6;

/**
 * The smallest step of some unknowns that takes every shortfall away as nearly as can be, by damped least squares.
 *
 * @param slopes for each unknown, how much each figure grows with it
 * @param short how much each figure has to grow; a figure that has not to move (0) is left free to
 */
export function leastSquaresStep(slopes: readonly (readonly number[])[], short: readonly number[]): number[] {
  const rows = short.flatMap((each, k) => (each === 0 ? [] : [k]));
  const size = slopes.length;
  const product = (a: readonly number[], b: readonly number[]) =>
    rows.reduce((sum, k) => sum + (a[k] ?? 0) * (b[k] ?? 0), 0);
  const matrix = slopes.map((a) => slopes.map((b) => product(a, b)));
  const largest = Math.max(...matrix.map((row, k) => row[k] ?? 0), 1e-300);
  const right = slopes.map((a) => product(a, short));
  for (const [k, row] of matrix.entries()) row[k] = (row[k] ?? 0) + largest * DAMPING;
  return eliminated(matrix, right, size);
}

/** Solves a small symmetric positive definite system by elimination. */
function eliminated(matrix: number[][], right: number[], size: number): number[] {
  const at = (row: number, column: number) => matrix[row]?.[column] ?? 0;
  for (let k = 0; k < size; k++) {
    for (let row = k + 1; row < size; row++) {
      const factor = at(row, k) / at(k, k);
      const target = matrix[row];
      if (!target || !Number.isFinite(factor)) continue;
      for (let column = k; column < size; column++) target[column] = at(row, column) - factor * at(k, column);
      right[row] = (right[row] ?? 0) - factor * (right[k] ?? 0);
    }
  }
  const found = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row--) {
    let rest = right[row] ?? 0;
    for (let column = row + 1; column < size; column++) rest -= at(row, column) * (found[column] ?? 0);
    const value = rest / at(row, row);
    found[row] = Number.isFinite(value) ? value : 0;
  }
  return found;
}
