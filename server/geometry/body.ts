import { type Bounds, boundingBox, boundsOf, boxesMeet, measure, mirror } from "./convex.ts";
import type { Body, Convex, Edge, Vec3 } from "./solid.ts";
import { along, between, cross, distance, dot, mirrored, negate, norm, scale, sub, unit } from "./vec.ts";

/** Edges shorter than this are not worth a line, mm. */
const SHORT = 1e-6;
/** Pieces nearer than this touch, mm. */
const TOUCH = 1e-5;
/** Faces that turn less than this are one face, radians. */
const FLAT = 1e-6;

/** A body whose lines are only made when somebody asks for them, to be drawn, and so is what covers as much in fewer pieces. */
export function drawnLater(pieces: Convex[], make: () => Edge[], covering?: () => Convex[]): Body {
  let made: Edge[] | undefined;
  let covered: Convex[] | undefined;
  return {
    pieces,
    get cover() {
      covered ??= covering?.();
      return covered;
    },
    get edges() {
      made ??= make();
      return made;
    },
  };
}

/**
 * A body of convex pieces that touch (or overlap), with its true edges: each once, seams between pieces left out. Where two faces turn
 * outward by less than `smoothBelow` radians the edge is `smooth`.
 */
export function bodyOf(pieces: readonly Convex[], smoothBelow = 0): Body {
  const boxes = pieces.map(boundingBox);
  const edges: Edge[] = [];
  const seen = new Set<string>();
  for (const [which, piece] of pieces.entries()) {
    for (const edge of edgesOf(piece)) {
      for (const part of partsOf(edge, pieces, boxes, which)) {
        const key = keyOf(part.a, part.b);
        if (seen.has(key)) continue;
        seen.add(key);
        const real = realEdge(part, pieces, boxes, smoothBelow);
        if (real) edges.push(real);
      }
    }
  }
  return { pieces: [...pieces], edges };
}

/** Total volume (mm³) and its centre; pieces are taken not to overlap. */
export function measureBody(body: Body): { volume: number; centroid: Vec3 } {
  let total = 0;
  let moment: Vec3 = [0, 0, 0];
  for (const piece of body.pieces) {
    const { volume, centroid } = measure(piece);
    total += volume;
    moment = along(moment, centroid, volume);
  }
  return { volume: total, centroid: total > 0 ? scale(moment, 1 / total) : moment };
}

/** The upright box around a body. */
export function bodyBounds(body: Body): Bounds {
  return boundsOf(
    body.pieces.flatMap(({ points }) => {
      const { low, high } = boundsOf(points);
      return points.length > 0 ? [low, high] : [];
    }),
  );
}

/** The body mirrored left to right. */
export function mirrorBody(body: Body): Body {
  return {
    pieces: body.pieces.map(mirror),
    edges: body.edges.map((e) => ({
      a: mirrored(e.a),
      b: mirrored(e.b),
      is: e.is,
      normals: [mirrored(e.normals[0]), mirrored(e.normals[1])],
    })),
  };
}

/** The edges of a convex solid, each once. */
export function edgesOf(solid: Convex): { a: Vec3; b: Vec3; normals: [Vec3, Vec3] }[] {
  const half = new Map<number, number>();
  const edges: { a: Vec3; b: Vec3; normals: [Vec3, Vec3] }[] = [];
  const count = solid.points.length;
  for (const [which, face] of solid.faces.entries()) {
    let i = face[face.length - 1]!;
    for (const j of face) {
      const other = half.get(j * count + i);
      if (other === undefined) half.set(i * count + j, which);
      else {
        const a = solid.points[j]!;
        const b = solid.points[i]!;
        if (distance(a, b) > SHORT) {
          edges.push({ a, b, normals: [solid.planes[other]!.normal, solid.planes[which]!.normal] });
        }
      }
      i = j;
    }
  }
  return edges;
}

type Bare = { a: Vec3; b: Vec3; normals: [Vec3, Vec3] };

