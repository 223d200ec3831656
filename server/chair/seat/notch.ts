/** A point of a flat figure. */
export type Spot = readonly [number, number];

/** Nearer than this to an edge is on it, mm. */
const ON = 1e-7;

/**
 * A ring less a convex one that bites into its edge, both anticlockwise: the ring runs round the bite. The same ring when they do not
 * overlap; undefined when the bite is a hole, or more than one bite.
 */
export function notched(ring: readonly Spot[], bite: readonly Spot[]): Spot[] | undefined {
  const enters: Crossing[] = [];
  const leaves: Crossing[] = [];
  for (let k = 0; k < ring.length; k++) {
    const a = ring[k]!;
    const b = ring[(k + 1) % ring.length]!;
    const span = spanWithin(a, b, bite);
    if (!span) continue;
    if (span.from.edge >= 0) enters.push({ k, ...span.from, at: pointOn(a, b, span.from.t) });
    if (span.to.edge >= 0) leaves.push({ k, ...span.to, at: pointOn(a, b, span.to.t) });
  }
  if (enters.length === 0 && leaves.length === 0) {
    return bite.some((p) => holds(ring, p)) ? undefined : [...ring];
  }
  const enter = enters[0];
  const leave = leaves[0];
  if (!enter || !leave || enters.length > 1 || leaves.length > 1) return undefined;
  const left: Spot[] = [leave.at];
  for (let k = (leave.k + 1) % ring.length; ; k = (k + 1) % ring.length) {
    left.push(ring[k]!);
    if (k === enter.k) break;
  }
  left.push(enter.at);
  // Along the bite the other way round, from the edge where the ring meets it to the edge where it leaves.
  for (let e = enter.edge; e !== leave.edge; e = (e + bite.length - 1) % bite.length) left.push(bite[e]!);
  return tidy(left);
}

interface Crossing {
  /** The ring's edge, and the bite's. */
  k: number;
  edge: number;
  t: number;
  at: Spot;
}

const pointOn = (a: Spot, b: Spot, t: number): Spot => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];

/** The part of an edge inside a convex ring: where it goes in and out and through which of its edges; −1 where it starts or ends inside. */
function spanWithin(a: Spot, b: Spot, ring: readonly Spot[]) {
  const from = { t: 0, edge: -1 };
  const to = { t: 1, edge: -1 };
  for (let k = 0; k < ring.length; k++) {
    const p = ring[k]!;
    const q = ring[(k + 1) % ring.length]!;
    const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const off = (s: Spot) => ((q[0] - p[0]) * (s[1] - p[1]) - (q[1] - p[1]) * (s[0] - p[0])) / size - ON;
    const [start, end] = [off(a), off(b)];
    if (start <= 0 && end <= 0) return undefined;
    if (start > 0 && end > 0) continue;
    const t = start / (start - end);
    if (start <= 0 && t >= from.t) Object.assign(from, { t, edge: k });
    if (end <= 0 && t <= to.t) Object.assign(to, { t, edge: k });
  }
  return from.t < to.t ? { from, to } : undefined;
}

function holds(ring: readonly Spot[], [x, y]: Spot): boolean {
  let inside = false;
  for (let k = 0; k < ring.length; k++) {
    const [ax, ay] = ring[k]!;
    const [bx, by] = ring[(k + 1) % ring.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

const tidy = (ring: Spot[]): Spot[] =>
  ring.filter((p, k) => {
    const q = ring[(k + 1) % ring.length]!;
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-6;
  });
