/**
 * Members that enter turned work: tenon and member are drawn to planes, while the wood follows the curve.
 */

import type { Chair, Joint } from "../chair/chair.ts";
import { railNamed } from "../chair/member.ts";
import { twinName } from "../design/identity.ts";
import { type Bounds, boundingBox, boxesMeet, contains, intersect, measure } from "../geometry/convex.ts";
import type { Convex, Vec3 } from "../geometry/solid.ts";

/** Some wood: mm³, and where its middle is as drawn. */
export interface Share {
  volume: number;
  centroid: Vec3;
}

/** What of a joint's tenons lies in the turned member they enter, and what of its member is scribed away there. */
export interface Scribed {
  inside: Share[];
  taken: Share[];
}

/** Into turned wood a member is scribed, and only what of the tenon lies in that wood counts: both are drawn to a plane. */
export function scribe(
  chair: Chair,
  { part }: Joint,
  solids: readonly Convex[],
  wood: readonly Boxed[],
): Scribed {
  const member = railNamed(chair, part);
  return {
    inside: solids.flatMap((solid) => sharedBy(solid, wood)),
    taken: (member?.body.pieces ?? []).flatMap((piece) => sharedBy(piece, wood)),
  };
}

/** A pair is mirrored, and so are both ends of a member across one, unless it tapers to an end. */
export function sameButMirrored(chair: Chair, { part, entered }: Joint): boolean {
  const member = railNamed(chair, part);
  const tapers = member && "tapers" in member.design ? member.design.tapers : [];
  return twinName(entered.name) !== entered.name && (twinName(part) !== part || tapers.length === 0);
}

export function mirrored({ inside, taken }: Scribed): Scribed {
  const mirror = ({ volume, centroid: [x, y, z] }: Share): Share => ({ volume, centroid: [-x, y, z] });
  return { inside: inside.map(mirror), taken: taken.map(mirror) };
}

export interface Boxed {
  solid: Convex;
  bounds: Bounds;
}

export const boxed = (solid: Convex): Boxed => ({ solid, bounds: boundingBox(solid) });

/** Corners out of the wood by less than this are in it, mm. */
const IN = 1e-3;

/** What of a tenon lies in flat-faced wood: as a rule all of it. */
export function insideOf(solid: Convex, whole: Share, wood: readonly Boxed[]): Share[] {
  const within = solid.points.every((p) => wood.some((piece) => contains(piece.solid, p, IN)));
  return within ? [whole] : sharedBy(solid, wood);
}

/** What a solid shares with each piece of a body. */
export function sharedBy(solid: Convex, pieces: readonly Boxed[]): Share[] {
  const bounds = boundingBox(solid);
  return pieces.flatMap((piece) => {
    const shared = boxesMeet(bounds, piece.bounds) ? intersect(solid, piece.solid) : null;
    return shared ? [measure(shared)] : [];
  });
}
