import { bodyOf, drawnLater } from "../../geometry/body.ts";
import { prism, volume } from "../../geometry/convex.ts";
import { less } from "../../geometry/less.ts";
import { height, offsetBy } from "../../geometry/plane.ts";
import type { Body, Convex, Edge, Plane, Vec3 } from "../../geometry/solid.ts";
import { hangingTogether } from "../../geometry/touching.ts";
import { add, along, between, cross, dot, scale, sub, unit } from "../../geometry/vec.ts";
import type { Post } from "../chair.ts";
import { holds, notched, type Spot } from "./notch.ts";
import type { SeatLayer } from "./seat-layer.ts";

/** Facets of a curved edge turn by less than this, radians. */
const SMOOTH = 0.2;

/** A post that ends no further than this above a slab's underside is planed to it; the slab is not notched for it, mm. */
const PLANED_OFF = 3;

/** The slabs as one body, cut out around the posts that pass through them; `clearance` is kept from each of their faces, mm. */
export function seatBody(
  layers: readonly SeatLayer[],
  plane: Plane,
  posts: Iterable<Post>,
  clearance: number,
): Body {
  const all = [...posts];
  const pieces: Convex[] = [];
  const lines: (() => Edge[])[] = [];
  for (const layer of layers) {
    const tools = all.flatMap((post) => stretchWithin(post, layer, plane, clearance) ?? []);
    const left = withoutCrumbs(
      tools.reduce((pieces, tool) => pieces.flatMap((piece) => less(piece, tool)), slab(layer, plane)),
    );
    pieces.push(...left);
    lines.push(() => edgesOf(layer, plane, tools) ?? bodyOf(left, SMOOTH).edges);
  }
  return drawnLater(pieces, () => lines.flatMap((make) => make()));
}

/** A slab's outlines above and below, corner by corner, cut out round the posts at its edge; and round those that stand clear within it. */
interface SlabRings {
  edge: { top: Vec3[]; under: Vec3[] };
  openings: { top: Vec3[]; under: Vec3[] }[];
}

/** The rings of a slab; none where its upper and its lower outline do not go together corner by corner. */
export function slabRings(
  layer: SeatLayer,
  plane: Plane,
  posts: Iterable<Post>,
  clearance: number,
): SlabRings | undefined {
  const tools = [...posts].flatMap((post) => stretchWithin(post, layer, plane, clearance) ?? []);
  const [top, under] = [layer.from, layer.to].map((depth) => ringsAt(layer, plane, depth, tools));
  if (!top || !under || top.edge.length !== under.edge.length) return undefined;
  const openings = tools.flatMap((_, k) => {
    const [above, below] = [top.within.get(k), under.within.get(k)];
    return above && below ? [{ top: above, under: below }] : [];
  });
  return openings.length === Math.max(top.within.size, under.within.size)
    ? { edge: { top: top.edge, under: under.edge }, openings }
    : undefined;
}

/** A piece that hangs together with no more than this share of the slab falls off when the notches are cut. */
const CRUMB = 0.01;

/** The pieces that hang together: what a notch near the edge cuts loose does not belong to the seat. */
function withoutCrumbs(pieces: readonly Convex[]): Convex[] {
  const groups = hangingTogether(pieces).map((group) => ({
    group,
    size: group.reduce((sum, piece) => sum + volume(piece), 0),
  }));
  const whole = groups.reduce((sum, { size }) => sum + size, 0);
  return groups.flatMap(({ group, size }) => (size > CRUMB * whole ? group : []));
}

/** The lines of a notched slab from its two rings; undefined when a post stands clear within it, so that its ring is not one line. */
function edgesOf(layer: SeatLayer, plane: Plane, tools: readonly Convex[]): Edge[] | undefined {
  const top = ringAt(layer, plane, layer.from, tools);
  const bottom = ringAt(layer, plane, layer.to, tools);
  if (!top || !bottom || top.length !== bottom.length) return undefined;
  const up = plane.normal;
  const down: Vec3 = [-up[0], -up[1], -up[2]];
  const count = top.length;
  const sides = top.map((p, k) => unit(cross(sub(top[(k + 1) % count]!, p), sub(p, bottom[k]!))));
  const edges: Edge[] = [];
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count;
    const side = sides[k]!;
    const before = sides[(k + count - 1) % count]!;
    edges.push({ a: top[k]!, b: top[next]!, is: "arris", normals: [side, up] });
    edges.push({ a: bottom[k]!, b: bottom[next]!, is: "arris", normals: [side, down] });
    const is = dot(side, before) > Math.cos(SMOOTH) ? "smooth" : "arris";
    edges.push({ a: top[k]!, b: bottom[k]!, is, normals: [before, side] });
  }
  return edges;
}

