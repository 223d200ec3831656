import { levelAt, planeAt } from "./plane.ts";
import type { Convex, Plane, Vec3 } from "./solid.ts";
import { add, between, cross, dot, mirrored, negate, norm, scale, sub } from "./vec.ts";

/** Points nearer to a plane than this count as lying in it, mm. */
const ON_PLANE = 1e-7;

/**
 * The solid between two rings of as many corners, corner k of one joined to corner k of the other. Both rings run anticlockwise
 * seen from the `end` side looking back at `start`; a solid that comes out inside out is turned. The sides must be flat.
 * Faces in order: start, end, then the side that begins at corner k; sides without area are left out.
 */
export function prism(start: readonly Vec3[], end: readonly Vec3[]): Convex {
  const n = start.length;
  const points = [...start, ...end];
  const faces: number[][] = [];
  const first: number[] = [];
  const last: number[] = [];
  for (let k = 0; k < n; k++) {
    first.push(n - 1 - k);
    last.push(n + k);
  }
  faces.push(first, last);
  for (let k = 0; k < n; k++) {
    const next = (k + 1) % n;
    faces.push([k, next, n + next, n + k]);
  }
  return withPlanes(points, faces);
}

/** The mean of some points; written out, as what each solid begins with. */
function middleOf(points: readonly Vec3[]): Vec3 {
  let x = 0;
  let y = 0;
  let z = 0;
  for (const p of points) {
    x += p[0];
    y += p[1];
    z += p[2];
  }
  const k = 1 / points.length;
  return [x * k, y * k, z * k];
}

function withPlanes(points: Vec3[], rings: number[][]): Convex {
  const middle = middleOf(points);
  const faces: number[][] = [];
  const planes: Plane[] = [];
  for (const ring of rings) {
    const plane = planeOfRing(points, ring);
    if (!plane) continue;
    if (dot(plane.normal, middle) > plane.offset) {
      planes.push({ normal: negate(plane.normal), offset: -plane.offset });
      faces.push([...ring].reverse());
    } else {
      planes.push(plane);
      faces.push(ring);
    }
  }
  return { planes, points, faces };
}

/** Newell's normal, so that a slightly uneven ring still gives its best plane. */
function planeOfRing(points: readonly Vec3[], ring: readonly number[]): Plane | undefined {
  let x = 0;
  let y = 0;
  let z = 0;
  let cx = 0;
  let cy = 0;
  let cz = 0;
  let a = points[ring[ring.length - 1]!]!;
  for (const index of ring) {
    const b = points[index]!;
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
    cx += b[0];
    cy += b[1];
    cz += b[2];
    a = b;
  }
  const size = Math.sqrt(x * x + y * y + z * z);
  if (size < 1e-9) return undefined;
  const normal: Vec3 = [x / size, y / size, z / size];
  return { normal, offset: (normal[0] * cx + normal[1] * cy + normal[2] * cz) / ring.length };
}

/** An upright box. */
export function box(low: Vec3, high: Vec3): Convex {
  const ring = (z: number): Vec3[] => [
    [low[0], low[1], z],
    [high[0], low[1], z],
    [high[0], high[1], z],
    [low[0], high[1], z],
  ];
  return prism(ring(low[2]), ring(high[2]));
}

/**
 * What lies behind all the planes (their normals look out), within `reach` mm of `near`; null when nothing does.
 * Faces of the reach itself stay only if the planes leave the solid open.
 */
export function fromPlanes(planes: readonly Plane[], near: Vec3 = [0, 0, 0], reach = 1e4): Convex | null {
  let solid: Convex | null = box(sub(near, [reach, reach, reach]), add(near, [reach, reach, reach]));
  for (const plane of planes) solid = solid && clip(solid, plane);
  return solid;
}

