/**
 * A member's section at a place: what is left of its body there, measured about two axes.
 */
import type { Body, Convex, Vec3 } from "../geometry/solid.ts";
import { dot, sub } from "../geometry/vec.ts";

/** mm², mm⁴ about y and z, and the farthest fibre along each, mm. */
export interface SectionFigures {
  A: number;
  Iy: number;
  Iz: number;
  farY: number;
  farZ: number;
}

/** Along y and z, mm. */
type Flat = [number, number];

interface Sums {
  A: number;
  Sy: number;
  Sz: number;
  Iyy: number;
  Izz: number;
}

/** The section of a body by the plane through a place square to `along`, less some solids that are cut out of it. */
export function sectionAt(
  body: Pick<Body, "pieces">,
  { at, along, y, z }: { at: Vec3; along: Vec3; y: Vec3; z: Vec3 },
  cut: readonly Convex[] = [],
): SectionFigures | undefined {
  const sums: Sums = { A: 0, Sy: 0, Sz: 0, Iyy: 0, Izz: 0 };
  const points: Flat[] = [];
  const outlineOf = (solid: Convex): Flat[] => {
    const outline = crossed(solid, at, along).map((point): Flat => {
      const from = sub(point, at);
      return [dot(from, y), dot(from, z)];
    });
    return outline.length < 3 ? [] : around(outline);
  };
  const wood = body.pieces.map(outlineOf).filter((outline) => outline.length > 0);
  for (const outline of wood) {
    addUp(sums, outline, 1);
    points.push(...outline);
  }
  // What is cut out may reach out of the wood: a stick that passes through a bow.
  for (const solid of cut) {
    const hole = outlineOf(solid);
    for (const outline of wood) {
      const within = hole.length === 0 ? [] : clipped(hole, outline);
      if (within.length > 2) addUp(sums, within, -1);
    }
  }
  const { A } = sums;
  if (!(A > 1)) return undefined;
  const [cy, cz] = [sums.Sy / A, sums.Sz / A];
  return {
    A,
    Iy: Math.max(1, sums.Izz - A * cz * cz),
    Iz: Math.max(1, sums.Iyy - A * cy * cy),
    farY: Math.max(...points.map(([py]) => Math.abs(py - cy))),
    farZ: Math.max(...points.map(([, pz]) => Math.abs(pz - cz))),
  };
}

/** Where a plane crosses the edges of a convex solid. */
function crossed({ points, faces }: Convex, at: Vec3, along: Vec3): Vec3[] {
  const level = dot(at, along);
  const over = new Float64Array(points.length);
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < over.length; k++) {
    const height = dot(points[k] as Vec3, along) - level;
    over[k] = height;
    if (height < low) low = height;
    if (height > high) high = height;
  }
  // Most pieces of a body lie wholly on one side.
  if (low >= 0 || high < 0) return [];
  const found: Vec3[] = [];
  for (const face of faces)
    for (let k = 0; k < face.length; k++) {
      const a = face[k] as number;
      const b = face[(k + 1) % face.length] as number;
      const [ha, hb] = [over[a] as number, over[b] as number];
      // Each edge is in two faces, once each way: taken where it rises.
      if (!(ha < 0 && hb >= 0)) continue;
      const t = ha / (ha - hb);
      const [p, q] = [points[a] as Vec3, points[b] as Vec3];
      found.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]);
    }
  return found;
}

/** As much of a convex outline as lies within another, both anticlockwise (Sutherland and Hodgman). */
function clipped(outline: readonly Flat[], within: readonly Flat[]): Flat[] {
  let left: Flat[] = [...outline];
  for (const [k, a] of within.entries()) {
    const b = within[(k + 1) % within.length] as Flat;
    const inside = ([py, pz]: Flat) => (b[0] - a[0]) * (pz - a[1]) - (b[1] - a[1]) * (py - a[0]);
    const before = left;
    left = [];
    for (const [n, p] of before.entries()) {
      const q = before[(n + 1) % before.length] as Flat;
      const [hp, hq] = [inside(p), inside(q)];
      if (hp >= 0) left.push(p);
      if (hp >= 0 === hq >= 0) continue;
      const t = hp / (hp - hq);
      left.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
    }
  }
  return left;
}

/** Corners of a convex outline in order about their middle, anticlockwise. */
function around(points: readonly Flat[]): Flat[] {
  const middle = [0, 1].map(
    (k) => points.reduce((sum, point) => sum + (point[k] as number), 0) / points.length,
  );
  const angle = ([y, z]: Flat) => Math.atan2(z - (middle[1] as number), y - (middle[0] as number));
  return [...points].sort((a, b) => angle(a) - angle(b));
}

/** Adds an outline's area and moments (the polygon formulas of any text on mechanics). */
function addUp(sums: Sums, outline: readonly Flat[], sign: number): void {
  for (const [k, [ay, az]] of outline.entries()) {
    const [by, bz] = outline[(k + 1) % outline.length] as Flat;
    const turn = sign * (ay * bz - by * az);
    sums.A += turn / 2;
    sums.Sy += (turn * (ay + by)) / 6;
    sums.Sz += (turn * (az + bz)) / 6;
    sums.Iyy += (turn * (ay * ay + ay * by + by * by)) / 12;
    sums.Izz += (turn * (az * az + az * bz + bz * bz)) / 12;
  }
}

/**
 * Torsion constant of a section, by its equivalent rectangle: ab³(1/3 − 0.21 b/a (1 − b⁴/12a⁴)) (Roark, from memory; within half a
 * percent of the series table 0.141 … 0.312); of a round one the polar moment.
 */
export function torsionOf({ A, Iy, Iz }: SectionFigures, round: boolean): number {
  if (round) return Iy + Iz;
  const sides = [Math.sqrt((12 * Iy) / A), Math.sqrt((12 * Iz) / A)];
  const a = Math.max(...sides);
  const b = Math.min(...sides);
  return a * b ** 3 * (1 / 3 - 0.21 * (b / a) * (1 - (b / a) ** 4 / 12));
}
