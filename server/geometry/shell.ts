import { type DirectedEdge, facesIn, type Loop, loopArea, type ShellFace } from "./loops.ts";
import type { Convex, Plane, Vec3 } from "./solid.ts";
import { along, cross, dot, norm, sub } from "./vec.ts";
import { pointsBetween, WELD, Welder } from "./weld.ts";

/** The closed surface of a body: flat faces that meet edge to edge, each edge in two faces, once each way. */
export interface Shell {
  points: Vec3[];
  faces: ShellFace[];
}

/** A face's corners may lie this far off the plane it is put in, mm. */
const IN_PLANE = 4 * WELD;

/**
 * The surface of convex pieces that touch and do not overlap, as one shell (or several, where pieces do not touch). What two pieces share is
 * left out, also where their faces cover each other in part; faces that lie in one plane are one face. It is always closed: in every
 * plane the outlines of all faces are added up as directed edges, opposite ones cancel, and what is left bounds what can be touched.
 */
export function shellOf(pieces: readonly Convex[]): Shell {
  const welder = new Welder();
  const rings: { ring: number[]; normal: Vec3 }[] = [];
  for (const piece of pieces) {
    const numbers = piece.points.map((p) => welder.at(p));
    piece.faces.forEach((face, which) => {
      const ring = withoutRepeats(face.map((corner) => numbers[corner]!));
      if (ring.length >= 3) rings.push({ ring, normal: piece.planes[which]!.normal });
    });
  }
  const groups = grouped(welder.points, rings);
  // Where faces that look at each other cover each other in part, their outlines may cross: a corner of both from then on.
  while (addCrossings(welder, groups)) addEdges(welder.points, groups);
  const { points } = welder;
  const faces = groups.flatMap(({ plane, edges }) => facesIn(points, plane, directed(edges, points.length)));
  return tidied(points, faces);
}

interface PlaneGroup {
  plane: Plane;
  rings: number[][];
  /** Some of its faces look one way and some the other. */
  mixed: boolean;
  /** Edges left so far: how many times more from the lower to the higher number than back, by `low × points + high`. */
  edges: Map<number, number>;
}

function grouped(points: readonly Vec3[], rings: readonly { ring: number[]; normal: Vec3 }[]): PlaneGroup[] {
  const groups: PlaneGroup[] = [];
  for (const { ring, normal } of rings) {
    const first = points[ring[0]!]!;
    const known = groups.find(({ plane: { normal: n, offset } }) => {
      // Written out, as every ring is held against every plane so far.
      const off = n[0] * first[0] + n[1] * first[1] + n[2] * first[2] - offset;
      return (
        off < IN_PLANE &&
        off > -IN_PLANE &&
        Math.abs(dot(n, normal)) > 0.99 &&
        ring.every((k) => Math.abs(dot(n, points[k]!) - offset) < IN_PLANE)
      );
    });
    if (known) {
      known.rings.push(ring);
      known.mixed ||= dot(known.plane.normal, normal) < 0;
    } else {
      const plane = { normal, offset: dot(normal, first) };
      groups.push({ plane, rings: [ring], mixed: false, edges: new Map() });
    }
  }
  addEdges(points, groups);
  return groups;
}

/** Adds up every group's outlines anew, each edge divided where a point lies on it. */
function addEdges(points: readonly Vec3[], groups: readonly PlaneGroup[]): void {
  const between = pointsBetween(points);
  const count = points.length;
  for (const { rings, edges } of groups) {
    edges.clear();
    const add = (from: number, to: number): void => {
      const key = from < to ? from * count + to : to * count + from;
      const sum = (edges.get(key) ?? 0) + (from < to ? 1 : -1);
      if (sum === 0) edges.delete(key);
      else edges.set(key, sum);
    };
    for (const ring of rings) {
      ring.forEach((from, k) => {
        const to = ring[(k + 1) % ring.length]!;
        let last = from;
        for (const next of between(from, to)) {
          add(last, next);
          last = next;
        }
        add(last, to);
      });
    }
  }
}

function directed(edges: PlaneGroup["edges"], count: number): DirectedEdge[] {
  const found: DirectedEdge[] = [];
  for (const [key, sum] of edges) {
    const [low, high] = [Math.floor(key / count), key % count];
    for (let k = 0; k < Math.abs(sum); k++) found.push(sum > 0 ? [low, high] : [high, low]);
  }
  return found;
}

/** Adds the points where edges left in one plane cross; whether there were any new ones. */
function addCrossings(welder: Welder, groups: readonly PlaneGroup[]): boolean {
  const { points } = welder;
  const before = points.length;
  for (const { plane, edges, mixed } of groups) {
    if (!mixed) continue;
    const all = directed(edges, before);
    all.forEach(([a, b], k) => {
      for (const [c, d] of all.slice(k + 1)) {
        const at = crossing(plane.normal, points[a]!, points[b]!, points[c]!, points[d]!);
        if (at) welder.at(at);
      }
    });
  }
  return points.length > before;
}

