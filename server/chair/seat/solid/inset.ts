import type { Spot } from "./edge.ts";
import type { Strip } from "./mirror.ts";
import { mirroredRings, mirroredStrips } from "./mirror.ts";

interface Edge {
  normal: Spot;
  still: boolean;
  /** Where it begins now, and how that moves for each mm. */
  start: Spot;
  speed: Spot;
  /** The ways of its beginning and its end since the last level. */
  first: Strip["corners"];
  last: Strip["corners"];
}

/** Edges that turn inward by more than this at a corner part round it, radians; and in steps of about this. */
const INWARD = (12 * Math.PI) / 180;
/** Corners nearer than this are one, mm. */
const SAME = 1e-7;
/** Edges that turn by less than this, as a sine, move as one. */
const STRAIGHT = 1e-6;

/**
 * A ring (anticlockwise, mirrored about x = 0) as its edges move inward together, all as fast; those that `still` names stay. `levels` grow,
 * from 0 on. Gives the strips that the edges pass over between the levels, and the rings that are left at the last: several where a tail or a
 * waist is narrower than what is taken off both its sides, none when nothing is left.
 */
export function insetThrough(
  ring: readonly Spot[],
  levels: readonly number[],
  still: (edge: number) => boolean = () => false,
): { strips: Strip[]; left: Spot[][] } {
  const strips: Strip[] = [];
  const left: Spot[][] = [];
  const waiting: Front[] = [{ edges: edgesOf(ring, still), moved: 0, level: 0 }];
  for (let front = waiting.pop(); front; front = waiting.pop()) {
    const halves = moveIn(front, levels, strips);
    if (halves === "gone") continue;
    if (halves) waiting.push(...halves);
    else left.push(front.edges.map(({ start }) => start));
  }
  return { strips: mirroredStrips(strips), left: mirroredRings(left) };
}

/** A ring on its way in: how far it has moved, and the level it moves to. */
interface Front {
  edges: Edge[];
  moved: number;
  level: number;
}

/** Moves a ring in to the last level, or to where nothing of it is left, or to where it parts in two, which it then gives. */
function moveIn(
  front: Front,
  levels: readonly number[],
  strips: Strip[],
): [Front, Front] | "gone" | undefined {
  for (; front.level < levels.length; front.level++) {
    const { level } = front;
    const until = levels[level]!;
    for (;;) {
      if (front.edges.length < 3) {
        for (const edge of front.edges) finish(strips, edge, level - 1);
        return "gone";
      }
      setSpeeds(front.edges);
      const next = nextToVanish(front.edges, until - front.moved);
      const meeting = nextToMeet(front.edges, next?.after ?? until - front.moved);
      if (meeting) {
        advance(front.edges, meeting.after);
        front.moved += meeting.after;
        return partedAt(front, meeting.which, strips);
      }
      if (!next) break;
      advance(front.edges, next.after);
      front.moved += next.after;
      front.edges = withoutFolded({ ...front, edges: withoutEdge(front, next.which, strips) }, strips);
    }
    advance(front.edges, until - front.moved);
    front.moved = until;
    for (const [k, edge] of front.edges.entries()) {
      const end = front.edges[(k + 1) % front.edges.length]!.start;
      edge.first.push({ at: edge.start, moved: until });
      edge.last.push({ at: end, moved: until });
      if (level > 0) finish(strips, edge, level - 1);
      edge.first = [{ at: edge.start, moved: until }];
      edge.last = [{ at: end, moved: until }];
    }
  }
  return undefined;
}

/** The edges that are left when one has no length any more. */
function withoutEdge({ edges, moved, level }: Front, which: number, strips: Strip[]): Edge[] {
  const gone = edges[which]!;
  const after = edges[(which + 1) % edges.length]!;
  const before = edges[(which + edges.length - 1) % edges.length]!;
  const point = { at: gone.start, moved };
  gone.first.push(point);
  after.first.push({ at: after.start, moved });
  after.start = gone.start;
  after.first.push(point);
  before.last.push(point);
  finish(strips, gone, level - 1);
  return edges.filter((edge) => edge !== gone);
}

