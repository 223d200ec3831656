import { edgesOf } from "./body.ts";
import { boundingBox, boundsOf, boxesMeet, lineThrough } from "./convex.ts";
import { height } from "./plane.ts";
import type { Convex, Edge, Plane, Vec3 } from "./solid.ts";
import { along, between, cross, distance, dot, scale, sub } from "./vec.ts";

/** Points nearer than this are one, mm. */
const SAME = 1e-4;

type Ridge = readonly [Vec3, Vec3];

/**
 * Redraws the outline of an end that runs on into a turned member where it comes out of that member's wood: the line a maker sees,
 * where the end's own flat cut is hidden inside. It bends where the facets of that wood do, so that it lies on them and is seen whole.
 */
export function outlinedOn(
  edges: readonly Edge[],
  cut: Plane,
  alongRail: Vec3,
  which: 0 | 1,
  wood: readonly Convex[],
): Edge[] {
  const inward: Vec3 = which === 0 ? alongRail : [-alongRail[0], -alongRail[1], -alongRail[2]];
  const onCut = (p: Vec3) => Math.abs(height(cut, p)) < 1e-6;
  const ways = waysFrom(edges, onCut);
  const wayAt = (p: Vec3): Vec3 => {
    const way = ways.get(keyOf(p)) ?? inward;
    return scale(way, 1 / Math.abs(dot(way, cut.normal)));
  };
  const isCut = ({ is, a, b }: Edge) => is === "arris" && onCut(a) && onCut(b);
  const corners = edges.filter(isCut).map(({ a }) => a);
  const near = piecesAround(corners, corners.map(wayAt), wood);
  const ridges = near.flatMap((piece) => edgesOf(piece).map(({ a, b }): Ridge => [a, b]));
  return edges.flatMap((edge) =>
    isCut(edge) ? outline(edge, [wayAt(edge.a), wayAt(edge.b)], near, ridges) : edge,
  );
}

/** What of some wood the lines from those corners may pass through before they come out of it: a seat with a hollow is of hundreds of pieces. */
function piecesAround(corners: readonly Vec3[], ways: readonly Vec3[], wood: readonly Convex[]): Convex[] {
  const boxed = wood.map((piece) => ({ piece, box: boundingBox(piece) }));
  let near: Convex[] = [];
  for (let ends: readonly Vec3[] = corners; ; ) {
    const around = boundsOf([...corners, ...ends]);
    const slack = BULGE * distance(around.low, around.high);
    const next = boxed.filter(({ box }) => boxesMeet(around, box, slack)).map(({ piece }) => piece);
    if (next.length === near.length) return near;
    near = next;
    ends = corners.map((corner, k) => surfacing(corner, ways[k]!, near));
  }
}

/** Between two of the lines the wood's surface may stand out by less than this, as a share of how far apart all of them are. */
const BULGE = 0.1;

const keyOf = (p: Vec3): string => p.map((v) => v.toFixed(4)).join(" ");

/** From each corner of the cut the way that the stuff runs on: work that tapers does not run along its middle. */
function waysFrom(edges: readonly Edge[], onCut: (p: Vec3) => boolean): Map<string, Vec3> {
  const ways = new Map<string, Vec3>();
  for (const { a, b } of edges) {
    if (onCut(a) === onCut(b)) continue;
    const [corner, other] = onCut(a) ? [a, b] : [b, a];
    ways.set(keyOf(corner), sub(other, corner));
  }
  return ways;
}

/** The ways from both ends of the edge are as long that they lead to one plane beside the cut: between them lies one flat face. */
function outline(
  edge: Edge,
  ways: readonly [Vec3, Vec3],
  wood: readonly Convex[],
  ridges: readonly Ridge[],
): Edge[] {
  const at = (t: number) => surfacing(between(edge.a, edge.b, t), between(...ways, t), wood);
  const bends = crossings(edge, ways, ridges).filter(({ t, point }) => distance(at(t), point) < SAME);
  const points = [at(0), ...bends.map(({ point }) => point), at(1)];
  return points
    .slice(1)
    .map((b, k): Edge => ({ ...edge, a: points[k]!, b }))
    .filter(({ a, b }) => distance(a, b) > SAME);
}

/** Where the face that starts at an edge crosses the ridges of some wood, in order: the edge's share that leads there, and the place. */
function crossings(
  { a, b }: Edge,
  [first, last]: readonly [Vec3, Vec3],
  ridges: readonly Ridge[],
): { t: number; point: Vec3 }[] {
  const run = sub(b, a);
  const normal = cross(run, first);
  const across = cross(normal, run);
  const level = dot(normal, a);
  const size = dot(run, run);
  const spread = dot(sub(last, first), run) / size;
  const found: { t: number; point: Vec3 }[] = [];
  for (const [p, q] of ridges) {
    const [from, to] = [dot(normal, p) - level, dot(normal, q) - level];
    if (from * to >= 0) continue;
    const point = between(p, q, from / (from - to));
    const out = sub(point, a);
    const far = dot(out, across) / dot(first, across);
    const t = dot(along(out, first, -far), run) / size / (1 + far * spread);
    if (t > 0 && t < 1) found.push({ t, point });
  }
  return found.sort((one, other) => one.t - other.t);
}

/** Where a line that starts inside comes out of the wood; the start when it is outside. */
function surfacing(point: Vec3, way: Vec3, wood: readonly Convex[]): Vec3 {
  const spans = wood.flatMap((piece) => {
    const span = lineThrough(piece, point, way);
    return span && span[1] > 0 ? [span] : [];
  });
  let out = 0;
  for (const [from, to] of spans.sort((one, other) => one[0] - other[0]))
    if (from <= out + 1e-6 && to > out) out = to;
  return along(point, way, out);
}