/** What is left of a solid behind a plane; null when nothing is, the same solid when the plane does not cut it. */
export function clip(solid: Convex, plane: Plane): Convex | null {
  const [nx, ny, nz] = plane.normal;
  const heightOf = (p: Vec3): number => nx * p[0] + ny * p[1] + nz * p[2] - plane.offset;
  let above = false;
  let below = false;
  for (let k = 0; k < solid.points.length; k++) {
    const h = heightOf(solid.points[k]!);
    if (h > ON_PLANE) above = true;
    else if (h < -ON_PLANE) below = true;
  }
  if (!below) return null;
  if (!above) return solid;
  // Most planes miss the solid: heights are kept only of one that is cut.
  const heights = solid.points.map(heightOf);

  const points: Vec3[] = [];
  const kept = new Map<number, number>();
  const keep = (index: number): number => {
    let at = kept.get(index);
    if (at === undefined) {
      at = points.push(solid.points[index]!) - 1;
      kept.set(index, at);
      if (heights[index]! >= -ON_PLANE) rim.push(at);
    }
    return at;
  };
  const crossings = new Map<number, number>();
  const crossing = (i: number, j: number): number => {
    const low = Math.min(i, j);
    const high = Math.max(i, j);
    const key = low * solid.points.length + high;
    let at = crossings.get(key);
    if (at === undefined) {
      const t = heights[low]! / (heights[low]! - heights[high]!);
      at = points.push(between(solid.points[low]!, solid.points[high]!, t)) - 1;
      crossings.set(key, at);
      rim.push(at);
    }
    return at;
  };
  const rim: number[] = [];
  const faces: number[][] = [];
  const planes: Plane[] = [];
  solid.faces.forEach((face, which) => {
    if (!face.some((index) => heights[index]! < -ON_PLANE)) return;
    const ring: number[] = [];
    let previous = face[face.length - 1]!;
    for (const index of face) {
      const a = heights[previous]!;
      const b = heights[index]!;
      if ((a > ON_PLANE && b < -ON_PLANE) || (a < -ON_PLANE && b > ON_PLANE))
        ring.push(crossing(previous, index));
      if (b <= ON_PLANE) ring.push(keep(index));
      previous = index;
    }
    if (ring.length < 3) return;
    faces.push(ring);
    planes.push(solid.planes[which]!);
  });
  if (rim.length >= 3) {
    faces.push(aroundPlane(points, rim, plane));
    planes.push(plane);
  }
  return faces.length >= 4 ? { planes, points, faces } : null;
}

