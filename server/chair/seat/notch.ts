/** A point of a flat figure. */
export type Spot = readonly [number, number];

/** Nearer than this to an edge is on it, mm. */
const ON = 1e-7;

/**
 * A ring less a convex one that bites into its edge, both anticlockwise: the ring runs round the bite. Where the bite cuts a crumb off, the
 * rest is left. The same ring when they do not overlap; undefined when the bite is a hole, or cuts the ring in two.
 */
export function notched(ring: readonly Spot[], bite: readonly Spot[]): Spot[] | undefined {
  const enters: Crossing[] = [];
  const leaves: Crossing[] = [];
  for (let k = 0; k < ring.length; k++) {
    const a = ring[k]!;
    const b = ring[(k + 1) % ring.length]!;
    const span = spanWithin(a, b, bite);
    if (!span) continue;
    const crossing = ({ t, edge }: { t: number; edge: number }): Crossing => {
      const at = pointOn(a, b, t);
      return { along: k + t, at, round: edge + sharesOf(bite, edge, at) };
    };
    if (span.from.edge >= 0) enters.push(crossing(span.from));
    if (span.to.edge >= 0) leaves.push(crossing(span.to));
  }
  if (enters.length === 0 && leaves.length === 0) {
    return bite.some((p) => holds(ring, p)) ? undefined : [...ring];
  }
  if (enters.length !== leaves.length) return undefined;
  const left = leaves
    .map((leave) => loopFrom(leave, { ring, bite, enters, leaves }))
    .sort((a, b) => areaOf(b) - areaOf(a));
  const crumbs = left.slice(1).every((each) => areaOf(each) < CRUMB * areaOf(left[0]!));
  return crumbs ? withoutCrumbs(left[0]!) : undefined;
}

/** A part of no more than this share of the rest falls off. */
const CRUMB = 0.01;

/** The part of the ring that begins where it leaves the bite: to where it enters it again, and back along the bite. */
function loopFrom(
  start: Crossing,
  {
    ring,
    bite,
    enters,
    leaves,
  }: { ring: readonly Spot[]; bite: readonly Spot[]; enters: Crossing[]; leaves: Crossing[] },
): Spot[] {
  const left: Spot[] = [];
  let leave = start;
  do {
    const enter = first(enters, ({ along }) => (along - leave.along + ring.length) % ring.length);
    left.push(leave.at, ...cornersFrom(ring, leave.along, enter.along), enter.at);
    const next = first(leaves, ({ round }) => (enter.round - round + bite.length) % bite.length);
    left.push(...[...cornersFrom(bite, next.round, enter.round)].reverse());
    leave = next;
  } while (leave !== start && left.length < MOST);
  return left;
}

/** More corners than any ring has. */
const MOST = 1e4;

const first = (some: readonly Crossing[], far: (each: Crossing) => number): Crossing =>
  some.reduce((best, each) => (far(each) < far(best) ? each : best));

/** The corners passed on the way round from one place to another, each an edge and a share of it. */
function cornersFrom(ring: readonly Spot[], from: number, to: number): Spot[] {
  const end = to < from ? to + ring.length : to;
  const corners: Spot[] = [];
  for (let k = Math.floor(from) + 1; k <= end; k++) corners.push(ring[k % ring.length]!);
  return corners;
}

/** Where on an edge a point lies, from 0 to just under 1. */
function sharesOf(ring: readonly Spot[], edge: number, at: Spot): number {
  const [p, q] = [ring[edge]!, ring[(edge + 1) % ring.length]!];
  const share = Math.hypot(at[0] - p[0], at[1] - p[1]) / Math.hypot(q[0] - p[0], q[1] - p[1]);
  return Math.min(share, 1 - 1e-12);
}

const areaOf = (ring: readonly Spot[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);

interface Crossing {
  /** Where along the ring and round the bite: an edge and a share of it. */
  along: number;
  round: number;
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

/** Whether a point lies within a ring. */
export function holds(ring: readonly Spot[], [x, y]: Spot): boolean {
  let inside = false;
  for (let k = 0; k < ring.length; k++) {
    const [ax, ay] = ring[k]!;
    const [bx, by] = ring[(k + 1) % ring.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}

const withoutCrumbs = (ring: Spot[]): Spot[] =>
  ring.filter((p, k) => {
    const q = ring[(k + 1) % ring.length]!;
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-6;
  });