/** The edge cut where it enters or leaves another piece, so that each part is the same all along. */
function partsOf(edge: Bare, pieces: readonly Convex[], boxes: readonly Bounds[], own: number): Bare[] {
  const around = boundsOf([edge.a, edge.b]);
  const cuts: number[] = [];
  const run = sub(edge.b, edge.a);
  for (const [k, piece] of pieces.entries()) {
    if (k === own || !boxesMeet(around, boxes[k]!, TOUCH)) continue;
    let from = 0;
    let to = 1;
    for (const plane of piece.planes) {
      const start = dot(plane.normal, edge.a) - plane.offset - TOUCH;
      const rate = dot(plane.normal, run);
      if (Math.abs(rate) < 1e-9) {
        if (start > 0) to = -1;
      } else if (rate > 0) to = Math.min(to, -start / rate);
      else from = Math.max(from, -start / rate);
    }
    if (from < to) cuts.push(from, to);
  }
  if (cuts.length === 0) return [edge];
  const length = norm(run);
  const marks = [0, ...cuts, 1]
    .sort((a, b) => a - b)
    .filter((t, i, all) => i === 0 || (t - all[i - 1]!) * length > 10 * TOUCH);
  if ((1 - marks[marks.length - 1]!) * length < 20 * TOUCH) marks[marks.length - 1] = 1;
  const parts: Bare[] = [];
  for (let k = 1; k < marks.length; k++) {
    parts.push({
      a: between(edge.a, edge.b, marks[k - 1]!),
      b: between(edge.a, edge.b, marks[k]!),
      normals: edge.normals,
    });
  }
  return parts;
}

const keyOf = (a: Vec3, b: Vec3): string => {
  const name = (p: Vec3) => p.map((v) => Math.round(v * 1e3)).join(",");
  const [p, q] = [name(a), name(b)];
  return p < q ? `${p}|${q}` : `${q}|${p}`;
};

/** Looks around the middle of an edge at all pieces there: the wood fills some sector, whose two sides are the faces that meet. */
function realEdge(
  edge: Bare,
  pieces: readonly Convex[],
  boxes: readonly Bounds[],
  smoothBelow: number,
): Edge | undefined {
  const middle = between(edge.a, edge.b, 0.5);
  const spot: Bounds = { low: middle, high: middle };
  const w = unit(sub(edge.b, edge.a));
  const u = edge.normals[0];
  const v = cross(w, u);
  const sectors: { from: number; to: number; start: Vec3; end: Vec3 }[] = [];
  for (const [k, piece] of pieces.entries()) {
    if (!boxesMeet(spot, boxes[k]!, TOUCH)) continue;
    const touching: Vec3[] = [];
    let inside = true;
    for (const plane of piece.planes) {
      const h = dot(plane.normal, middle) - plane.offset;
      if (h > TOUCH) inside = false;
      else if (h > -TOUCH) touching.push(plane.normal);
    }
    if (!inside) continue;
    // A plane square to the edge only ends the piece here; the wood beyond is another piece's.
    const sides = touching.filter((n) => Math.abs(dot(n, w)) < 0.999999);
    if (sides.length === 0) return undefined;
    // Wood lies where n · p < 0 for each side: half turns that overlap in one sector.
    let from = -Infinity;
    let to = Infinity;
    let start = sides[0]!;
    let end = sides[0]!;
    const first = Math.atan2(dot(sides[0]!, v), dot(sides[0]!, u));
    for (const n of sides) {
      const bearing = first + wrap(Math.atan2(dot(n, v), dot(n, u)) - first);
      if (bearing + Math.PI / 2 > from) {
        from = bearing + Math.PI / 2;
        start = n;
      }
      if (bearing + (3 * Math.PI) / 2 < to) {
        to = bearing + (3 * Math.PI) / 2;
        end = n;
      }
    }
    if (to > from) sectors.push({ from, to, start, end });
  }
  return gapIn(sectors, edge, smoothBelow);
}

const wrap = (angle: number): number => {
  const turn = 2 * Math.PI;
  const a = angle % turn;
  return a > Math.PI ? a - turn : a <= -Math.PI ? a + turn : a;
};

