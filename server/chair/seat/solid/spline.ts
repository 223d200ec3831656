/** A curve through points, a function of x: its value and its slope. */
export interface Curve {
  at(x: number): number;
  slope(x: number): number;
}

interface Knot {
  x: number;
  y: number;
}

/**
 * The cubic spline through points of growing x. An end without a slope of its own is natural: no curvature there, as a batten lies beyond
 * its last nail. Two points without slopes give the straight between them. Beyond its ends the curve runs on straight.
 */
export function splineThrough(knots: readonly Knot[], ends: { first?: number; last?: number } = {}): Curve {
  const last = knots.length - 1;
  const bends = secondDerivatives(knots, ends);
  const stretchOf = (x: number) => {
    const next = knots.findIndex((knot) => knot.x >= x);
    const k = next < 0 ? last - 1 : Math.max(0, next - 1);
    const [a, b] = [knots[k]!, knots[k + 1]!];
    const h = b.x - a.x;
    return { a, b, h, t: x - a.x, bend: [bends[k]!, bends[k + 1]!] as const };
  };
  const inside = (x: number) => Math.min(knots[last]!.x, Math.max(knots[0]!.x, x));
  const slope = (x: number): number => {
    const { a, b, h, t, bend } = stretchOf(inside(x));
    const rest = h - t;
    return (b.y - a.y) / h + (bend[1] * (3 * t * t - h * h) - bend[0] * (3 * rest * rest - h * h)) / (6 * h);
  };
  const at = (x: number): number => {
    const held = inside(x);
    const { a, b, h, t, bend } = stretchOf(held);
    const rest = h - t;
    const value =
      (a.y * rest + b.y * t) / h +
      (bend[0] * (rest ** 3 - h * h * rest) + bend[1] * (t ** 3 - h * h * t)) / (6 * h);
    return x === held ? value : value + (x - held) * slope(held);
  };
  return { at, slope };
}

/** The second derivatives at the knots: a tridiagonal system, solved by elimination. */
function secondDerivatives(knots: readonly Knot[], ends: { first?: number; last?: number }): number[] {
  const n = knots.length;
  const rows = knots.map((knot, k) => {
    const before = knots[k - 1];
    const after = knots[k + 1];
    const [left, right] = [before ? knot.x - before.x : 0, after ? after.x - knot.x : 0];
    const rise = after ? (after.y - knot.y) / right : (ends.last ?? 0);
    const came = before ? (knot.y - before.y) / left : (ends.first ?? 0);
    if (before && after)
      return { low: left, middle: 2 * (left + right), high: right, right: 6 * (rise - came) };
    const clamped = before ? ends.last : ends.first;
    if (clamped === undefined) return { low: 0, middle: 1, high: 0, right: 0 };
    const h = before ? left : right;
    return { low: before ? h : 0, middle: 2 * h, high: before ? 0 : h, right: 6 * (rise - came) };
  });
  for (let k = 1; k < n; k++) {
    const share = rows[k]!.low / rows[k - 1]!.middle;
    rows[k]!.middle -= share * rows[k - 1]!.high;
    rows[k]!.right -= share * rows[k - 1]!.right;
  }
  const bends = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    const { middle, high, right } = rows[k]!;
    bends[k] = (right - high * (bends[k + 1] ?? 0)) / middle;
  }
  return bends;
}
