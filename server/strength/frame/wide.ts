/**
 * Numbers in two parts, so that differences of large movements keep the small ones (Dekker's product and Knuth's sum, of any text on
 * floating-point arithmetic).
 */

/** As many numbers, each the sum of its two parts. */
export interface Wide {
  high: Float64Array;
  low: Float64Array;
}

export const wideOf = (high: Float64Array): Wide => ({ high, low: new Float64Array(high.length) });

const SPLIT = 134_217_729;

/** What rounding leaves of a product. */
function leftOf(a: number, b: number, rounded: number): number {
  const [ac, bc] = [SPLIT * a, SPLIT * b];
  const [a1, b1] = [ac - (ac - a), bc - (bc - b)];
  const [a2, b2] = [a - a1, b - b1];
  return a2 * b2 - (rounded - a1 * b1 - a2 * b1 - a1 * b2);
}

/** b − a − t·r + s·q + small, rounded about once. */
export function differenceOf(
  a: number,
  b: number,
  t: number,
  r: number,
  s: number,
  q: number,
  small: number,
): number {
  const [tr, sq] = [t * r, s * q];
  const moved = b - a;
  const x = moved - b;
  const turned = sq - tr;
  const y = turned - sq;
  const all = moved + turned;
  const z = all - moved;
  const left =
    moved - (all - z) + (turned - z) + (b - (moved - x) - (a + x)) + (sq - (turned - y) - (tr + y));
  return all + (left + (leftOf(s, q, sq) - leftOf(t, r, tr)) + small);
}

/** Adds to numbers in two parts. */
export function addWide({ high, low }: Wide, more: Float64Array): void {
  for (let k = 0; k < high.length; k++) {
    const [a, b] = [high[k] as number, (low[k] as number) + (more[k] as number)];
    const sum = a + b;
    const t = sum - a;
    high[k] = sum;
    low[k] = a - (sum - t) + (b - t);
  }
}
