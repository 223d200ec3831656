/**
 * Views: which way the eye looks, and places as seen that way. A seen place is (right, up, towards): to the right and up as seen,
 * and towards the eye.
 */
import { compose } from "../geometry/motion.ts";
import type { Motion, Vec3 } from "../geometry/solid.ts";
import type { View } from "./sheet.ts";

/** Unit directions of a view: to the right and up as seen, and from the chair towards the eye. */
export interface Sight {
  right: Vec3;
  up: Vec3;
  towards: Vec3;
}

/** Third-angle projection: the side stands to the right of the front, the plan above it, and neighbouring edges face each other. */
export const sights: Record<View["name"], Sight> = {
  front: { right: [1, 0, 0], up: [0, 0, 1], towards: [0, -1, 0] },
  side: { right: [0, 1, 0], up: [0, 0, 1], towards: [1, 0, 0] },
  plan: { right: [1, 0, 0], up: [0, 1, 0], towards: [0, 0, 1] },
};

/** The motion that carries places as drawn into a view of them as they stand. */
export const motionInto = ({ right, up, towards }: Sight, stance: Motion): Motion =>
  compose({ rotation: [right, up, towards], shift: [0, 0, 0] }, stance);
