import type { Plane, Vec3 } from "../../../geometry/solid.ts";
import { cross, dot, sub } from "../../../geometry/vec.ts";
import type { SeatSurface } from "../../chair.ts";
import type { Spot } from "./edge.ts";

/** A place on a seat's face: out from its middle line, and along its top behind the front edge. */
export function spotOnSeat({ plane, front }: Pick<SeatSurface, "plane" | "front">, p: Vec3): Spot {
  return [p[0], dot(sub(p, front.middle), backwardOf(plane))];
}

/** Unit: straight back along a seat. */
export const backwardOf = (plane: Plane): Vec3 => cross(plane.normal, [1, 0, 0]);
