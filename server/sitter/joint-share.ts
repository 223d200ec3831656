import type { Group, Measure } from "./body-sizes.ts";
import { correlation, shareBelow, standardQuantile, standardShare } from "./body-sizes.ts";

/** The range of one measure that a chair suits; a missing end is open. mm or kg. */
export interface MeasureRange {
  measure: Measure;
  low?: number;
  high?: number;
}

/**
 * The share (0 to 1) of a group whose measures all lie in their ranges at once.
 *
 * Each measure keeps its own distribution; they hang together by the data's correlations through a normal copula. The
 * probability of the box is integrated by separation of variables (A. Genz, "Numerical computation of multivariate normal
 * probabilities", J. Comp. Graph. Stat. 1, 1992) over a fixed lattice, so the same question always gets the same answer.
 * One range alone is exact. Ranges of one measure are intersected.
 */
export function jointShare(group: Group, ranges: readonly MeasureRange[], points = 251): number {
  const boxes = merge(ranges)
    .map((range) => bounds(group, range))
    .filter((box) => box.low > Number.NEGATIVE_INFINITY || box.high < Number.POSITIVE_INFINITY);
  if (boxes.some((box) => box.high <= box.low)) return 0;
  if (boxes.length === 0) return 1;
  // The narrowest first: the lattice then spends its evenness where it matters.
  boxes.sort((a, b) => width(a) - width(b));
  if (boxes.length === 1) return width(boxes[0]!);
  const root = cholesky(boxes.map((a) => boxes.map((b) => correlation(group, a.measure, b.measure))));
  return integrate(boxes, root, points);
}

interface Box {
  measure: Measure;
  low: number;
  high: number;
}

function merge(ranges: readonly MeasureRange[]): MeasureRange[] {
  const merged = new Map<Measure, MeasureRange>();
  for (const range of ranges) {
    const known = merged.get(range.measure);
    const low = Math.max(known?.low ?? Number.NEGATIVE_INFINITY, range.low ?? Number.NEGATIVE_INFINITY);
    const high = Math.min(known?.high ?? Number.POSITIVE_INFINITY, range.high ?? Number.POSITIVE_INFINITY);
    merged.set(range.measure, { measure: range.measure, low, high });
  }
  return [...merged.values()];
}

function bounds(group: Group, { measure, low, high }: MeasureRange): Box {
  const end = (value: number | undefined, open: number) =>
    value === undefined || !Number.isFinite(value)
      ? open
      : standardQuantile(shareBelow(group, measure, value));
  return { measure, low: end(low, Number.NEGATIVE_INFINITY), high: end(high, Number.POSITIVE_INFINITY) };
}

function width(box: Box): number {
  return standardShare(box.high) - standardShare(box.low);
}

function integrate(boxes: Box[], root: number[][], points: number): number {
  const n = boxes.length;
  const steps = Array.from({ length: n - 1 }, (_, i) => Math.sqrt(primes[i]!) % 1);
  const y = new Array<number>(n).fill(0);
  let total = 0;
  for (let k = 1; k <= points; k += 1) {
    let product = 1;
    for (let i = 0; i < n; i += 1) {
      let mean = 0;
      for (let j = 0; j < i; j += 1) mean += root[i]![j]! * y[j]!;
      const scale = root[i]![i]!;
      const low = standardShare((boxes[i]!.low - mean) / scale);
      const high = standardShare((boxes[i]!.high - mean) / scale);
      product *= high - low;
      if (product <= 0) {
        product = 0;
        break;
      }
      if (i < n - 1) {
        // The tent turns the lattice into a periodic one, which converges faster.
        const w = Math.abs(2 * ((k * steps[i]!) % 1) - 1);
        const share = Math.min(Math.max(low + w * (high - low), 1e-16), 1 - 1e-16);
        y[i] = standardQuantile(share);
      }
    }
    total += product;
  }
  return total / points;
}

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29];

/** Lower triangular root of a correlation matrix; a matrix rounded to be not quite positive gets a sliver on its diagonal. */
function cholesky(matrix: number[][]): number[][] {
  const n = matrix.length;
  const root = matrix.map(() => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k += 1) sum -= root[i]![k]! * root[j]![k]!;
      root[i]![j] = i === j ? Math.sqrt(Math.max(sum, 1e-9)) : sum / root[j]![j]!;
    }
  }
  return root;
}
