/**
 * How far a cut piece strays from what it should be: what was left standing, and what was cut away.
 */
import { lessThan, parts, type Solid, shared } from "../solids/manifold.ts";
import { inner, minus, outer, plus, times, type V } from "../solids/vectors.ts";

/** What a piece should be: solids that together make it, and what is cut out of them. */
export interface Wanted {
  wood: Solid[];
  out: Solid[];
}

/** Less than this is none, mm³. */
const NONE = 0.1;

/** The farthest that anything stands proud of what is asked for, and that anything of it is missing, mm. */
export function strayOf(cut: Solid, { wood, out }: Wanted): { proud: number; missing: number } {
  const proud = Math.max(
    farthest([wood.reduce(lessThan, cut)], wood),
    ...out.map((hole) => farthest([shared(cut, hole)], [hole])),
  );
  const missing = farthest(
    wood.map((piece) => lessThan(out.reduce(lessThan, piece), cut)),
    [cut],
  );
  return { proud, missing };
}

/** The farthest that corners and faces' middles of some differences lie from the surfaces of some solids. */
function farthest(differences: readonly Solid[], from: readonly Solid[]): number {
  // One by one: where solids only touch, arithmetic makes slivers of no thickness in between.
  const points = differences
    .filter((each) => each.volume() > NONE)
    .flatMap((each) => parts(each).filter((part) => part.volume() > NONE))
    .flatMap(pointsOf);
  if (points.length === 0) return 0;
  const surface = new Surface(from);
  return Math.max(...points.map((p) => surface.distanceTo(p)));
}

interface Triangle {
  corners: readonly [V, V, V];
  low: V;
  high: V;
}

function trianglesOf(solid: Solid): Triangle[] {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  const at = (k: number): V => {
    const from = triVerts[k]! * numProp;
    return [vertProperties[from]!, vertProperties[from + 1]!, vertProperties[from + 2]!];
  };
  return Array.from({ length: triVerts.length / 3 }, (_, k) => {
    const corners = [at(3 * k), at(3 * k + 1), at(3 * k + 2)] as const;
    const reach = (pick: (...all: number[]) => number): V =>
      [0, 1, 2].map((axis) => pick(...corners.map((p) => p[axis as 0]))) as V;
    return { corners, low: reach(Math.min), high: reach(Math.max) };
  });
}

/** Corners and middles of the faces. */
function pointsOf(solid: Solid): V[] {
  const found = new Map<string, V>();
  for (const { corners } of trianglesOf(solid)) {
    const [a, b, c] = corners;
    for (const p of [a, b, c, times(plus(plus(a, b), c), 1 / 3)])
      found.set(p.map((v) => v.toFixed(2)).join(), p);
  }
  return [...found.values()];
}

/** Triangles by where along the piece they lie: most points have their nearest beside them. */
class Surface {
  readonly #all: readonly Triangle[];
  readonly #slices = new Map<number, Triangle[]>();

  constructor(solids: readonly Solid[]) {
    this.#all = solids.flatMap(trianglesOf);
    for (const triangle of this.#all) {
      for (let k = slice(triangle.low[0] - NEAR); k <= slice(triangle.high[0] + NEAR); k++) {
        const known = this.#slices.get(k);
        if (known) known.push(triangle);
        else this.#slices.set(k, [triangle]);
      }
    }
  }

  distanceTo(p: V): number {
    const near = nearest(this.#slices.get(slice(p[0])) ?? [], p, NEAR);
    return near < NEAR ? near : nearest(this.#all, p, Number.POSITIVE_INFINITY);
  }
}

/** mm */
const NEAR = 1;
const SLICE = 4;
const slice = (x: number): number => Math.floor(x / SLICE);

function nearest(surface: readonly Triangle[], p: V, within: number): number {
  let best = within;
  for (const triangle of surface)
    if (toBox(triangle, p) < best) best = Math.min(best, toTriangle(p, triangle));
  return best;
}

function toBox({ low, high }: Triangle, p: V): number {
  let sum = 0;
  for (let axis = 0; axis < 3; axis++) {
    const off = Math.max(0, low[axis]! - p[axis]!, p[axis]! - high[axis]!);
    sum += off * off;
  }
  return Math.sqrt(sum);
}

function toTriangle(p: V, { corners: [a, b, c] }: Triangle): number {
  const normal = outer(minus(b, a), minus(c, a));
  const area = Math.sqrt(inner(normal, normal));
  if (area > 1e-9) {
    const n = times(normal, 1 / area);
    const off = inner(minus(p, a), n);
    const on = plus(p, n, -off);
    const left = (from: V, to: V) => inner(outer(minus(to, from), minus(on, from)), n) >= 0;
    if (left(a, b) && left(b, c) && left(c, a)) return Math.abs(off);
  }
  return Math.min(toSegment(p, a, b), toSegment(p, b, c), toSegment(p, c, a));
}

function toSegment(p: V, a: V, b: V): number {
  const run = minus(b, a);
  const size = inner(run, run);
  const t = size > 0 ? Math.min(1, Math.max(0, inner(minus(p, a), run) / size)) : 0;
  const off = minus(p, plus(a, run, t));
  return Math.sqrt(inner(off, off));
}
