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
  const points: [number, number][] = [];
  const measure = (solid: Convex, sign: number) => {
    const outline = crossed(solid, at, along).map((point): [number, number] => {
      const from = sub(point, at);
      return [dot(from, y), dot(from, z)];
    });
    if (outline.length < 3) return;
    addUp(sums, around(outline), sign);
    if (sign > 0) points.push(...outline);
  };
  for (const piece of body.pieces) measure(piece, 1);
  for (const solid of cut) measure(solid, -1);
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
  const over = points.map((point) => dot(sub(point, at), along));
  const found: Vec3[] = [];
  for (const face of faces)
    for (const [k, a] of face.entries()) {
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

/** Corners of a convex outline in order about their middle. */
function around(points: readonly [number, number][]): [number, number][] {
  const middle = [0, 1].map(
    (k) => points.reduce((sum, point) => sum + (point[k] as number), 0) / points.length,
  );
  const angle = ([y, z]: [number, number]) =>
    Math.atan2(z - (middle[1] as number), y - (middle[0] as number));
  return [...points].sort((a, b) => angle(a) - angle(b));
}

/** Adds an outline's area and moments (the polygon formulas of any text on mechanics). */
function addUp(sums: Sums, outline: readonly [number, number][], sign: number): void {
  for (const [k, [ay, az]] of outline.entries()) {
    const [by, bz] = outline[(k + 1) % outline.length] as [number, number];
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
