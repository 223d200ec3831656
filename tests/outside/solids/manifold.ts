import Module from "manifold-3d";
import { inner, minus, outer, plus, type V } from "./vectors.ts";

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;
type Solid = InstanceType<typeof Manifold>;

/** Solids made since the last sweep: their memory is not the collector's. */
const made: Solid[] = [];
const keep = (solid: Solid): Solid => {
  made.push(solid);
  return solid;
};
export function sweepSolids(): void {
  for (const solid of made.splice(0)) solid.delete();
}

export const hull = (points: readonly V[]): Solid => keep(Manifold.hull(points));
export const lessThan = (a: Solid, b: Solid): Solid => keep(a.subtract(b));
export const together = (some: readonly Solid[]): Solid => keep(Manifold.union([...some]));
export const shared = (a: Solid, b: Solid): Solid => keep(a.intersect(b));
/** What lies on the side the normal looks to. */
export const beyond = (solid: Solid, at: V, out: V): Solid => keep(solid.trimByPlane(out, inner(at, out)));
export const parts = (solid: Solid): Solid[] => solid.decompose().map(keep);

/** The same carried to another place; it stays as it is, not mirrored. */
export const placed = (solid: Solid, place: (p: V) => V): Solid =>
  keep(
    solid.warp((p) => {
      [p[0], p[1], p[2]] = place([p[0]!, p[1]!, p[2]!]);
    }),
  );

/** A flat ring, anticlockwise, raised from one height to another. */
export const raised = (ring: readonly (readonly [number, number])[], from: number, to: number): Solid =>
  keep(
    keep(Manifold.extrude([ring.map(([x, y]): [number, number] => [x, y])], to - from)).translate(0, 0, from),
  );

/** A box about a line: from `at` both ways along `run` by `reach`, its sides square to it. */
export function bar(at: V, run: V, reach: number, u: V, halfU: number, v: V, halfV: number): Solid {
  const points: V[] = [];
  for (const s of [-reach, reach])
    for (const a of [-halfU, halfU])
      for (const b of [-halfV, halfV]) points.push(plus(plus(plus(at, run, s), u, a), v, b));
  return hull(points);
}

export const FLATS = 96;
/** A regular figure's share of the area of the circle round it. */
export const SHARE_OF_CIRCLE = (FLATS / (2 * Math.PI)) * Math.sin((2 * Math.PI) / FLATS);

/** The same, turned: a regular prism with its corners on the circle. */
export function roundBar(at: V, run: V, reach: number, u: V, v: V, radius: number, flats = FLATS): Solid {
  const upright = keep(Manifold.cylinder(2 * reach, radius, radius, flats, true));
  // Left-handed directions would turn it inside out.
  if (inner(outer(u, v), run) < 0) return roundBar(at, run, reach, v, u, radius, flats);
  return keep(
    upright.warp((p) => {
      const q = plus(plus(plus(at, run, p[2]!), u, p[0]!), v, p[1]!);
      p[0] = q[0];
      p[1] = q[1];
      p[2] = q[2];
    }),
  );
}

/** A box from `low` to `high`, split in `flats` along its first direction, each point then carried to its place. */
export function bentBox(low: V, high: V, flats: number, place: (p: V) => V): Solid {
  const unit = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as [number, number][];
  // The unit square is drawn, so that nothing is rounded on the way in; the height runs along the first direction.
  const box = keep(Manifold.extrude([unit], 1, flats - 1));
  const between = (k: 0 | 1 | 2, t: number) => low[k] + (high[k] - low[k]) * t;
  return keep(
    box.warp((p) => {
      const q = place([between(0, p[2]!), between(1, p[0]!), between(2, p[1]!)]);
      p[0] = q[0];
      p[1] = q[1];
      p[2] = q[2];
    }),
  );
}

/**
 * A slab between two outlines of as many corners, each straight to its fellow: `top` at depth `from` and `under` at depth `to`, z down. Corners
 * of one of the two may come together.
 */
