import { clip } from "../../geometry/convex.ts";
import { height } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { Post, Rail } from "../chair.ts";
import { directionAt, pieceAt, radiusAt } from "../posts/post-query.ts";

/** The member a tenon goes into, near that tenon: all that the joint asks of it. */
export interface EnteredWood {
  pieces: readonly Convex[];
  /** Unit, along its grain there. */
  length: Vec3;
  /** Turned stuff: a point of its axis and its radius there. */
  round?: { axis: Vec3; radius: number };
}

/** A plane lies across or along a direction when the cosine between is beyond this. */
const MOSTLY = Math.SQRT1_2;
/** A shoulder may stand off the wood by this much and still count as on it, mm. */
const MOUTH = 0.5;
/** Gaps between a member's own pieces smaller than this are none, mm. */
const SEAM = 1e-4;

/** A post's wood about a point. */
export function woodOfPost(post: Post, near: Vec3): EnteredWood {
  const pieces = post.body.pieces;
  const length = directionAt(post, near[2]);
  const radius = radiusAt(post, near[2]);
  if (radius === undefined) return { pieces, length };
  return { pieces, length, round: { axis: pieceAt(post, near[2]).start, radius } };
}

/** A rail's or slat's wood. */
export function woodOfRail(rail: Rail): EnteredWood {
  const wood = { pieces: rail.body.pieces, length: rail.along };
  return rail.round === undefined ? wood : { ...wood, round: { axis: rail.start, radius: rail.round / 2 } };
}

/**
 * How much wood there is from a point on the member's surface along a unit direction into it, mm: to where that line first comes
 * out. 0 when it meets none.
 */
export function depthAlong(wood: EnteredWood, from: Vec3, direction: Vec3): number {
  if (wood.round) return depthInRound(wood.length, wood.round, from, direction);
  const spans: [number, number][] = [];
  for (const piece of wood.pieces) {
    const span = spanIn(piece, from, direction);
    if (span && span[1] > SEAM) spans.push(span);
  }
  spans.sort((a, b) => a[0] - b[0]);
  let reach = 0;
  for (const [enter, leave] of spans) {
    if (enter > reach + (reach === 0 ? MOUTH : SEAM)) break;
    reach = Math.max(reach, leave);
  }
  return reach;
}

function spanIn(piece: Convex, from: Vec3, direction: Vec3, endless?: Vec3): [number, number] | undefined {
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

/** How thick the member is across a unit direction at a point inside it, mm. */
export function thicknessAcross(wood: EnteredWood, at: Vec3, direction: Vec3): number {
  if (wood.round) return 2 * wood.round.radius;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const piece of wood.pieces) {
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
}

/**
 * The least wood left beside a mortise, to the faces that run along the member at its sides, mm; negative when it breaks out. The face
 * entered, the one opposite and the member's ends are not beside it. In turned stuff it is measured where the mortise has come
 * nearest the axis, as the surface curves away at its mouth.
 */
export function wallBeside(wood: EnteredWood, mortise: Mortise): number {
  if (wood.round) return wallInRound(wood.length, wood.round, mortise);
  let least = Number.POSITIVE_INFINITY;
  for (const piece of wood.pieces) {
    const part = within(mortise, piece, wood.length);
    if (!part) continue;
    for (const plane of piece.planes) {
      if (!isBeside(plane, wood.length, mortise.direction)) continue;
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
function reachOf({ root, tip, direction, face, support }: Mortise, plane: Plane): number {
  const slant = dot(plane.normal, direction) / dot(face, direction);
  return Math.max(height(plane, root), height(plane, tip)) + support(along(plane.normal, face, -slant));
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
