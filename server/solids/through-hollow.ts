import type { Chair, Joint } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { edgesOf } from "../geometry/body.ts";
import { type Bounds, boundingBox, boundsOf, boxesMeet, intersect, prism } from "../geometry/convex.ts";
import type { Convex, Vec3 } from "../geometry/solid.ts";
import { along, distance, dot, sub } from "../geometry/vec.ts";

/** How far the bore is run out above the seat's top, mm. */
const CLEAR = 1;

/** Whether a tenon comes out in a seat's hollow, where it is trimmed flush with the wood as that falls. */
export const endsInHollow = ({ seat }: Chair, { facts, entered }: Joint): boolean =>
  entered.kind === "seat" && seat?.design.solid?.hollow !== undefined && facts.through !== undefined;

/** What a tenon that comes out in a hollow is: its own wood up to the hollow, and what is bored for it, right through; each mm as drawn. */
export interface Trimmed {
  own: Convex[];
  bored: Convex[];
  /** The pieces of the seat that the bore may touch. */
  wood: Convex[];
}

/** The tenon as it is trimmed, worked out once for a chair; undefined of one that does not come out in a hollow. */
export function trimmedInHollow(chair: Chair, joint: Joint): Trimmed | undefined {
  if (!chair.seat || !endsInHollow(chair, joint)) return undefined;
  const known = kept(chair, trimmedKnown);
  const trimmed =
    known.get(joint) ?? trim(joint, kept(chair, boxedSeat), chair.seat.design.solid!.hollow!.value.deep);
  known.set(joint, trimmed);
  return trimmed;
}

const trimmedKnown = (_chair: Chair): Map<Joint, Trimmed> => new Map();

interface BoxedPiece {
  piece: Convex;
  box: Bounds;
}

const boxedSeat = ({ seat }: Chair): BoxedPiece[] =>
  (seat?.body.pieces ?? []).map((piece) => ({ piece, box: boundingBox(piece) }));

function trim({ tenon, direction }: Joint, seat: readonly BoxedPiece[], deep: number): Trimmed {
  const bored = [...tenon, ...tenon.flatMap((solid) => runOn(solid, direction, deep + CLEAR) ?? [])];
  const around = boundsOf(bored.flatMap(({ points }) => points));
  const wood = seat.filter(({ box }) => boxesMeet(around, box));
  const own = bored.flatMap((solid) => {
    const own = boundingBox(solid);
    return wood.flatMap(({ piece, box }) => (boxesMeet(own, box) ? (intersect(solid, piece) ?? []) : []));
  });
  return { own, bored, wood: wood.map(({ piece }) => piece) };
}

/** What follows the end of a tenon when its sides run on. */
function runOn(tenon: Convex, direction: Vec3, by: number): Convex | undefined {
  const out = tenon.planes.map(({ normal }) => dot(normal, direction));
  const ring = tenon.faces[out.indexOf(Math.max(...out))]?.map((corner): Vec3 => tenon.points[corner]!);
  if (!ring) return undefined;
  const sides = edgesOf(tenon);
  const moved = ring.map((corner): Vec3 => {
    const side = sides.find(
      ({ a, b }) => (a === corner) !== (b === corner) && !ring.includes(a === corner ? b : a),
    );
    if (!side) return along(corner, direction, by);
    const from = side.a === corner ? side.b : side.a;
    return along(corner, sub(corner, from), by / distance(corner, from));
  });
  return prism(moved, ring);
}