/** The edges without two that lie on each other: both sides of a tail, once its end has gone. */
function withoutFolded({ edges, moved, level }: Front, strips: Strip[]): Edge[] {
  const one = edges.findIndex(({ normal: [x, y] }, k) => {
    const [u, v] = edges[(k + 1) % edges.length]!.normal;
    return x * u + y * v < FOLDED;
  });
  if (one < 0 || edges.length < 4) return edges;
  const from = (k: number) => edges[(one + k + edges.length) % edges.length]!;
  const [before, a, b, after] = [from(-1), from(0), from(1), from(2)];
  const [begins, folds, ends] = [a, b, after].map(({ start }) => ({ at: start, moved }));
  a.first.push(begins!);
  a.last.push(folds!);
  b.first.push(folds!);
  b.last.push(ends!);
  before.last.push(begins!);
  after.first.push(ends!);
  for (const edge of [a, b]) finish(strips, edge, level - 1);
  return edges.filter((edge) => edge !== a && edge !== b);
}

/** Edges that turn back on each other have normals of less than this as a cosine. */
const FOLDED = -1 + 1e-9;

/** Both parts of a ring of which a corner and its mirrored one have met on the middle line. */
function partedAt(
  { edges, moved, level }: Front,
  [a, b]: readonly [number, number],
  strips: Strip[],
): [Front, Front] {
  const at: Spot = [0, edges[a]!.start[1]];
  for (const k of [a, b]) {
    edges[k]!.start = at;
    edges[k]!.first.push({ at, moved });
    edges[(k + edges.length - 1) % edges.length]!.last.push({ at, moved });
  }
  const [low, high] = [Math.min(a, b), Math.max(a, b)];
  const part = (own: Edge[]): Front => ({
    edges: withoutFolded({ edges: own, moved, level }, strips),
    moved,
    level,
  });
  return [part(edges.slice(low, high)), part([...edges.slice(high), ...edges.slice(0, low)])];
}

/** A ring's parallel, so far inside it; none when nothing is left. */
export const insetBy = (ring: readonly Spot[], by: number): Spot[][] =>
  by === 0 ? [[...ring]] : insetThrough(ring, [0, by]).left;

/** A ring moved in by so much, with as many corners as it has: a corner whose edge has vanished stands where the next one does. */
export function cornersInset(ring: readonly Spot[], by: number): Spot[] {
  let edges = edgesOf(ring, () => false);
  const at = new Map<Edge, Edge>(edges.map((edge) => [edge, edge]));
  const own = ring.map((corner) => edges.filter((edge) => edge.start === corner).at(-1)!);
  let moved = 0;
  while (edges.length >= 3) {
    setSpeeds(edges);
    const next = nextToVanish(edges, by - moved);
    if (!next) break;
    advance(edges, next.after);
    moved += next.after;
    const gone = edges[next.which]!;
    const after = edges[(next.which + 1) % edges.length]!;
    after.start = gone.start;
    for (const [edge, now] of at) if (now === gone) at.set(edge, after);
    edges = edges.filter((edge) => edge !== gone);
  }
  advance(edges, by - moved);
  return own.map((edge) => at.get(edge)!.start);
}

function edgesOf(ring: readonly Spot[], still: (edge: number) => boolean): Edge[] {
  const count = ring.length;
  const edges: Edge[] = [];
  const normals = ring.map(([x, y], k): Spot => {
    const [u, v] = ring[(k + 1) % count]!;
    const size = Math.hypot(u - x, v - y);
    return [(v - y) / size, (x - u) / size];
  });
  const edge = (normal: Spot, start: Spot, stays: boolean): Edge => ({
    normal,
    still: stays,
    start,
    speed: [0, 0],
    first: [],
    last: [],
  });
  const beside = (k: number): Spot[] => {
    const last = (k + count - 1) % count;
    if (still(k) === still(last)) return [];
    return still(last)
      ? fan([-normals[last]![1], normals[last]![0]], normals[k]!).slice(0, -1)
      : fan(normals[last]!, [normals[k]![1], -normals[k]![0]]).slice(1);
  };
  for (const [k, normal] of normals.entries()) {
    const before = normals[(k + count - 1) % count]!;
    const turn = Math.atan2(crossOf(before, normal), before[0] * normal[0] + before[1] * normal[1]);
    const steps = turn < -INWARD && !still(k) ? Math.floor(-turn / INWARD) : 0;
    // An inward corner's parallel is an arc about it: edges without length that grow.
    for (let s = 1; s <= steps; s++) {
      const angle = Math.atan2(before[1], before[0]) + (turn * s) / (steps + 1);
      edges.push(edge([Math.cos(angle), Math.sin(angle)], ring[k]!, false));
    }
    for (const normal of beside(k)) edges.push(edge(normal, ring[k]!, false));
    edges.push(edge(normal, ring[k]!, still(k)));
  }
  return edges;
}

