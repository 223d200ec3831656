/**
 * The lines of a solid seat that are drawn: round the top, the edge and the under face, and up its edge and its bevels.
 */
import type { SolidSeatDesign } from "../../../design/solid-seat-design.ts";
import type { Edge, Plane, Vec3 } from "../../../geometry/solid.ts";
import { cross, dot, negate, sub, unit } from "../../../geometry/vec.ts";
import type { Spot } from "./edge.ts";
import { insetBy, insetThrough } from "./inset.ts";
import type { Strip } from "./mirror.ts";

/** Puts a place of the plan into the chair, so far under the top face, mm. */
export type Lift = (spot: Spot, below: number) => Vec3;

export interface Bevel {
  wide: number;
  deep: number;
  face: "above" | "below";
}

/** Facets of a curved edge turn by less than this, as a cosine. */
const SMOOTH = Math.cos(0.2);
/** A bevel as wide as a corner's radius would end in one point: it is made this much narrower there, mm. */
export const POINT = 1e-3;

/**
 * All of them. A hollow has no arris but where it runs out through the front edge, whose places are then given with their depths, from the
 * right to the left. `planeOf` gives a bevel's face over a strip of the outline that it takes wood off.
 */
export function linesOf(
  { bevels }: SolidSeatDesign,
  ring: readonly Spot[],
  thick: number,
  lift: Lift,
  planeOf: (bevel: Bevel, corners: Strip["corners"]) => Plane | undefined,
  front: readonly { at: Spot; deep: number }[],
): Edge[] {
  const above = bevels.find(({ value }) => value.face === "above")?.value;
  const below = bevels.find(({ value }) => value.face === "below")?.value;
  const rings: Vec3[][] = [];
  const inset = (bevel: Bevel, depth: number) =>
    insetBy(ring, bevel.wide - POINT)[0]?.map((p) => lift(p, depth));
  const top = above && inset(above, 0);
  if (top) rings.push(top);
  const edge = ring.map((p) => lift(p, above?.deep ?? deepOn(front, p)));
  const foot = ring.map((p) => lift(p, thick - (below?.deep ?? 0)));
  rings.push(above ? edge : withFront(ring, front, lift), foot);
  const under = below && inset(below, thick);
  if (under) rings.push(under);
  const up = unit(sub(lift([0, 0], 0), lift([0, 0], 1)));
  const edges: Edge[] = [];
  for (const [n, loop] of rings.entries()) {
    for (const [k, a] of loop.entries()) {
      const b = loop[(k + 1) % loop.length]!;
      const out = unit(cross(sub(b, a), up));
      const slopes = [
        n > 0 ? slopeOf(rings, n - 1, out, up) : up,
        n < rings.length - 1 ? slopeOf(rings, n, out, up) : negate(up),
      ];
      edges.push({ a, b, is: "arris", normals: slopes as [Vec3, Vec3] });
    }
  }
  for (const [k, a] of edge.entries()) {
    const before = unit(cross(sub(a, edge[(k + edge.length - 1) % edge.length]!), up));
    const after = unit(cross(sub(edge[(k + 1) % edge.length]!, a), up));
    edges.push({
      a,
      b: foot[k]!,
      is: dot(before, after) > SMOOTH ? "smooth" : "arris",
      normals: [before, after],
    });
  }
  return [...edges, ...bevels.flatMap(({ value }) => upBevel(value, ring, thick, lift, planeOf))];

  /** The outward normal of the face between one ring and the next, where the outline looks out so. */
  function slopeOf(all: Vec3[][], upper: number, out: Vec3, upward: Vec3): Vec3 {
    const isTop = above !== undefined && top !== undefined && upper === 0;
    const isUnder = below !== undefined && under !== undefined && upper === all.length - 2;
    const bevel = isTop ? above : isUnder ? below : undefined;
    if (!bevel) return out;
    const sign = isTop ? 1 : -1;
    return unit(
      [0, 1, 2].map((i) => out[i]! * bevel.deep + sign * upward[i]! * bevel.wide) as unknown as Vec3,
    );
  }
}

/** The top's outline, with the front edge as the hollow runs out through it. */
function withFront(ring: readonly Spot[], front: readonly { at: Spot; deep: number }[], lift: Lift): Vec3[] {
  if (front.length === 0) return ring.map((p) => lift(p, 0));
  const back = Math.max(...front.map(({ at: [, s] }) => s));
  const others = ring.filter(([, s]) => s > back + SAME);
  return [...others.map((p) => lift(p, 0)), ...front.map(({ at, deep }) => lift(at, deep))];
}

/** How deep the hollow is at a place of the outline where it runs out through the front edge; 0 elsewhere. */
function deepOn(front: readonly { at: Spot; deep: number }[], [x, s]: Spot): number {
  const next = front.findIndex(({ at }) => at[0] >= x);
  const [a, b] = [front[next - 1], front[next]];
  if (!a || !b || s > Math.max(a.at[1], b.at[1]) + SAME) return 0;
  return a.deep + ((b.deep - a.deep) * (x - a.at[0])) / (b.at[0] - a.at[0]);
}

/** Places nearer than this are one, mm. */
const SAME = 1e-6;

/** How far under the top a bevel's face is, so far inside the outline. */
export const bevelDepth = ({ wide, deep, face }: Bevel, moved: number, thick: number): number => {
  const off = deep * (1 - moved / wide);
  return face === "above" ? off : thick - off;
};

/** The lines that run from a bevel's outer arris to its inner one: between two of its faces. */
function upBevel(
  bevel: Bevel,
  ring: readonly Spot[],
  thick: number,
  lift: Lift,
  planeOf: (bevel: Bevel, corners: Strip["corners"]) => Plane | undefined,
): Edge[] {
  const inner = bevel.wide - POINT;
  const open = new Map<string, Vec3>();
  const edges: Edge[] = [];
  for (const { corners } of insetThrough(ring, [0, inner]).strips) {
    const normal = planeOf(bevel, corners)?.normal;
    if (!normal) continue;
    for (const [k, one] of corners.entries()) {
      const next = corners[(k + 1) % corners.length]!;
      if (Math.abs(one.moved - next.moved) < SAME) continue;
      const [outer, within] = one.moved < next.moved ? [one, next] : [next, one];
      const key = [...outer.at, ...within.at].map((mm) => Math.round(mm / SAME / 10) + 0).join(" ");
      const other = open.get(key);
      open.set(key, normal);
      if (!other || dot(other, normal) > FLAT) continue;
      edges.push({
        a: lift(outer.at, bevelDepth(bevel, outer.moved, thick)),
        b: lift(within.at, bevelDepth(bevel, within.moved, thick)),
        is: dot(other, normal) > SMOOTH ? "smooth" : "arris",
        normals: [other, normal],
      });
    }
  }
  return edges;
}

/** Faces that turn by less are one, as a cosine. */
const FLAT = 1 - 1e-12;