/** A slab's outline at a depth, notched by what stands through it; undefined when one of them makes an opening in it. */
function ringAt(layer: SeatLayer, plane: Plane, depth: number, tools: readonly Convex[]): Vec3[] | undefined {
  const rings = ringsAt(layer, plane, depth, tools);
  return rings?.within.size === 0 ? rings.edge : undefined;
}

/** The same with the openings, by which tool makes each. */
function ringsAt(
  layer: SeatLayer,
  plane: Plane,
  depth: number,
  tools: readonly Convex[],
): { edge: Vec3[]; within: Map<number, Vec3[]> } | undefined {
  const level = offsetBy(plane, -depth);
  const right: Vec3 = [1, 0, 0];
  const back = cross(plane.normal, right);
  const spot = (p: Vec3): Spot => [dot(p, right), dot(p, back)];
  const lift = ([u, v]: Spot): Vec3 =>
    along(along(along([0, 0, 0], plane.normal, level.offset), right, u), back, v);
  let ring: Spot[] = layer.outline.ring.map(spot);
  const within = new Map<number, Vec3[]>();
  for (const [k, tool] of tools.entries()) {
    const section = crossed(tool, level)?.map(spot);
    if (!section) continue;
    const left = notched(ring, section);
    if (left) ring = left;
    else if (section.every((p) => holds(ring, p))) within.set(k, section.map(lift));
    else return undefined;
  }
  return { edge: ring.map(lift), within };
}

function slab({ outline, from, to }: SeatLayer, plane: Plane): Convex[] {
  return outline.cells.map((ring) => {
    const at = (depth: number): Vec3[] => ring.map((p) => along(p, plane.normal, -depth));
    return prism(at(to), at(from));
  });
}

/** The stretch of a post within a slab as one straight piece, a little longer than the slab; undefined when the post ends below it. */
function stretchWithin(post: Post, layer: SeatLayer, plane: Plane, clearance: number): Convex | undefined {
  const at = (depth: number) => {
    const ring = sectionIn(post, offsetBy(plane, -depth));
    return ring && clearance > 0 ? grown(ring, plane.normal, clearance) : ring;
  };
  const low = at(layer.to);
  if (!low) return undefined;
  const high = at(layer.from);
  if (high) return prism(extend(high, low), extend(low, high));
  // It ends within the slab: what it has there is notched right through.
  const up = low.map((p) => along(p, plane.normal, layer.to - layer.from));
  return height(plane, post.top) > -layer.to + PLANED_OFF
    ? prism(extend(up, low), extend(low, up))
    : undefined;
}

/** A convex ring with each edge moved out in its plane. */
function grown(ring: readonly Vec3[], normal: Vec3, by: number): Vec3[] {
  const middle = scale(ring.reduce<Vec3>(add, [0, 0, 0]), 1 / ring.length);
  const outs = ring.map((p, k) => {
    const out = unit(cross(sub(ring[(k + 1) % ring.length]!, p), normal));
    return dot(out, sub(p, middle)) < 0 ? scale(out, -1) : out;
  });
  return ring.map((p, k) => {
    const [before, after] = [outs[(k + ring.length - 1) % ring.length]!, outs[k]!];
    // Along the line between both edges, as far as keeps the distance from either.
    return along(p, add(before, after), by / (1 + dot(before, after)));
  });
}

const extend = (from: readonly Vec3[], to: readonly Vec3[]): Vec3[] =>
  from.map((p, k) => between(p, to[k]!, 1.05));

/** The corners of a post's section where its corner lines cross a plane; undefined when the post does not cross it. */
function sectionIn(post: Post, plane: Plane): Vec3[] | undefined {
  for (const { solid } of post.pieces) {
    const ring = crossed(solid, plane);
    if (ring) return ring;
  }
  return straddled(post, plane);
}

/** Where the lines along a prism, which its points hold as two rings, cross a plane; undefined when not all do. */
function crossed(solid: Convex, plane: Plane): Vec3[] | undefined {
  const count = solid.points.length / 2;
  const ring: Vec3[] = [];
  for (let k = 0; k < count; k++) {
    const a = solid.points[k]!;
    const b = solid.points[count + k]!;
    const [below, above] = [height(plane, a), height(plane, b)];
    if (below > 1e-9 || above < -1e-9 || above - below < 1e-9) return undefined;
    ring.push(between(a, b, below / (below - above)));
  }
  return ring.length >= 3 ? ring : undefined;
}

/** The same where the plane crosses from one piece to the next within the section: the piece nearest the middle runs on. */
function straddled(post: Post, plane: Plane): Vec3[] | undefined {
  const piece = post.pieces.find((p) => height(plane, p.start) <= 0 && height(plane, p.end) > 0);
  if (!piece) return undefined;
  const count = piece.solid.points.length / 2;
  return Array.from({ length: count }, (_, k) => {
    const a = piece.solid.points[k]!;
    const b = piece.solid.points[count + k]!;
    const [below, above] = [height(plane, a), height(plane, b)];
    return between(a, b, below / (below - above));
  });
}
