import { clip } from "../../geometry/convex.ts";
import { height } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, squareTo, sub, unit } from "../../geometry/vec.ts";

/** The wood of the member that a joint enters, near that joint: all that a joint asks of it. */
export interface Wood {
  /** Unit, along its grain there. */
  grain: Vec3;
  /**
   * How much wood there is from a point on the member's surface along a unit direction into it, mm: to where that line first comes
   * out. 0 when it meets none.
   */
  depthAlong(from: Vec3, direction: Vec3): number;
  /** How far along that line the wood begins, mm: over a seat's hollow, which is deeper than the face that joints are measured from. */
  beginsAlong?(from: Vec3, direction: Vec3): number;
  /** How thick the member is across a unit direction at a point inside it, mm. */
  thicknessAcross(at: Vec3, direction: Vec3): number;
  /**
   * The least wood left beside a mortise, to the faces at its sides, mm; negative when it breaks out. The face entered, the one
   * opposite and the member's ends are not beside it.
   */
  wallBeside(mortise: Mortise): number;
}

/** A plane lies across or along a direction when the cosine between is beyond this. */
const MOSTLY = Math.SQRT1_2;
/** A shoulder may stand off the wood by this much and still count as on it, mm. */
export const MOUTH = 0.5;
/** Gaps between a member's own pieces smaller than this are none, mm. */
const SEAM = 1e-4;

/** Squared stuff: flat faces, whose pieces follow each other along the grain. */
export const squaredWood = (pieces: readonly Convex[], grain: Vec3): Wood => ({
  grain,
  depthAlong: (from, direction) => depthIn(pieces, from, direction),
  thicknessAcross: (at, direction) => thicknessIn(pieces, at, direction),
  wallBeside: (mortise) => wallIn(pieces, grain, mortise),
});

/**
 * Turned stuff about an axis: a point of it and the radius there. A mortise's wall is measured where it has come nearest the axis, as
 * the surface curves away at its mouth.
 */
export const turnedWood = (grain: Vec3, round: { axis: Vec3; radius: number }): Wood => ({
  grain,
  depthAlong: (from, direction) => depthInRound(grain, round, from, direction),
  thicknessAcross: () => 2 * round.radius,
  wallBeside: (mortise) => wallInRound(grain, round, mortise),
});

/** How far a line into some pieces runs before it comes out of them, mm; they may begin as far along it as `mouth`. */
export function depthIn(
  pieces: readonly Convex[],
  from: Vec3,
  direction: Vec3,
  mouth: number = MOUTH,
): number {
  const spans: [number, number][] = [];
  for (const piece of pieces) {
    const span = spanIn(piece, from, direction);
    if (span && span[1] > SEAM) spans.push(span);
  }
  spans.sort((a, b) => a[0] - b[0]);
  let reach = 0;
  for (const [enter, leave] of spans) {
    if (enter > reach + (reach === 0 ? mouth : SEAM)) break;
    reach = Math.max(reach, leave);
  }
  return reach;
}

/**
 * Between which distances a line through a point lies in a convex piece, mm along its direction; undefined when it passes by. Planes that
 * lie across `endless` are left out, as if the piece ran on along it.
 */
export function spanIn(
  piece: Convex,
  from: Vec3,
  direction: Vec3,
  endless?: Vec3,
): [number, number] | undefined {
  let enter = Number.NEGATIVE_INFINITY;
  let leave = Number.POSITIVE_INFINITY;
  for (const plane of piece.planes) {
    if (endless && Math.abs(dot(plane.normal, endless)) > MOSTLY) continue;
    const rate = dot(plane.normal, direction);
    const gap = -height(plane, from);
    if (Math.abs(rate) < 1e-12) {
      if (gap < -SEAM) return undefined;
    } else if (rate > 0) leave = Math.min(leave, gap / rate);
    else enter = Math.max(enter, gap / rate);
  }
  return enter < leave ? [enter, leave] : undefined;
}