function gapIn(
  sectors: { from: number; to: number; start: Vec3; end: Vec3 }[],
  edge: Bare,
  smoothBelow: number,
): Edge | undefined {
  if (sectors.length === 0) return undefined;
  const turn = 2 * Math.PI;
  const base = sectors[0]!.from;
  const ordered = sectors
    .map((s) => {
      const from = base + ((((s.from - base) % turn) + turn) % turn);
      return { ...s, from: from > base + turn - 1e-4 ? from - turn : from, span: s.to - s.from };
    })
    .sort((a, b) => a.from - b.from);
  let reach = ordered[0]!.from;
  let last = ordered[0]!.start;
  let widest = { size: 0, before: last, after: last };
  for (const s of ordered) {
    if (s.from - reach > 1e-4 && s.from - reach > widest.size) {
      widest = { size: s.from - reach, before: last, after: s.start };
    }
    if (s.from + s.span > reach) {
      reach = s.from + s.span;
      last = s.end;
    }
  }
  const rest = ordered[0]!.from + turn - reach;
  if (rest > 1e-4 && rest > widest.size) widest = { size: rest, before: last, after: ordered[0]!.start };
  if (widest.size === 0) return undefined;
  const lean = widest.size - Math.PI;
  if (Math.abs(lean) < 1e-5) return undefined;
  return {
    a: edge.a,
    b: edge.b,
    is: Math.abs(lean) < smoothBelow ? "smooth" : "arris",
    normals: [widest.before, widest.after],
  };
}

interface LoftOptions {
  /** The rings are circles cut into facets: the lines along are smooth. */
  round?: boolean;
  /** What the line around ring k is (ends are always arrises). */
  ring?: (k: number) => "arris" | "smooth";
  /** Without `ring`: lines around are smooth where the faces turn by less than this, radians. */
  smoothBelow?: number;
}

/**
 * A body through rings of as many corners, one piece between each two neighbours: straight, tapered, bent or turned stuff.
 * Rings run anticlockwise seen from the last one. Lines between faces that lie in one plane are left out.
 */
export function loft(
  pieces: readonly Convex[],
  rings: readonly (readonly [readonly Vec3[], readonly Vec3[]])[],
  options: LoftOptions = {},
): Body {
  const edges: Edge[] = [];
  const last = pieces.length - 1;
  const normalsOf = (k: number): Vec3[] => sideNormals(rings[k]![0], rings[k]![1]);
  let before: Vec3[] | undefined;
  for (let k = 0; k <= last; k++) {
    const [start, end] = rings[k]!;
    const sides = normalsOf(k);
    const n = sides.length;
    for (let c = 0; c < n; c++) {
      const left = sides[(c + n - 1) % n]!;
      push(edges, start[c]!, end[c]!, options.round ? "smooth" : "arris", left, sides[c]!);
    }
    const startNormal = ringNormal(start, -1);
    for (let c = 0; c < n; c++) {
      const other = before ? before[c]! : startNormal;
      const is = before ? ringKind(options, k, other, sides[c]!) : "arris";
      push(edges, start[c]!, start[(c + 1) % n]!, is, other, sides[c]!);
    }
    if (k === last) {
      const endNormal = ringNormal(end, 1);
      for (let c = 0; c < n; c++) push(edges, end[c]!, end[(c + 1) % n]!, "arris", sides[c]!, endNormal);
    }
    before = sides;
  }
  return { pieces: [...pieces], edges };
}

function ringKind(options: LoftOptions, k: number, before: Vec3, after: Vec3): Edge["is"] {
  if (options.ring) return options.ring(k);
  return norm(cross(before, after)) < Math.sin(options.smoothBelow ?? 0) ? "smooth" : "arris";
}

function push(edges: Edge[], a: Vec3, b: Vec3, is: Edge["is"], n: Vec3, m: Vec3): void {
  if (norm(cross(n, m)) < FLAT && dot(n, m) > 0) return;
  if (distance(a, b) < SHORT) return;
  edges.push({ a, b, is, normals: [n, m] });
}

function sideNormals(start: readonly Vec3[], end: readonly Vec3[]): Vec3[] {
  const n = start.length;
  const normals: Vec3[] = [];
  for (let c = 0; c < n; c++) {
    const next = (c + 1) % n;
    normals.push(unit(cross(sub(end[next]!, start[c]!), sub(end[c]!, start[next]!))));
  }
  return normals;
}

function ringNormal(ring: readonly Vec3[], sign: 1 | -1): Vec3 {
  const n = unit(cross(sub(ring[1]!, ring[0]!), sub(ring[2]!, ring[0]!)));
  return sign > 0 ? n : negate(n);
}
