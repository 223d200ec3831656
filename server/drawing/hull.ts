/** Up to so many points the plainest sorting is the fastest. */
const FEW = 20;

/**
 * The convex outline of the first `count` of some points, given by their coordinates: indices anticlockwise with y up; fewer than three when
 * the points lie in line. Coordinates that should be equal must be: a column of points that leans by a rounding error loses corners
 * as soon as nearly straight counts as straight, so here only straight does.
 */
export function hullOf(xs: Float64Array, ys: Float64Array, count: number): number[] {
  const sorted = inOrder(xs, ys, count);
  const hull: number[] = [];
  const chain = (from: number, to: number, step: 1 | -1, least: number) => {
    for (let k = from; k !== to; k += step) {
      const p = sorted[k]!;
      while (hull.length > least && !turnsLeft(xs, ys, hull[hull.length - 2]!, hull[hull.length - 1]!, p)) {
        hull.pop();
      }
      hull.push(p);
    }
  };
  chain(0, count, 1, 1);
  chain(count - 2, -1, -1, hull.length);
  hull.pop();
  return hull;
}

/** From left to right, then from low to high. */
function inOrder(xs: Float64Array, ys: Float64Array, count: number): number[] {
  const order: number[] = [];
  for (let k = 0; k < count; k++) order.push(k);
  if (count > FEW) return order.sort((a, b) => xs[a]! - xs[b]! || ys[a]! - ys[b]!);
  for (let k = 1; k < count; k++) {
    const index = order[k]!;
    const x = xs[index]!;
    const y = ys[index]!;
    let at = k;
    for (; at > 0; at--) {
      const other = order[at - 1]!;
      if (xs[other]! < x || (xs[other] === x && ys[other]! <= y)) break;
      order[at] = other;
    }
    order[at] = index;
  }
  return order;
}

function turnsLeft(xs: Float64Array, ys: Float64Array, a: number, b: number, p: number): boolean {
  const x = xs[b]! - xs[a]!;
  const y = ys[b]! - ys[a]!;
  return x * (ys[p]! - ys[a]!) - y * (xs[p]! - xs[a]!) > 0;
}