/** The far side of a cylinder from a point, along a direction. */
function depthInRound(
  length: Vec3,
  round: { axis: Vec3; radius: number },
  from: Vec3,
  direction: Vec3,
): number {
  const p = squareTo(sub(from, round.axis), length);
  const d = squareTo(direction, length);
  const a = dot(d, d);
  const b = dot(p, d);
  const root = b * b - a * (dot(p, p) - round.radius * round.radius);
  if (a < 1e-12 || root <= 0) return 0;
  return Math.max(0, (-b + Math.sqrt(root)) / a);
}

/** How thick some pieces are together across a direction at a point inside them, mm. */
export function thicknessIn(pieces: readonly Convex[], at: Vec3, direction: Vec3): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const piece of pieces) {
    const span = spanIn(piece, at, direction);
    if (!span || span[0] > SEAM || span[1] < -SEAM) continue;
    low = Math.min(low, span[0]);
    high = Math.max(high, span[1]);
  }
  return high > low ? high - low : 0;
}

/** Where straight stuff begins and ends across a direction from a point inside it, as if it ran on both ways along `length`, mm. */
export function stuffAcross(piece: Convex, length: Vec3, at: Vec3, direction: Vec3): [number, number] {
  return spanIn(piece, at, direction, length) ?? [0, 0];
}

/** The mortise whose wall is asked for, by the tenon that fills it: a prism between two planes parallel to the face entered. */
export interface Mortise {
  tenon: Convex;
  /** Middle of the tenon at the shoulder and at its end. */
  root: Vec3;
  tip: Vec3;
  /** Unit, from root to tip. */
  direction: Vec3;
  /** Unit normal of the face entered. */
  face: Vec3;
  /** No corner is further than this from the middle between root and tip, mm. */
  reach: number;
  /** The most that w · p comes to over the tenon's section about its middle, for a vector w square to its direction. */
  support: (w: Vec3) => number;
  /** How large the section is at the tip, against that at the root, which `support` tells. */
  atTip: number;
}

function wallIn(pieces: readonly Convex[], grain: Vec3, mortise: Mortise): number {
  let least = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    const part = within(mortise, piece, grain);
    if (!part) continue;
    for (const plane of piece.planes) {
      if (!isBeside(plane, grain, mortise.direction)) continue;
      const reach =
        part === mortise.tenon
          ? reachOf(mortise, plane)
          : Math.max(...part.points.map((p) => height(plane, p)));
      least = Math.min(least, -reach);
    }
  }
  return least === Number.POSITIVE_INFINITY ? 0 : least;
}

/** How far the whole tenon stands out of a plane; exact for a round one too, whose ends lie along the face entered. */
function reachOf({ root, tip, direction, face, support, atTip }: Mortise, plane: Plane): number {
  const slant = dot(plane.normal, direction) / dot(face, direction);
  const half = support(along(plane.normal, face, -slant));
  return Math.max(height(plane, root) + half, height(plane, tip) + atTip * half);
}

function isBeside(plane: Plane, length: Vec3, direction: Vec3): boolean {
  return Math.abs(dot(plane.normal, length)) < MOSTLY && Math.abs(dot(plane.normal, direction)) < MOSTLY;
}

/** The part of a tenon that lies between a piece's two ends; the tenon itself when all of it does. */
function within(mortise: Mortise, piece: Convex, length: Vec3): Convex | null {
  let part: Convex | null = mortise.tenon;
  for (const plane of piece.planes) {
    if (Math.abs(dot(plane.normal, length)) < MOSTLY) continue;
    const middle = (height(plane, mortise.root) + height(plane, mortise.tip)) / 2;
    if (middle > mortise.reach) return null;
    if (part && middle > -mortise.reach) part = clip(part, plane);
  }
  return part;
}

function wallInRound(length: Vec3, round: { axis: Vec3; radius: number }, mortise: Mortise): number {
  const inward = unit(squareTo(mortise.direction, length));
  const from = squareTo(sub(mortise.root, round.axis), length);
  const to = squareTo(sub(mortise.tip, round.axis), length);
  const nearest = Math.min(0, dot(to, inward));
  const across = unit(cross(length, inward));
  const chord = Math.sqrt(Math.max(0, round.radius ** 2 - nearest ** 2));
  return chord - Math.abs(dot(from, across)) - mortise.support(squareTo(across, mortise.direction));
}