/**
 * The ways between two that turn inward, both among them: where the edge beside stays, the parallel is an arc about its end, square to it in the
 * end. Without them a stretch nearly in line with that edge would pass over all of it.
 */
function fan(from: Spot, to: Spot): Spot[] {
  const turn = Math.atan2(crossOf(from, to), from[0] * to[0] + from[1] * to[1]);
  if (turn >= 0) return [from];
  const steps = Math.ceil(-turn / INWARD);
  const first = Math.atan2(from[1], from[0]);
  return Array.from({ length: steps + 1 }, (_, s): Spot => {
    const angle = first + (turn * s) / steps;
    return [Math.cos(angle), Math.sin(angle)];
  });
}

const crossOf = (a: Spot, b: Spot): number => a[0] * b[1] - a[1] * b[0];

/** How each edge's beginning moves: with the edge before it and with itself. */
function setSpeeds(edges: readonly Edge[]): void {
  for (const [k, edge] of edges.entries()) {
    const before = edges[(k + edges.length - 1) % edges.length]!;
    const [a, b] = [before.normal, edge.normal];
    const [sa, sb] = [before.still ? 0 : 1, edge.still ? 0 : 1];
    const turn = crossOf(a, b);
    edge.speed =
      Math.abs(turn) < STRAIGHT
        ? [(-b[0] * (sa + sb)) / 2, (-b[1] * (sa + sb)) / 2]
        : [(-sa * b[1] + sb * a[1]) / turn, (-sb * a[0] + sa * b[0]) / turn];
  }
}

/** The edge that first has no length left within so many mm. */
function nextToVanish(edges: readonly Edge[], within: number): { which: number; after: number } | undefined {
  let found: { which: number; after: number } | undefined;
  for (const [k, edge] of edges.entries()) {
    const next = edges[(k + 1) % edges.length]!;
    const way: Spot = [-edge.normal[1], edge.normal[0]];
    const along = (from: Spot, to: Spot) => (to[0] - from[0]) * way[0] + (to[1] - from[1]) * way[1];
    const length = along(edge.start, next.start);
    const rate = along(edge.speed, next.speed);
    if (rate > -1e-12) continue;
    const after = Math.max(0, length / -rate);
    if (after <= within && (!found || after < found.after)) found = { which: k, after };
  }
  return found;
}

/** Corners nearer to the middle line than this stand on it, mm; inward ones turn by more than this, as a sine. */
const MIDDLE = 1e-6;

/** The inward corner that first meets its mirrored one on the middle line, within less than so many mm. */
function nextToMeet(
  edges: readonly Edge[],
  within: number,
): { which: readonly [number, number]; after: number } | undefined {
  let found: { which: readonly [number, number]; after: number } | undefined;
  for (const [k, { start, speed, normal }] of edges.entries()) {
    const before = edges[(k + edges.length - 1) % edges.length]!;
    if (start[0] < MIDDLE || speed[0] >= 0 || crossOf(before.normal, normal) > -MIDDLE) continue;
    const after = -start[0] / speed[0];
    if (after >= (found?.after ?? within) - SAME) continue;
    // By how they move too: the corners of an arc begin in one place.
    const twin = edges.findIndex((other) => isMirrored(other.start, start) && isMirrored(other.speed, speed));
    if (twin >= 0) found = { which: [k, twin], after };
  }
  return found;
}

/** A corner and its mirrored one may be so far from being so, mm. */
const MIRRORED = 1e-4;

const isMirrored = ([x, y]: Spot, [u, v]: Spot): boolean =>
  Math.abs(x + u) < MIRRORED && Math.abs(y - v) < MIRRORED;

function advance(edges: readonly Edge[], by: number): void {
  for (const edge of edges)
    edge.start = [edge.start[0] + edge.speed[0] * by, edge.start[1] + edge.speed[1] * by];
}

function finish(strips: Strip[], { first, last, still }: Edge, level: number): void {
  if (still || level < 0) return;
  const [begin, ...way] = first;
  const ring = [begin!, ...last, ...way.reverse()];
  const corners = ring.filter(({ at: [x, y] }, k) => {
    const [u, v] = ring[(k + ring.length - 1) % ring.length]!.at;
    return Math.hypot(x - u, y - v) > SAME;
  });
  if (corners.length >= 3) strips.push({ level, corners });
}
