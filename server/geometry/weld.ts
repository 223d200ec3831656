import type { Vec3 } from "./solid.ts";
import { dot, sub } from "./vec.ts";

/** Points nearer than this are one, mm: a thousand times what rounding leaves in a chair's coordinates. */
export const WELD = 1e-6;
/** Side of a cell of the look-up grid, mm. */
const CELL = 1e-4;

/** Gives each place a number; places within `WELD` mm of one seen before get that one's number. */
export class Welder {
  readonly points: Vec3[] = [];
  /** By a number made from the cell's three, which cells far apart may share: what is in one is compared anyway. */
  private readonly cells = new Map<number, number[]>();

  at(place: Vec3): number {
    for (const x of near(place[0]))
      for (const y of near(place[1]))
        for (const z of near(place[2])) {
          const index = this.seen(keyOf(x, y, z), place);
          if (index !== undefined) return index;
        }
    const index = this.points.push(place) - 1;
    const key = keyOf(Math.floor(place[0] / CELL), Math.floor(place[1] / CELL), Math.floor(place[2] / CELL));
    const there = this.cells.get(key);
    if (there) there.push(index);
    else this.cells.set(key, [index]);
    return index;
  }

  private seen(key: number, [x, y, z]: Vec3): number | undefined {
    return this.cells.get(key)?.find((index) => {
      const p = this.points[index]!;
      const [dx, dy, dz] = [p[0] - x, p[1] - y, p[2] - z];
      return dx * dx + dy * dy + dz * dz < WELD * WELD;
    });
  }
}

/** Three large primes, so that cells rarely share a number (Teschner and others, Vision, Modeling and Visualization 2003). */
const keyOf = (x: number, y: number, z: number): number =>
  Math.imul(x, 73856093) ^ Math.imul(y, 19349663) ^ Math.imul(z, 83492791);

/** The cells within `WELD` of a coordinate: one, or two beside a border. */
function near(value: number): number[] {
  const low = Math.floor((value - WELD) / CELL);
  const high = Math.floor((value + WELD) / CELL);
  return low === high ? [low] : [low, high];
}

/** For two points' numbers, the numbers of the points on the straight between them, in order: where other faces' corners lie. */
export function pointsBetween(points: readonly Vec3[]): (from: number, to: number) => readonly number[] {
  const axis = longestAxis(points);
  const order = points.map((_, index) => index).sort((a, b) => points[a]![axis] - points[b]![axis]);
  const sorted = order.map((index) => points[index]![axis]);
  const [xs, ys, zs] = ([0, 1, 2] as const).map((i) =>
    Float64Array.from(order, (index) => points[index]![i]),
  ) as [Float64Array, Float64Array, Float64Array];
  const known = new Map<number, number[]>();
  const search = (from: number, to: number): number[] => {
    const a = points[from]!;
    const b = points[to]!;
    const run = sub(b, a);
    const size = dot(run, run);
    const [left, right] = [Math.min(a[0], b[0]) - WELD, Math.max(a[0], b[0]) + WELD];
    const [back, front] = [Math.min(a[1], b[1]) - WELD, Math.max(a[1], b[1]) + WELD];
    const [foot, top] = [Math.min(a[2], b[2]) - WELD, Math.max(a[2], b[2]) + WELD];
    const low = Math.min(a[axis], b[axis]) - WELD;
    const high = Math.max(a[axis], b[axis]) + WELD;
    const found: { index: number; share: number }[] = [];
    for (let k = firstFrom(sorted, low); k < order.length && sorted[k]! <= high; k++) {
      // Most points lie outside the box around the two, which costs less to see.
      const [px, py, pz] = [xs[k]!, ys[k]!, zs[k]!];
      if (px < left || px > right || py < back || py > front || pz < foot || pz > top) continue;
      const index = order[k]!;
      if (index === from || index === to) continue;
      const off = sub(points[index]!, a);
      const share = dot(off, run) / size;
      if (share <= 0 || share >= 1) continue;
      const x = off[0] - share * run[0];
      const y = off[1] - share * run[1];
      const z = off[2] - share * run[2];
      if (x * x + y * y + z * z < WELD * WELD) found.push({ index, share });
    }
    return found.sort((p, q) => p.share - q.share).map(({ index }) => index);
  };
  return (from, to) => {
    const [low, high] = from < to ? [from, to] : [to, from];
    const key = low * points.length + high;
    let between = known.get(key);
    if (!between) {
      between = search(low, high);
      known.set(key, between);
    }
    return from < to ? between : [...between].reverse();
  };
}

function longestAxis(points: readonly Vec3[]): 0 | 1 | 2 {
  const size = ([0, 1, 2] as const).map((i) => {
    let low = Infinity;
    let high = -Infinity;
    for (const p of points) {
      low = Math.min(low, p[i]);
      high = Math.max(high, p[i]);
    }
    return high - low;
  });
  return size.indexOf(Math.max(...size)) as 0 | 1 | 2;
}

function firstFrom(sorted: readonly number[], value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
