import { height, lineMeets, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, between, cross, distance, dot, norm, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { SeatSurface } from "../chair.ts";
import { hollowAt, insideBy as insideOutline } from "../seat/solid/hollow.ts";
import { spotOnSeat } from "../seat/solid/on-face.ts";
import { depthIn, MOUTH, type Mortise, thicknessIn, type Wood } from "./wood.ts";

/**
 * The wood of a seat: a slab with an edge all round. What is left beside a mortise is measured to that edge, in both faces, whichever way
 * the grain runs.
 */
export const seatWood = (seat: SeatSurface): Wood => ({
  grain: seat.grain,
  depthAlong: (from, direction) =>
    throughFaces(seat, from, direction) ??
    depthIn(seat.body.pieces, from, direction, overHollow(seat, from, direction) + mouthOf(seat)),
  beginsAlong: (from, direction) => overHollow(seat, from, direction),
  thicknessAcross: (at, direction) => thicknessIn(seat.body.pieces, at, direction),
  wallBeside: (mortise) => wallIn(seat, mortise),
});

/** A hollow's facets may begin this share of the seat's thickness before or behind where it is. */
const FACETS = 1 / 50;

const mouthOf = ({ design }: SeatSurface): number => Math.max(MOUTH, FACETS * (design.thick?.value ?? 0));

/** How far along a line into the top a seat's hollow is open, mm; 0 from below. */
function overHollow(seat: SeatSurface, from: Vec3, direction: Vec3): number {
  const { design, plan, plane } = seat;
  const hollow = design.solid?.hollow?.value;
  const rate = -dot(plane.normal, direction);
  if (!hollow || !plan || rate <= Math.SQRT1_2 || height(plane, from) < -MOUTH) return 0;
  // The hollow is shallow: a few rounds close in on where the line meets it.
  let reach = 0;
  for (let round = 0; round < ROUNDS; round++)
    reach = hollowAt(plan, hollow, spotOnSeat(seat, along(from, direction, reach))) / rate;
  return reach;
}

const ROUNDS = 12;

/**
 * How far a line from one face of a solid seat runs until it comes out of the other, mm, by the hollow as it is measured, of which the body
 * has facets; undefined where it comes out of a bevel or of the edge.
 */
function throughFaces(seat: SeatSurface, from: Vec3, direction: Vec3): number | undefined {
  const { design, plan, plane } = seat;
  const thick = design.thick?.value;
  const rate = dot(plane.normal, direction);
  if (!plan || thick === undefined || Math.abs(rate) <= Math.SQRT1_2) return undefined;
  const below = -height(plane, from);
  const hollow = design.solid?.hollow?.value;
  let reach = rate > 0 ? below / rate : (below - thick) / rate;
  for (let round = 0; round < ROUNDS && rate > 0 && hollow; round++)
    reach = (below - hollowAt(plan, hollow, spotOnSeat(seat, along(from, direction, reach)))) / rate;
  const out = along(from, direction, reach);
  const bevel = Math.max(
    0,
    ...(design.solid?.bevels ?? []).flatMap(({ value: { wide, face } }) =>
      (face === "above") === rate > 0 ? wide : [],
    ),
  );
  return reach > 0 && insideOutline(plan, spotOnSeat(seat, out)) > bevel ? reach : undefined;
}

function wallIn({ outline, plane, faces, design }: SeatSurface, mortise: Mortise): number {
  const rate = dot(plane.normal, mortise.direction);
  // A mortise in the edge runs along the faces: they are beside it.
  if (Math.abs(rate) < Math.SQRT1_2)
    return Math.min(...faces.map(({ plane: { normal, offset } }) => wallTo(normal, offset, mortise)));
  const off = (at: Vec3) => bevelAt(design, plane, at);
  if (mortise.atTip < 1) return coneWood(outline, plane.normal, mortise, off);
  return Math.min(
    ...[mortise.root, mortise.tip].map((at) => edgeWood(outline, plane.normal, at, mortise) - off(at)),
  );
}

/** How much a solid seat's bevel takes off its outline at the depth of a point under its top, mm. */
function bevelAt({ solid, thick }: SeatSurface["design"], top: Plane, at: Vec3): number {
  const below = -height(top, at);
  return Math.max(
    0,
    ...(solid?.bevels ?? []).map(({ value: { wide, deep, face } }) => {
      const from = face === "above" ? below : (thick?.value ?? 0) - below;
      return wide * Math.min(1, Math.max(0, 1 - from / deep));
    }),
  );
}

const wallTo = (normal: Vec3, offset: number, { root, tip, direction, support }: Mortise): number =>
  offset - Math.max(dot(normal, root), dot(normal, tip)) - support(squareTo(normal, direction));

/** Points round the rim of a cone; between them it strays from its chords by some hundredths of a mm. */
const RIM = 72;

/** The wood between a cone's two rims, in the planes through its ends, and the outline, seen square to the seat's face. */
function coneWood(
  outline: readonly Vec3[],
  normal: Vec3,
  mortise: Mortise,
  off: (at: Vec3) => number,
): number {
  const { root, tip, direction, face, support, atTip } = mortise;
  const u = unit(cross(direction, Math.abs(direction[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]));
  const v = cross(direction, u);
  const radius = support(u);
  const narrows = (radius * (atTip - 1)) / distance(root, tip);
  let least = Number.POSITIVE_INFINITY;
  const near = [root, tip].map((end) => stretchesNear(outline, normal, end, 3 * radius));
  for (let k = 0; k < RIM; k++) {
    const angle = (2 * Math.PI * k) / RIM;
    const out = along(along([0, 0, 0], u, Math.cos(angle)), v, Math.sin(angle));
    const from = along(root, out, radius);
    const way = along(direction, out, narrows);
    for (const [which, end] of [root, tip].entries()) {
      const at = lineMeets(planeAt(end, face), from, way);
      if (at) least = Math.min(least, insideBy(near[which]!, normal, at) - off(at));
    }
  }
  return least;
}

type Stretch = readonly [Vec3, Vec3];

/** The stretches of an outline that a rim about a point can be near, where that lies well inside; else all of them. */
function stretchesNear(
  outline: readonly Vec3[],
  normal: Vec3,
  at: Vec3,
  rim: number,
): { some: Stretch[]; inside: boolean } {
  const all = outline.map((a, k): Stretch => [a, outline[(k + 1) % outline.length]!]);
  const middle = insideBy({ some: all, inside: false }, normal, at);
  if (middle < rim) return { some: all, inside: false };
  const onTop = along(at, normal, -height({ normal, offset: dot(normal, outline[0]!) }, at));
  const some = all.filter(([a, b]) => distance(nearestOn(a, b, onTop), onTop) < middle + 2 * rim);
  return { some, inside: true };
}

/** How far inside an outline a point is, seen square to the seat's face; negative outside. `inside` where that is known. */
function insideBy(outline: { some: readonly Stretch[]; inside: boolean }, normal: Vec3, at: Vec3): number {
  const [first] = outline.some;
  if (!first) return 0;
  const from = along(at, normal, -height({ normal, offset: dot(normal, first[0]) }, at));
  let least = Number.POSITIVE_INFINITY;
  let inside = outline.inside;
  for (const [a, b] of outline.some) {
    // In plain numbers: a seat has a hundred such stretches, and a cone's rim as many places.
    const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
    const [px, py, pz] = [from[0] - a[0], from[1] - a[1], from[2] - a[2]];
    const size = ux * ux + uy * uy + uz * uz;
    const share = size < 1e-18 ? 0 : Math.min(1, Math.max(0, (px * ux + py * uy + pz * uz) / size));
    const [dx, dy, dz] = [px - ux * share, py - uy * share, pz - uz * share];
    least = Math.min(least, dx * dx + dy * dy + dz * dz);
    if (!outline.inside && crossesBeside(a, b, from)) inside = !inside;
  }
  return inside ? Math.sqrt(least) : -Math.sqrt(least);
}

/** Whether a stretch of the outline crosses the line out to the side from a point. */
const crossesBeside = (a: Vec3, b: Vec3, [x, y]: Vec3): boolean =>
  a[1] > y !== b[1] > y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]);

/** The wood between a mortise and the outline at one of its ends, seen square to the seat's face. */
function edgeWood(outline: readonly Vec3[], normal: Vec3, at: Vec3, { direction, support }: Mortise): number {
  const drop = (p: Vec3) => along(p, normal, -height({ normal, offset: dot(normal, outline[0]!) }, p));
  const from = drop(at);
  let least = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let k = 0; k < outline.length; k++) {
    const [a, b] = [outline[k]!, outline[(k + 1) % outline.length]!];
    const near = nearestOn(a, b, from);
    const away = distance(near, from);
    const out = away > 1e-9 ? along([0, 0, 0], sub(near, from), 1 / away) : normal;
    const slant = dot(out, direction) / dot(normal, direction);
    least = Math.min(least, away - support(along(out, normal, -slant)));
    if (crossesBeside(a, b, from)) inside = !inside;
  }
  return inside ? least : -Math.max(0, least);
}

function nearestOn(a: Vec3, b: Vec3, p: Vec3): Vec3 {
  const run = sub(b, a);
  const length = norm(run);
  const t = length < 1e-9 ? 0 : dot(sub(p, a), run) / (length * length);
  return between(a, b, Math.min(1, Math.max(0, t)));
}
