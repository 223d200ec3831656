/**
 * Small linear programs: the least cost of x ≥ 0 under rows a · x ≥ b, for costs that are none of them negative.
 */

export interface Program {
  cost: readonly number[];
  rows: readonly { of: readonly number[]; least: number }[];
}

export interface Least {
  cost: number;
  x: number[];
  price: number[];
}

/**
 * The least cost and where it is reached, and what one more of each row's `least` would add to it; undefined where no x meets every row, or
 * where rounding gets in the way.
 */
export function leastCost({ cost, rows }: Program): Least | undefined {
  const n = cost.length;
  const m = rows.length;
  // Rows as −a · x + slack = −b: with no negative cost this start is dual feasible.
  const table = rows.map(({ of, least }, r) => {
    const row = new Float64Array(n + m + 1);
    of.forEach((value, k) => {
      row[k] = -value;
    });
    row[n + r] = 1;
    row[n + m] = -least;
    return row;
  });
  const reduced = new Float64Array(n + m + 1);
  cost.forEach((value, k) => {
    reduced[k] = value;
  });
  const basis = rows.map((_, r) => n + r);
  for (let step = 0; step < 50 * (n + m + 1); step++) {
    let out = -1;
    for (let r = 0; r < m; r++)
      if (table[r]![n + m]! < -1e-7 && (out < 0 || table[r]![n + m]! < table[out]![n + m]!)) out = r;
    if (out < 0) {
      const x = new Array<number>(n).fill(0);
      basis.forEach((column, r) => {
        if (column < n) x[column] = table[r]![n + m]!;
      });
      const price = rows.map((_, r) => Math.max(0, reduced[n + r]!));
      return { cost: x.reduce((sum, value, k) => sum + value * cost[k]!, 0), x, price };
    }
    let enter = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < n + m; k++) {
      const value = table[out]![k]!;
      if (value >= -1e-9) continue;
      const ratio = reduced[k]! / -value;
      if (ratio < least - 1e-12) {
        least = ratio;
        enter = k;
      }
    }
    if (enter < 0) return undefined;
    pivot(table, reduced, out, enter);
    basis[out] = enter;
  }
  return undefined;
}

function pivot(table: Float64Array[], reduced: Float64Array, out: number, enter: number): void {
  const row = table[out]!;
  const by = row[enter]!;
  for (let k = 0; k < row.length; k++) row[k]! /= by;
  for (const other of [...table, reduced]) {
    if (other === row) continue;
    const times = other[enter]!;
    if (times === 0) continue;
    for (let k = 0; k < row.length; k++) other[k]! -= times * row[k]!;
  }
}
