import type { Vec3 } from "../../geometry/solid.ts";

/** A seat's edge, in one plane. */
export interface SeatOutline {
  /** Anticlockwise from above, starting front left. */
  ring: Vec3[];
  /** Points of the front edge and of the back edge, from left to right. */
  front: Vec3[];
  back: Vec3[];
  /** The outline in convex pieces, each anticlockwise from above. */
  cells: Vec3[][];
}

/** A slab of a seat, from one depth below the sitting surface to another, mm. */
export interface SeatLayer {
  outline: SeatOutline;
  from: number;
  to: number;
}