/** Indices of points in a plane, put in order anticlockwise as seen with the normal towards the eye. */
function aroundPlane(points: readonly Vec3[], rim: readonly number[], plane: Plane): number[] {
  const middle = scale(rim.map((index) => points[index]!).reduce(add), 1 / rim.length);
  const n = plane.normal;
  const helper: Vec3 = Math.abs(n[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const u = cross(helper, n);
  const v = cross(n, u);
  const bearings = new Map<number, number>();
  for (const index of rim) {
    const from = sub(points[index]!, middle);
    bearings.set(index, Math.atan2(dot(v, from), dot(u, from)));
  }
  return [...rim].sort((a, b) => bearings.get(a)! - bearings.get(b)!);
}

/** Both parts of a solid cut by a plane: behind it and before it. */
export function split(solid: Convex, plane: Plane): [Convex | null, Convex | null] {
  return [clip(solid, plane), clip(solid, { normal: negate(plane.normal), offset: -plane.offset })];
}

/** What two solids share; null when they share no volume. */
export function intersect(a: Convex, b: Convex): Convex | null {
  if (!boxesMeet(boundingBox(a), boundingBox(b))) return null;
  let solid: Convex | null = a;
  for (const plane of b.planes) solid = solid && clip(solid, plane);
  return solid;
}

/** Volume two solids share, mm³. */
export function sharedVolume(a: Convex, b: Convex): number {
  const shared = intersect(a, b);
  return shared ? volume(shared) : 0;
}

/** mm³. */
export function volume(solid: Convex): number {
  return measure(solid).volume;
}

/** Centre of volume. */
export function centroid(solid: Convex): Vec3 {
  return measure(solid).centroid;
}

/** Volume (mm³) and its centre, by tetrahedra from the first corner. */
export function measure(solid: Convex): { volume: number; centroid: Vec3 } {
  const o = solid.points[0];
  if (!o) return { volume: 0, centroid: [0, 0, 0] };
  let six = 0;
  let x = 0;
  let y = 0;
  let z = 0;
  // Written out: each part of each study is measured, and vectors made here would be its largest garbage.
  const { points, faces } = solid;
  for (const face of faces) {
    const a = points[face[0]!]!;
    const ax = a[0] - o[0];
    const ay = a[1] - o[1];
    const az = a[2] - o[2];
    for (let k = 1; k + 1 < face.length; k++) {
      const b = points[face[k]!]!;
      const c = points[face[k + 1]!]!;
      const bx = b[0] - o[0];
      const by = b[1] - o[1];
      const bz = b[2] - o[2];
      const cx = c[0] - o[0];
      const cy = c[1] - o[1];
      const cz = c[2] - o[2];
      const v = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
      six += v;
      x += v * (ax + bx + cx);
      y += v * (ay + by + cy);
      z += v * (az + bz + cz);
    }
  }
  if (Math.abs(six) < 1e-12) return { volume: 0, centroid: o };
  return { volume: six / 6, centroid: [o[0] + x / (4 * six), o[1] + y / (4 * six), o[2] + z / (4 * six)] };
}

/** Area of one face, mm². */
export function faceArea(solid: Convex, face: number): number {
  const ring = solid.faces[face]!;
  const o = solid.points[ring[0]!]!;
  let sum: Vec3 = [0, 0, 0];
  for (let k = 1; k + 1 < ring.length; k++) {
    sum = add(sum, cross(sub(solid.points[ring[k]!]!, o), sub(solid.points[ring[k + 1]!]!, o)));
  }
  return norm(sum) / 2;
}

export interface Bounds {
  low: Vec3;
  high: Vec3;
}

/** The upright box around all corners. */
export function boundingBox(solid: Convex): Bounds {
  return boundsOf(solid.points);
}

/** The upright box around some points. Asked for so often that nothing is made on the way, iterators neither. */
export function boundsOf(points: readonly Vec3[]): Bounds {
  let [lowX, lowY, lowZ] = [Infinity, Infinity, Infinity];
  let [highX, highY, highZ] = [-Infinity, -Infinity, -Infinity];
  for (let k = 0; k < points.length; k++) {
    const point = points[k]!;
    const x = point[0];
    const y = point[1];
    const z = point[2];
    if (x < lowX) lowX = x;
    if (x > highX) highX = x;
    if (y < lowY) lowY = y;
    if (y > highY) highY = y;
    if (z < lowZ) lowZ = z;
    if (z > highZ) highZ = z;
  }
  return { low: [lowX, lowY, lowZ], high: [highX, highY, highZ] };
}

/** Whether two boxes touch or overlap, within `slack` mm. */
export const boxesMeet = (a: Bounds, b: Bounds, slack = 0): boolean =>
  a.low[0] <= b.high[0] + slack &&
  b.low[0] <= a.high[0] + slack &&
  a.low[1] <= b.high[1] + slack &&
  b.low[1] <= a.high[1] + slack &&
  a.low[2] <= b.high[2] + slack &&
  b.low[2] <= a.high[2] + slack;

/** Least distance from a point to the planes of the faces, mm: positive inside, negative outside. */
export function depthIn(solid: Convex, point: Vec3): number {
  let least = Infinity;
  for (const plane of solid.planes) least = Math.min(least, plane.offset - dot(plane.normal, point));
  return least;
}

/** Whether the point lies in the solid or within `slack` mm of its faces. */
export function contains({ planes }: Convex, point: Vec3, slack = ON_PLANE): boolean {
  for (const { normal, offset } of planes) if (!(offset - dot(normal, point) >= -slack)) return false;
  return true;
}

/** Where the line from a point along a direction is inside a solid, in lengths of the direction; undefined when it misses it. */
export function lineThrough(solid: Convex, point: Vec3, direction: Vec3): [number, number] | undefined {
  let from = -Infinity;
  let to = Infinity;
  for (const plane of solid.planes) {
    const start = dot(plane.normal, point) - plane.offset;
    const rate = dot(plane.normal, direction);
    if (Math.abs(rate) < 1e-12) {
      if (start > ON_PLANE) return undefined;
    } else if (rate > 0) to = Math.min(to, -start / rate);
    else from = Math.max(from, -start / rate);
  }
  return from < to ? [from, to] : undefined;
}

/** How far the solid reaches in a direction: the greatest direction · p. */
export function reachIn(solid: Convex, direction: Vec3): number {
  let most = -Infinity;
  for (const p of solid.points) most = Math.max(most, dot(direction, p));
  return most;
}

/** The solid mirrored left to right (x ↦ −x), still seen from outside. */
export function mirror(solid: Convex): Convex {
  return {
    planes: solid.planes.map((plane) => ({ normal: mirrored(plane.normal), offset: plane.offset })),
    points: solid.points.map(mirrored),
    faces: solid.faces.map((face) => [...face].reverse()),
  };
}

/** The part of a solid between two heights; null when nothing is. */
export function slice(solid: Convex, from: number, to: number): Convex | null {
  const top = clip(solid, levelAt(to));
  return top && clip(top, planeAt([0, 0, from], [0, 0, -1]));
}
