import type { Vec3 } from "../geometry/solid.ts";

/**
 * Shares of a force down at a place that some supports take: the most even ones (least squares) that give the same force and the same
 * moments about both level axes.
 *
 * @param supports places that can take a share
 * @param at where the force acts; only x and y count
 */
export function sharesOf(supports: readonly Vec3[], at: readonly [number, number]): number[] {
  const count = supports.length;
  if (count === 0) return [];
  // Nearer supports may take more, so that a load at a front edge does not lean on the back.
  const weight = supports.map(([x, y]) => 1 / (1 + ((x - at[0]) ** 2 + (y - at[1]) ** 2) / 150 ** 2));
  const rows = [supports.map(() => 1), supports.map(([x]) => x - at[0]), supports.map(([, y]) => y - at[1])];
  const scaled = rows.map((row, k) => row.map((value) => (k === 0 ? value : value / 100)));
  const normal = scaled.map((a) =>
    scaled.map((b) => a.reduce((sum, v, k) => sum + v * (b[k] ?? 0) * (weight[k] ?? 0), 0)),
  );
  for (const [k, row] of normal.entries()) row[k] = (row[k] ?? 0) * (1 + 1e-12) + 1e-15;
  const multipliers = cramer(normal, [1, 0, 0]);
  return supports.map(
    (_, k) =>
      (weight[k] ?? 0) * scaled.reduce((sum, row, r) => sum + (row[k] ?? 0) * (multipliers[r] ?? 0), 0),
  );
}

/** Three equations. */
function cramer(m: readonly (readonly number[])[], right: readonly number[]): number[] {
  const whole = determinant(m);
  return right.map(
    (_, column) =>
      determinant(m.map((row, r) => row.map((value, c) => (c === column ? (right[r] ?? 0) : value)))) / whole,
  );
}

function determinant(m: readonly (readonly number[])[]): number {
  const at = (r: number, c: number) => m[r]?.[c] ?? 0;
  return (
    at(0, 0) * (at(1, 1) * at(2, 2) - at(1, 2) * at(2, 1)) -
    at(0, 1) * (at(1, 0) * at(2, 2) - at(1, 2) * at(2, 0)) +
    at(0, 2) * (at(1, 0) * at(2, 1) - at(1, 1) * at(2, 0))
  );
}
