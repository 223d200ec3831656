import type { Plane, Vec3 } from "./solid.ts";
import { cross, dot, negate, sub, unit } from "./vec.ts";

/** Numbers of points in order; the last is joined to the first. */
export type Loop = readonly number[];

/** A directed edge by the numbers of its points. */
export type DirectedEdge = readonly [from: number, to: number];

/** A flat face of a shell: its outer loop anticlockwise seen from outside, holes clockwise; numbers of the shell's points. */
export interface ShellFace {
  plane: Plane;
  outer: Loop;
  holes: readonly Loop[];
}

/** mm², positive where the loop runs anticlockwise about the normal. */
export function loopArea(points: readonly Vec3[], normal: Vec3, loop: Loop): number {
  const origin = points[loop[0]!]!;
  let twice = 0;
  for (let k = 1; k + 1 < loop.length; k++) {
    twice += dot(normal, cross(sub(points[loop[k]!]!, origin), sub(points[loop[k + 1]!]!, origin)));
  }
  return twice / 2;
}

type Spot = readonly [number, number];

/** A directed edge, and how sure it is that its face looks along the plane's normal: positive ahead, negative back. */
interface Looking {
  from: number;
  to: number;
  ahead: number;
}

/**
 * The faces in one plane from the directed edges left there: those that look along the plane's normal and those that look back. The wood is
 * on the left of an edge seen from outside.
 */
export function facesIn(points: readonly Vec3[], plane: Plane, edges: readonly DirectedEdge[]): ShellFace[] {
  if (edges.length === 0) return [];
  const n = plane.normal;
  const u = unit(cross(n, Math.abs(n[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0]));
  const v = cross(n, u);
  const flat = new Map<number, Spot>();
  for (const [from] of edges) flat.set(from, [dot(u, points[from]!), dot(v, points[from]!)]);
  const spot = (k: number): Spot => flat.get(k)!;
  const ahead: Loop[] = [];
  const back: Loop[] = [];
  for (const { loop, looks } of traced(lookings(edges, spot), spot)) (looks > 0 ? ahead : back).push(loop);
  const behind = { normal: negate(n), offset: -plane.offset };
  return [...nested(points, plane, ahead, spot), ...nested(points, behind, back, spot)];
}

/**
 * Which way the face beside each edge looks. The edges' winding number about the edge's own middle is the mean of how many faces cover
 * the plane on its two sides (those that look back counted negative): a half ahead, minus a half back. Of two faces that meet in an
 * edge of the same direction one looks each way. Weighed by length, as short edges tell less.
 */
function lookings(edges: readonly DirectedEdge[], spot: (k: number) => Spot): Looking[] {
  const twice = new Set<string>();
  // Each edge is held against all others: their places are looked up once.
  const ends = Float64Array.from(edges.flatMap(([from, to]) => [...spot(from), ...spot(to)]));
  return edges.map(([from, to]) => {
    const [a, b] = [spot(from), spot(to)];
    const at: Spot = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    let turn = 0;
    let others = 0;
    for (let k = 0; k < edges.length; k++) {
      const edge = edges[k]!;
      if (edge[0] === from && edge[1] === to) {
        others += 1;
        continue;
      }
      const x = ends[4 * k]! - at[0];
      const y = ends[4 * k + 1]! - at[1];
      const s = ends[4 * k + 2]! - at[0];
      const t = ends[4 * k + 3]! - at[1];
      turn += Math.atan2(x * t - y * s, x * s + y * t);
    }
    if (others < 2) return { from, to, ahead: turn * length };
    const key = `${from} ${to}`;
    const ahead = twice.has(key) ? -length : length;
    twice.add(key);
    return { from, to, ahead };
  });
}

/** The closed loops the edges make. Where several meet in a point each goes on by its sharpest turn to the left, so that none crosses itself. */
function traced(edges: readonly Looking[], spot: (k: number) => Spot): { loop: Loop; looks: number }[] {
  const from = new Map<number, Looking[]>();
  for (const edge of edges) {
    const there = from.get(edge.from);
    if (there) there.push(edge);
    else from.set(edge.from, [edge]);
  }
  const loops: { loop: Loop; looks: number }[] = [];
  for (const start of edges) {
    if (!from.get(start.from)!.includes(start)) continue;
    const run = [start];
    remove(from, start);
    for (let at = start; at.to !== start.from; ) {
      at = onwards(at, from.get(at.to) ?? [], spot);
      remove(from, at);
      run.push(at);
    }
    for (const part of apartWhereTouching(run)) {
      loops.push({
        loop: part.map((edge) => edge.from),
        looks: part.reduce((sum, edge) => sum + edge.ahead, 0),
      });
    }
  }
  return loops;
}

function remove(from: Map<number, Looking[]>, edge: Looking): void {
  const there = from.get(edge.from)!;
  there.splice(there.indexOf(edge), 1);
}

/** The edge by which a loop goes on: one that looks the same way if there is one. */
function onwards(at: Looking, choices: readonly Looking[], spot: (k: number) => Spot): Looking {
  if (choices.length === 1) return choices[0]!;
  const alike = choices.filter((edge) => edge.ahead > 0 === at.ahead > 0);
  const side = at.ahead > 0 ? 1 : -1;
  const [x, y] = [spot(at.to)[0] - spot(at.from)[0], spot(at.to)[1] - spot(at.from)[1]];
  const turn = (edge: Looking): number => {
    const [s, t] = [spot(edge.to)[0] - spot(edge.from)[0], spot(edge.to)[1] - spot(edge.from)[1]];
    return side * Math.atan2(x * t - y * s, x * s + y * t);
  };
  return (alike.length > 0 ? alike : choices).reduce((a, b) => (turn(b) > turn(a) ? b : a));
}

/** A loop that comes through one point twice, as two. */
function apartWhereTouching(run: readonly Looking[]): (readonly Looking[])[] {
  const seen = new Map<number, number>();
  for (const [k, { from }] of run.entries()) {
    const first = seen.get(from);
    if (first !== undefined)
      return [
        ...apartWhereTouching(run.slice(first, k)),
        ...apartWhereTouching([...run.slice(0, first), ...run.slice(k)]),
      ];
    seen.set(from, k);
  }
  return [run];
}

/** Loops that run anticlockwise about the normal are faces, the others holes in the smallest face round them. */
function nested(
  points: readonly Vec3[],
  plane: Plane,
  loops: readonly Loop[],
  spot: (k: number) => Spot,
): ShellFace[] {
  const sized = loops.map((loop) => ({ loop, area: loopArea(points, plane.normal, loop) }));
  const faces = sized
    .filter(({ area }) => area > 0)
    .sort((a, b) => a.area - b.area)
    .map(({ loop }) => ({ plane, outer: loop, holes: [] as Loop[] }));
  for (const { loop, area } of sized) {
    if (area > 0) continue;
    const round = faces.find(({ outer }) =>
      loop.some((k) => !outer.includes(k) && within(spot(k), outer, spot)),
    );
    (round ?? faces[faces.length - 1])?.holes.push(loop);
  }
  return faces;
}

function within([x, y]: Spot, loop: Loop, spot: (k: number) => Spot): boolean {
  let inside = false;
  loop.forEach((a, k) => {
    const [ax, ay] = spot(a);
    const [bx, by] = spot(loop[(k + 1) % loop.length]!);
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  });
  return inside;
}
