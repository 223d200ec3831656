import type { Given } from "./given.ts";

export interface SolidSeatDesign {
  /** Height of the middle of the top of the front edge, and how far that is behind the front line. */
  up?: Given<number>;
  back?: Given<number>;
  /** Drop from the front edge to the back edge, or the same as an angle below level. */
  fall?: Given<number>;
  slope?: Given<number>;
  /** From the front edge to the back edge along the top. */
  deep?: Given<number>;
  /** From the front to the back: the full width at a distance behind the front edge. */
  widths: Given<SeatWidth>[];
  /** Diameter of a round seat, which has no widths. */
  round?: Given<number>;
  /** Radii of the corners. */
  corner?: Given<{ front: number; back: number }>;
  tail?: Given<{ wide: number; long: number }>;
  /** How deep it is hollowed, over what length from its rim, and how wide that is; undefined `over` is 8 depths. */
  hollow?: Given<{ deep: number; over: number; open: boolean; rim: number }>;
  /** Off the upper and the lower edge, all round: so much off the face, by so much off the edge. */
  bevels: Given<{ wide: number; deep: number; face: "above" | "below" }>[];
  grain: Given<"fore-and-aft" | "across">;
  /** How many boards it is jointed of. */
  boards: Given<number>;
}

export interface SeatWidth {
  wide: number;
  at: number;
  /** Reached straight from the one before. */
  straight: boolean;
}
