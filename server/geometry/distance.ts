import type { Convex, Vec3 } from "./solid.ts";
import { add, dot, negate, norm, scale, sub } from "./vec.ts";

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
  const onA = furthest(a.points, direction, 1);
  const onB = furthest(b.points, direction, -1);
  return { at: sub(onA, onB), onA, onB };
}

/** The point that lies furthest along a direction, or against it. */
function furthest(points: readonly Vec3[], direction: Vec3, way: 1 | -1): Vec3 {
  let best = points[0]!;
  let most = way * dot(best, direction);
  for (let k = 1; k < points.length; k += 1) {
    const point = points[k] as Vec3;
    const reach = way * dot(point, direction);
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

/** Most corners of a simplex. */
const MOST = 4;

/**
 * The point of a simplex of up to four corners that is nearest to the origin, with the corners that carry it. Asked thousands of times for
 * each chair, so that nothing is made for the subsets of corners that do not carry it.
 */
function nearestOf(corners: readonly Corner[]): Nearest {
  const weights = [0, 0, 0, 0] as Four;
  let best: { mask: number; size: number; weights: Four; x: number; y: number; z: number } | undefined;
  for (let mask = 1; mask < 1 << corners.length; mask += 1) {
    if (!footInto(weights, corners, mask)) continue;
    let [x, y, z] = [0, 0, 0];
    let carries = true;
    for (let i = 0, k = 0; i < corners.length; i += 1) {
      if (!(mask & (1 << i))) continue;
      const weight = weights[k++] as number;
      if (weight < -1e-12) {
        carries = false;
        break;
      }
      const { at } = corners[i] as Corner;
      x += at[0] * weight;
      y += at[1] * weight;
      z += at[2] * weight;
    }
    if (!carries) continue;
    const size = Math.sqrt(x * x + y * y + z * z);
    if (best === undefined) best = { mask, size, weights: [...weights], x, y, z };
    else if (size < best.size - 1e-13) {
      for (let k = 0; k < MOST; k += 1) best.weights[k] = weights[k] as number;
      best.mask = mask;
      best.size = size;
      best.x = x;
      best.y = y;
      best.z = z;
    }
  }
  const { mask, weights: found, x, y, z } = best!;
  const carrying = corners.filter((_, i) => mask & (1 << i));
  return { point: [x, y, z], corners: carrying, weights: found.slice(0, carrying.length) };
}

type Four = [number, number, number, number];

/**
 * Weights, adding up to one, of the foot of the perpendicular from the origin on the flat through the corners of a mask, in their order;
 * whether there is one.
 */
function footInto(weights: Four, corners: readonly Corner[], mask: number): boolean {
  let count = 0;
  let a: Vec3 | undefined;
  let b: Vec3 | undefined;
  let c: Vec3 | undefined;
  let d: Vec3 | undefined;
  for (let i = 0; i < corners.length; i += 1) {
    if (!(mask & (1 << i))) continue;
    const { at } = corners[i] as Corner;
    count += 1;
    if (count === 1) a = at;
    else if (count === 2) b = at;
    else if (count === 3) c = at;
    else d = at;
  }
  if (!a) return false;
  if (!b) {
    weights[0] = 1;
    return true;
  }
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const au = a[0] * ux + a[1] * uy + a[2] * uz;
  const uu = ux * ux + uy * uy + uz * uz;
  if (!c) {
    const t = -au / uu;
    weights[0] = 1 - t;
    weights[1] = t;
    return Number.isFinite(t);
  }
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  if (!d) {
    const uv = ux * vx + uy * vy + uz * vz;
    const vv = vx * vx + vy * vy + vz * vz;
    const det = uu * vv - uv * uv;
    if (det <= 1e-14 * uu * vv) return false;
    const av = a[0] * vx + a[1] * vy + a[2] * vz;
    const s = (uv * av - vv * au) / det;
    const t = (uv * au - uu * av) / det;
    weights[0] = 1 - s - t;
    weights[1] = s;
    weights[2] = t;
    return true;
  }
  const [wx, wy, wz] = [d[0] - a[0], d[1] - a[1], d[2] - a[2]];
  const ww = wx * wx + wy * wy + wz * wz;
  const det = tripled(ux, uy, uz, vx, vy, vz, wx, wy, wz);
  const vv = vx * vx + vy * vy + vz * vz;
  if (Math.abs(det) <= 1e-14 * Math.sqrt(uu) * Math.sqrt(vv) * Math.sqrt(ww)) return false;
  const [ox, oy, oz] = [-a[0], -a[1], -a[2]];
  const s = tripled(ox, oy, oz, vx, vy, vz, wx, wy, wz) / det;
  const t = tripled(ux, uy, uz, ox, oy, oz, wx, wy, wz) / det;
  const r = tripled(ux, uy, uz, vx, vy, vz, ox, oy, oz) / det;
  weights[0] = 1 - s - t - r;
  weights[1] = s;
  weights[2] = t;
  weights[3] = r;
  return true;
}

/** The first direction along the cross product of the other two, number by number so that none is put into a list. */
function tripled(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  cx: number,
  cy: number,
  cz: number,
): number {
  return ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
}
