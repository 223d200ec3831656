/**
 * Outlines of curved parts in the plane of their curve, grain along x: a lower and an upper line over the same length. mm.
 */

export type Spot = readonly [number, number];

/** x rises strictly along a line. */
export type Line = readonly Spot[];

export interface Outline {
  low: Line;
  high: Line;
}

/** Edges of a part's ends are steeper than this and are not long edges, rise in run. */
const STEEP = 1;
/** Spots nearer than this along the grain are one, mm. */
const SAME = 1e-3;
/** Spots that lie on the line of their neighbours by less than this say nothing, mm. */
const STRAIGHT = 1e-6;

/**
 * The outline of a stick made of convex stretches, given by the points of each in the plane. Its ends are taken square: slanting ends
 * are cut later from what is left here. `beyond` are points past its ends (tenons), which it is made long and wide enough for.
 */
export function outlineOf(stretches: readonly (readonly Spot[])[], beyond: readonly Spot[] = []): Outline {
  const hulls = stretches.map(hullOf).filter(({ high }) => high.length > 1);
  const high = edgeOf(hulls.map((hull) => hull.high));
  const low = flip(edgeOf(hulls.map((hull) => flip(hull.low))));
  const own = alongOf(stretches);
  const ends = beyond.length > 0 ? alongOf([...stretches, beyond]) : own;
  return {
    high: held(runOn(high, own), ends, beyond),
    low: flip(held(runOn(flip(low), own), ends, beyond.map(upsideDown))),
  };
}

/** How far some spots reach along the grain. */
function alongOf(stretches: readonly (readonly Spot[])[]): Spot {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const stretch of stretches) {
    for (const spot of stretch) {
      const x = spot[0];
      if (x < from) from = x;
      if (x > to) to = x;
    }
  }
  return [from, to];
}

const upsideDown = (spot: Spot): Spot => [spot[0], -spot[1]];
const flip = (line: Line): Line => line.map(upsideDown);

/** The upper and lower chain of some points' convex hull, by x. */
function hullOf(points: readonly Spot[]): { high: Line; low: Line } {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return { high: chainOf(sorted, 1), low: chainOf(sorted, -1) };
}

function chainOf(sorted: readonly Spot[], sign: 1 | -1): Spot[] {
  const kept: Spot[] = [];
  for (const p of sorted) {
    const last = kept[kept.length - 1];
    if (last && p[0] - last[0] < SAME) {
      if (sign * (p[1] - last[1]) <= 0) continue;
      kept.pop();
    }
    while (kept.length > 1 && sign * turn(kept[kept.length - 2]!, kept[kept.length - 1]!, p) >= 0) kept.pop();
    kept.push(p);
  }
  return kept;
}

const turn = (a: Spot, b: Spot, c: Spot): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** The upper edge of all stretches together, without the slanting ends. Plain loops: it is asked for each curved part of each study. */
function edgeOf(chains: readonly Line[]): Spot[] {
  const xs = new Float64Array(chains.reduce((sum, chain) => sum + chain.length, 0));
  let filled = 0;
  for (const chain of chains) for (const [x] of chain) xs[filled++] = x;
  xs.sort();
  // How far along each chain x has come.
  const reached = new Int32Array(chains.length);
  const spots: Spot[] = [];
  for (const x of xs) {
    const before = spots[spots.length - 1];
    if (before && x - before[0] < SAME) continue;
    let y = Number.NEGATIVE_INFINITY;
    for (let c = 0; c < chains.length; c++) {
      const chain = chains[c]!;
      const first = chain[0]![0];
      const last = chain[chain.length - 1]![0];
      if (x < first - SAME || x > last + SAME) continue;
      const inside = Math.min(Math.max(x, first), last);
      while (reached[c]! < chain.length - 2 && chain[reached[c]! + 1]![0] < inside) reached[c]!++;
      y = Math.max(y, onStretch(chain, reached[c]!, inside));
    }
    if (Number.isFinite(y)) spots.push([x, y]);
  }
  const slope = (k: number) =>
    Math.abs((spots[k + 1]![1] - spots[k]![1]) / (spots[k + 1]![0] - spots[k]![0]));
  let from = 0;
  let to = spots.length;
  while (to - from > 2 && slope(from) > STEEP) from++;
  while (to - from > 2 && slope(to - 2) > STEEP) to--;
  return withoutStraight(spots.slice(from, to));
}

function withoutStraight(spots: readonly Spot[]): Spot[] {
  const kept: Spot[] = [];
  for (const [k, p] of spots.entries()) {
    const before = kept[kept.length - 1];
    const after = spots[k + 1];
    if (before && after) {
      const straight = before[1] + ((after[1] - before[1]) * (p[0] - before[0])) / (after[0] - before[0]);
      if (Math.abs(straight - p[1]) < STRAIGHT) continue;
    }
    kept.push(p);
  }
  return kept;
}

/** Height of a line at x; its first and last stretch run on beyond it. */
export function lineAt(line: Line, x: number): number {
  let k = 0;
  while (k < line.length - 2 && line[k + 1]![0] < x) k++;
  return onStretch(line, k, x);
}

