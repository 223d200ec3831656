/**
 * The sockets of a solid seat, each as it is bored: its place from the seat's middle line and front edge on the face the bit goes in, the
 * line in that face in which the bit leans, and by how much.
 */
import type { Chair, Joint, SeatSurface } from "../../chair/chair.ts";
import { seatLeanOf } from "../../chair/seat/solid/leg.ts";
import { spotOnSeat } from "../../chair/seat/solid/on-face.ts";
import { dot, sub } from "../../geometry/vec.ts";
import { jointsInto } from "./mouths.ts";
import type { Cone, SeatBore } from "./piece.ts";
import { letterOf } from "./setting-out.ts";

/** In the order of the text. */
export function seatBores(chair: Chair, seat: SeatSurface): SeatBore[] {
  return jointsInto(chair, seat.name).flatMap((joint, k) => {
    const part = chair.members.get(joint.part);
    if (!part || part.is === "block" || part.is === "seat") return [];
    const lean = seatLeanOf(seat, part);
    if (!lean) return [];
    const onRight = part.side === "right" || (part.is === "bow" && joint.end === "right");
    const [x, behind] = spotOnSeat(seat, joint.root);
    const side = x > MIDDLE ? "left" : x < -MIDDLE ? "right" : "middle";
    const run = joint.long / Math.abs(dot(joint.direction, seat.plane.normal));
    const cone = coneOf(joint, run);
    return [
      {
        letter: letterOf(k),
        for: joint.part,
        face: part.is === "post" && part.design.intoSeat ? "under face" : "top",
        out: Math.abs(x),
        side,
        behind,
        sightLine: Math.abs(lean.sightLine),
        // What stands on the right leans to its own side, as its twin does to the left.
        towards: lean.sightLine < 0 === onRight ? "left" : "right",
        lean: lean.lean,
        diameter: joint.thick,
        ...(cone && { cone }),
        ...(joint.facts.through ? {} : { deep: deepestOf(joint) }),
      },
    ];
  });
}

/** How deep a bore that ends square to itself holds all of a tenon whose end lies along the face. */
export const deepestOf = ({ tenon, root, direction }: Joint): number =>
  Math.max(...tenon.flatMap(({ points }) => points.map((p) => dot(sub(p, root), direction))));

/** Nearer than this to the middle line is on it, mm. */
const MIDDLE = 1e-6;

/** The cone of a tapered tenon over its run; undefined of one that does not taper. */
export function coneOf({ sections, thick }: Joint, run: number): Cone | undefined {
  const tip = sections[0]?.tip;
  return tip === undefined ? undefined : { tip: thick * tip, over: run };
}
