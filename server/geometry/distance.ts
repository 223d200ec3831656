import type { Convex, Vec3 } from "./solid.ts";
import { add, cross, dot, negate, norm, scale, sub } from "./vec.ts";

/**
 * Least distance between two convex solids in the units of their points, with the nearest places on each; 0 when they touch
 * or overlap. Gilbert, Johnson and Keerthi's method (IEEE J. Robotics Autom. 4, 1988) on the difference of the two.
 */
export function distanceBetween(a: Convex, b: Convex): { distance: number; onA: Vec3; onB: Vec3 } {
  let corners: Corner[] = [supportOf(a, b, sub(b.points[0]!, a.points[0]!))];
  let nearest = corners[0]!.at;
  for (let round = 0; round < 100; round += 1) {
    const size = norm(nearest);
    if (size < 1e-9) break;
    const next = supportOf(a, b, negate(nearest));
    // No corner of the difference lies nearer along this line: done.
    if (size - dot(next.at, nearest) / size < 1e-10 * Math.max(1, size)) break;
    if (corners.some((corner) => corner.onA === next.onA && corner.onB === next.onB)) break;
    const reduced = nearestOf([...corners, next]);
    if (norm(reduced.point) >= size) break;
    corners = reduced.corners;
    nearest = reduced.point;
  }
  const weights = nearestOf(corners).weights;
  const blend = (pick: (corner: Corner) => Vec3) =>
    corners.reduce<Vec3>((sum, corner, i) => add(sum, scale(pick(corner), weights[i]!)), [0, 0, 0]);
  return {
    distance: norm(nearest) < 1e-9 ? 0 : norm(nearest),
    onA: blend((c) => c.onA),
    onB: blend((c) => c.onB),
  };
}

/** A corner of the difference a − b with the two it came from. */
interface Corner {
  at: Vec3;
  onA: Vec3;
  onB: Vec3;
}

function supportOf(a: Convex, b: Convex, direction: Vec3): Corner {
  const onA = furthest(a.points, direction);
  const onB = furthest(b.points, negate(direction));
  return { at: sub(onA, onB), onA, onB };
}

function furthest(points: readonly Vec3[], direction: Vec3): Vec3 {
  let best = points[0]!;
  let most = dot(best, direction);
  for (const point of points) {
    const reach = dot(point, direction);
    if (reach > most) {
      most = reach;
      best = point;
    }
  }
  return best;
}

interface Nearest {
  point: Vec3;
  corners: Corner[];
  weights: number[];
}

/** The point of a simplex of up to four corners that is nearest to the origin, with the corners that carry it. */
function nearestOf(corners: Corner[]): Nearest {
  let best: Nearest | undefined;
  for (let mask = 1; mask < 1 << corners.length; mask += 1) {
    const some = corners.filter((_, i) => mask & (1 << i));
    const weights = foot(some.map((corner) => corner.at));
    if (!weights || weights.some((w) => w < -1e-12)) continue;
    const point = some.reduce<Vec3>((sum, corner, i) => add(sum, scale(corner.at, weights[i]!)), [0, 0, 0]);
    if (!best || norm(point) < norm(best.point) - 1e-13) best = { point, corners: some, weights };
  }
  return best!;
}

/** Weights, adding up to one, of the foot of the perpendicular from the origin on the flat through the points. */
function foot(points: readonly Vec3[]): number[] | undefined {
  const [a, b, c, d] = points;
  if (!b) return [1];
  const u = sub(b, a!);
  if (!c) {
    const t = -dot(a!, u) / dot(u, u);
    return Number.isFinite(t) ? [1 - t, t] : undefined;
  }
  const v = sub(c, a!);
  if (!d) {
    const uu = dot(u, u);
    const uv = dot(u, v);
    const vv = dot(v, v);
    const det = uu * vv - uv * uv;
    if (det <= 1e-14 * uu * vv) return undefined;
    const s = (uv * dot(a!, v) - vv * dot(a!, u)) / det;
    const t = (uv * dot(a!, u) - uu * dot(a!, v)) / det;
    return [1 - s - t, s, t];
  }
  const w = sub(d, a!);
  const det = dot(u, cross(v, w));
  if (Math.abs(det) <= 1e-14 * norm(u) * norm(v) * norm(w)) return undefined;
  const origin = negate(a!);
  const s = dot(origin, cross(v, w)) / det;
  const t = dot(u, cross(origin, w)) / det;
  const r = dot(u, cross(v, origin)) / det;
  return [1 - s - t - r, s, t, r];
}
