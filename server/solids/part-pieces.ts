import type { Chair, Joint, Member } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { isRail } from "../chair/member.ts";
import { boundingBox, boxesMeet, intersect, prism } from "../geometry/convex.ts";
import { less } from "../geometry/less.ts";
import { height } from "../geometry/plane.ts";
import type { Convex, Vec3 } from "../geometry/solid.ts";
import { along, dot } from "../geometry/vec.ts";
import { trimmedInHollow } from "./through-hollow.ts";

/** A mortise is cut from this far out of the face it is in, so that no film is left where the wood stands proud of the tenon's shoulder, mm. */
const CLEAR = 1;

/**
 * A part as it leaves the bench, as convex pieces that touch and do not overlap: its body, its own tenons on, the mortises of others cut out
 * of it. An end that enters turned work is scribed to it: the body ends on the other's surface, and so does what of the tenon is seen. Worked
 * out once for a chair, for all who ask.
 */
export function partPieces(chair: Chair, member: Member): Convex[] {
  const known = kept(chair, piecesKnown);
  const pieces = known.get(member) ?? cutOut(chair, member);
  known.set(member, pieces);
  return pieces;
}

const piecesKnown = (_chair: Chair): Map<Member, Convex[]> => new Map();

function cutOut(chair: Chair, member: Member): Convex[] {
  // Halved rails have their notches in their bodies.
  const joints = [...chair.joints.values()].filter(({ kind }) => kind !== "halving");
  const board = boardOver(chair, member);
  let body: readonly Convex[] = cutAway(member.body.pieces, [...board, ...throughBoard(chair, member)]);
  const tenons: Convex[] = [];
  for (const joint of joints) {
    // A stick goes through a bow as it is.
    if (joint.part !== member.name || joint.kind === "passing") continue;
    const host = chair.members.get(joint.entered.name);
    const solids = trimmedInHollow(chair, joint)?.own ?? solidsOf(joint);
    if (!host || !isTurned(host)) tenons.push(...solids);
    else {
      body = cutAway(body, host.body.pieces);
      // The mouth of the mortise is filled too: where round work bulges past a tenon's flat root there would be a hollow.
      tenons.push(
        ...solids.flatMap((solid) => shared(solid, host.body.pieces)),
        ...solids.flatMap((solid) => shared(mouthOf(joint, solid), host.body.pieces)),
      );
    }
  }
  for (const joint of joints) {
    if (joint.entered.name !== member.name) continue;
    const solids = solidsOf(joint);
    const bored = trimmedInHollow(chair, joint)?.bored ?? solids;
    body = cutAway(body, [...bored, ...solids.flatMap((solid) => mouthOf(joint, solid) ?? [])]);
  }
  return [...body, ...cutAway(tenons, board)];
}

/**
 * A board seat lies on its rails as it is sawn: what of their tops, and of the tops of the posts below it, stands up into it is planed off.
 * The pieces of the board over such a member; none over posts that go up past it, round which it is notched.
 */
export function boardOver({ seat }: Chair, member: Member): readonly Convex[] {
  if (seat?.design.kind !== "board") return [];
  const below = member.is === "rail" || (member.is === "post" && height(seat.plane, member.top) < 0);
  return below ? seat.body.pieces : [];
}

/** The wood of a joint: its tenons and its haunch. */
export const solidsOf = (joint: Joint): Convex[] =>
  joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon;

/** Whether an end that enters a member there is scribed to a round surface. */
export const isTurned = (host: Member): boolean =>
  host.is === "post"
    ? host.pieces.some(({ faces }) => !faces)
    : (isRail(host) || host.is === "bow") && host.round !== undefined;

/** What stands right through a board seat, which is bored for it: slats and spindles whose rail it lies on. */
export const throughBoard = (chair: Chair, member: Member): readonly Convex[] =>
  member.is === "seat" && member.design.kind === "board"
    ? [...chair.slats.values()].flatMap(({ body }) => body.pieces)
    : [];

/** What is left of pieces outside tools, as pieces that touch and do not overlap. */
export function cutAway(pieces: readonly Convex[], tools: readonly Convex[]): Convex[] {
  let left = [...pieces];
  for (const tool of tools) {
    const bounds = boundingBox(tool);
    left = left.flatMap((piece) => (boxesMeet(bounds, boundingBox(piece)) ? less(piece, tool) : [piece]));
  }
  return left;
}

function shared(solid: Convex | undefined, pieces: readonly Convex[]): Convex[] {
  if (!solid) return [];
  return pieces.flatMap((piece) => intersect(solid, piece) ?? []);
}

/** What a mortise's tool takes before the shoulder: the tenon's section there, run out of the wood. */
function mouthOf({ direction }: Joint, tenon: Convex): Convex | undefined {
  const out = tenon.planes.map(({ normal }) => dot(normal, direction));
  const face = out.indexOf(Math.min(...out));
  const ring = tenon.faces[face]?.map((corner): Vec3 => tenon.points[corner]!);
  return (
    ring &&
    prism(
      ring.map((p) => along(p, direction, -CLEAR)),
      ring,
    )
  );
}