/** Where two edges in a plane cross well inside both; undefined when they do not. */
function crossing(normal: Vec3, a: Vec3, b: Vec3, c: Vec3, d: Vec3): Vec3 | undefined {
  const run = sub(b, a);
  const other = cross(normal, sub(d, c));
  const from = dot(other, sub(a, c));
  const to = dot(other, sub(b, c));
  const slack = WELD * norm(other);
  if (!((from > slack && to < -slack) || (from < -slack && to > slack))) return undefined;
  const side = cross(normal, run);
  const start = dot(side, sub(c, a));
  const end = dot(side, sub(d, a));
  const room = WELD * norm(side);
  if (!((start > room && end < -room) || (start < -room && end > room))) return undefined;
  return along(a, run, from / (from - to));
}

const withoutRepeats = (ring: number[]): number[] =>
  ring.filter((corner, k) => corner !== ring[(k + 1) % ring.length]);

/** Points that only lie on a straight edge between two faces are left out, and so are those no longer used. */
function tidied(points: readonly Vec3[], faces: readonly ShellFace[]): Shell {
  const beside = new Map<number, Set<number>>();
  const note = (a: number, b: number) => {
    const there = beside.get(a);
    if (there) there.add(b);
    else beside.set(a, new Set([b]));
  };
  for (const { outer, holes } of faces)
    for (const loop of [outer, ...holes])
      loop.forEach((from, k) => {
        const to = loop[(k + 1) % loop.length]!;
        note(from, to);
        note(to, from);
      });
  const straight = (k: number): boolean => {
    const [a, b, ...more] = beside.get(k)!;
    if (a === undefined || b === undefined || more.length > 0) return false;
    const u = sub(points[a]!, points[k]!);
    const v = sub(points[b]!, points[k]!);
    return dot(u, v) < 0 && norm(cross(u, v)) < WELD * Math.max(norm(u), norm(v));
  };
  const numbers = new Map<number, number>();
  const kept: Vec3[] = [];
  for (const k of beside.keys()) if (!straight(k)) numbers.set(k, kept.push(points[k]!) - 1);
  const renumbered = (loop: Loop): Loop => loop.flatMap((k) => numbers.get(k) ?? []);
  return {
    points: kept,
    faces: faces.map((face) => ({
      ...face,
      outer: renumbered(face.outer),
      holes: face.holes.map(renumbered),
    })),
  };
}

/** mm³, by the divergence theorem: of every face its area times how far its plane lies out. */
export function shellVolume({ points, faces }: Shell): number {
  const origin = points[0];
  if (!origin) return 0;
  let three = 0;
  for (const { plane, outer, holes } of faces) {
    const out = plane.offset - dot(plane.normal, origin);
    for (const loop of [outer, ...holes]) three += out * loopArea(points, plane.normal, loop);
  }
  return three / 3;
}

/** An edge of a shell with the faces on its left and right, seen from outside with the edge running up. */
export interface ShellEdge {
  from: number;
  to: number;
  left: number;
  right: number;
}

/**
 * Every edge of a shell once. Undefined when some edge is not in two faces, once each way: then the surface is not one that a solid can
 * have (two parts of it touch along a line).
 */
export function shellEdges({ faces }: Shell): ShellEdge[] | undefined {
  const open = new Map<string, { from: number; to: number; face: number }>();
  const edges: ShellEdge[] = [];
  let sound = true;
  const seen = new Set<string>();
  for (const [which, { outer, holes }] of faces.entries()) {
    for (const loop of [outer, ...holes]) {
      loop.forEach((from, k) => {
        const to = loop[(k + 1) % loop.length]!;
        if (seen.has(`${from} ${to}`)) sound = false;
        seen.add(`${from} ${to}`);
        const other = open.get(`${to} ${from}`);
        if (!other) open.set(`${from} ${to}`, { from, to, face: which });
        else {
          open.delete(`${to} ${from}`);
          edges.push({ from: other.from, to: other.to, left: other.face, right: which });
        }
      });
    }
  }
  return sound && open.size === 0 ? edges : undefined;
}

/** How many separate surfaces a shell has: 1 for a solid in one piece without cavities. */
export function shellCount(shell: Shell): number {
  const lead = shell.points.map((_, k) => k);
  const find = (k: number): number => {
    let at = k;
    while (lead[at] !== at) at = lead[at]!;
    lead[k] = at;
    return at;
  };
  for (const { outer, holes } of shell.faces)
    for (const loop of [outer, ...holes]) for (const k of loop) lead[find(k)] = find(outer[0]!);
  return new Set(lead.map((_, k) => find(k))).size;
}