export function lofted(
  top: readonly [number, number][],
  under: readonly [number, number][],
  from: number,
  to: number,
): Solid {
  const { CrossSection } = wasm;
  const apart = new Set(top.map(String)).size === top.length;
  const [drawn, other] = apart ? [top, under] : [under, top];
  const outline = new CrossSection([drawn as [number, number][]], "NonZero");
  const slab = keep(Manifold.extrude(outline, 1));
  outline.delete();
  return keep(
    slab.warp((p) => {
      const isTop = p[2]! > 0.5;
      p[2] = isTop ? -from : -to;
      if (isTop === apart) return;
      let near = 0;
      for (const [k, [x, y]] of drawn.entries()) {
        const [u, v] = drawn[near]!;
        if (Math.hypot(p[0]! - x, p[1]! - y) < Math.hypot(p[0]! - u, p[1]! - v)) near = k;
      }
      p[0] = other[near]![0];
      p[1] = other[near]![1];
    }),
  );
}

/** On which ring to go on, all the way round two of them, so that the squares of all ways across come to the least. */
function stepsRound(upper: readonly V[], lower: readonly V[]): ("upper" | "lower")[] {
  const [u, l] = [upper.length, lower.length];
  const across = (i: number, j: number): number => {
    const [x, y] = minus(upper[i % u]!, lower[j % l]!);
    return x * x + y * y;
  };
  const least = new Float64Array((u + 1) * (l + 1)).fill(Number.POSITIVE_INFINITY);
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 ? Number.POSITIVE_INFINITY : least[i * (l + 1) + j]!;
  for (let i = 0; i <= u; i++)
    for (let j = 0; j <= l; j++)
      least[i * (l + 1) + j] = across(i, j) + (i + j === 0 ? 0 : Math.min(at(i - 1, j), at(i, j - 1)));
  const steps: ("upper" | "lower")[] = [];
  for (let [i, j] = [u, l]; i + j > 0; ) {
    const step = at(i - 1, j) <= at(i, j - 1) ? "upper" : "lower";
    steps.push(step);
    if (step === "upper") i--;
    else j--;
  }
  return steps.reverse();
}

/** What lies between two level rings, anticlockwise from above, of as many corners as they like: the upper first, each from the same side on. */
export function between(upper: readonly V[], lower: readonly V[]): Solid {
  const points = [...upper, ...lower];
  const cap = (ring: readonly V[]) => wasm.triangulate([ring.map(([x, y]): [number, number] => [x, y])]);
  const [u, l] = [upper.length, lower.length];
  const at = (i: number, j: number): [number, number] => [i % u, u + (j % l)];
  const sides: [number, number, number][] = [];
  // Round both at once, by the shortest ways from one to the other: rings that turn in and out again are met alike.
  let [i, j] = [0, 0];
  for (const step of stepsRound(upper, lower)) {
    const [a, b] = at(i, j);
    if (step === "upper") i++;
    else j++;
    sides.push([a, b, step === "upper" ? at(i, j)[0] : at(i, j)[1]]);
  }
  const triangles = [
    ...cap(upper),
    ...cap(lower).map(([a, b, c]) => [u + a, u + c, u + b] as const),
    ...sides,
  ];
  const mesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: new Float32Array(points.flat()),
    triVerts: new Uint32Array(triangles.flat()),
  });
  return keep(Manifold.ofMesh(mesh));
}

/**
 * A surface just as it is written, corners by their numbers and none welded, as separate solids with their volumes; throws where some edge is
 * not in two triangles, once each way.
 */
export function asWritten(
  points: readonly V[],
  triangles: readonly (readonly [number, number, number])[],
): number[] {
  const mesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: new Float32Array(points.flat()),
    triVerts: new Uint32Array(triangles.flat()),
  });
  return parts(keep(Manifold.ofMesh(mesh))).map((part) => part.volume());
}

/** Corners in double precision: the mesh itself is single. */
export function corners(solid: Solid): V[] {
  const found: V[] = [];
  keep(
    solid.warpBatch((values, count) => {
      for (let k = 0; k < count; k++) found.push([values[3 * k]!, values[3 * k + 1]!, values[3 * k + 2]!]);
    }),
  );
  return found;
}

export type { Solid };