/** Height at x of the straight through spot k of a line and the next. */
function onStretch(line: Line, k: number, x: number): number {
  const a = line[k]!;
  const b = line[k + 1] ?? a;
  return b[0] === a[0] ? a[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
}

/** The line made to reach from end to end, its first and last stretch run on. */
function runOn(line: readonly Spot[], [from, to]: Spot): Spot[] {
  const spots = [...line];
  if (from < spots[0]![0] - SAME) spots[0] = [from, lineAt(line, from)];
  const last = spots.length - 1;
  if (to > spots[last]![0] + SAME) spots[last] = [to, lineAt(line, to)];
  return spots;
}

/** The line held level past its ends, raised where the tenons there stand higher. */
function held(line: readonly Spot[], [from, to]: Spot, tenons: readonly Spot[]): Spot[] {
  const spots = [...line];
  const first = spots[0]!;
  const last = spots[spots.length - 1]!;
  const over = (own: number, within: (x: number) => boolean) =>
    Math.max(own, ...tenons.filter(([x]) => within(x)).map(([, y]) => y));
  if (from < first[0] - SAME) {
    const y = over(first[1], (x) => x <= first[0] + SAME);
    if (y > first[1]) spots[0] = [first[0], y];
    spots.unshift([from, y]);
  }
  if (to > last[0] + SAME) {
    const y = over(last[1], (x) => x >= last[0] - SAME);
    if (y > last[1]) spots[spots.length - 1] = [last[0], y];
    spots.push([to, y]);
  }
  return spots;
}

/** The outline grown by a distance square to its long edges; its length stays. */
export function grown(outline: Outline, by: number): Outline {
  return { high: raised(outline.high, by), low: flip(raised(flip(outline.low), by)) };
}

/** A line moved up square to itself, its stretches met again where they cross. */
function raised(line: Line, by: number): Line {
  if (by === 0) return line;
  const lifts = line.slice(1).map((b, k) => {
    const a = line[k]!;
    const slope = (b[1] - a[1]) / (b[0] - a[0]);
    return { a, slope, lift: by * Math.hypot(1, slope) };
  });
  const on = (k: number, x: number) =>
    lifts[k]!.a[1] + lifts[k]!.slope * (x - lifts[k]!.a[0]) + lifts[k]!.lift;
  const spots: Spot[] = [[line[0]![0], on(0, line[0]![0])]];
  for (let k = 0; k + 1 < lifts.length; k++) {
    const one = lifts[k]!;
    const next = lifts[k + 1]!;
    const at = line[k + 1]![0];
    const x =
      Math.abs(one.slope - next.slope) < 1e-9 ? at : (on(k + 1, 0) - on(k, 0)) / (one.slope - next.slope);
    // A stretch that is swallowed by its neighbours at a hollow is covered by the higher of the two.
    const kept = Math.min(Math.max(x, spots[spots.length - 1]![0] + SAME), line[line.length - 1]![0] - SAME);
    spots.push([kept, Math.max(on(k, kept), on(k + 1, kept))]);
  }
  const end = line[line.length - 1]![0];
  spots.push([end, on(lifts.length - 1, end)]);
  return spots;
}

/** The four ways a flat blank can lie: as it is, turned half round, and turned over along or across the grain. */
export const ways = ["as it is", "half round", "end for end", "edge for edge"] as const;
export type Way = (typeof ways)[number];

/** The outline laid another way, in the place it had. */
export function laid(outline: Outline, way: Way): Outline {
  const { from, to, low, high } = { ...extents(outline) };
  const flipX = (line: Line): Line => [...line].reverse().map(([x, y]): Spot => [from + to - x, y]);
  const flipY = (line: Line): Line => line.map(([x, y]): Spot => [x, low + high - y]);
  const { low: under, high: over } = outline;
  switch (way) {
    case "as it is":
      return outline;
    case "end for end":
      return { low: flipX(under), high: flipX(over) };
    case "edge for edge":
      return { low: flipY(over), high: flipY(under) };
    case "half round":
      return { low: flipX(flipY(over)), high: flipX(flipY(under)) };
  }
}

export function moved({ low, high }: Outline, x: number, y: number): Outline {
  const move = (line: Line): Line => line.map(([u, v]): Spot => [u + x, v + y]);
  return { low: move(low), high: move(high) };
}

/** The box around an outline. */
export function extents({ low, high }: Outline): { from: number; to: number; low: number; high: number } {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const [, y] of low) if (y < least) least = y;
  for (const [, y] of high) if (y > most) most = y;
  return { from: low[0]![0], to: low[low.length - 1]![0], low: least, high: most };
}

/** The outline as one ring, anticlockwise. */
export const ringOf = ({ low, high }: Outline): Spot[] => [...low, ...[...high].reverse()];

/** mm². */
export function areaOf(outline: Outline): number {
  const ring = ringOf(outline);
  return (
    ring.reduce((sum, [x, y], k) => {
      const [u, v] = ring[(k + 1) % ring.length]!;
      return sum + x * v - u * y;
    }, 0) / 2
  );
}
