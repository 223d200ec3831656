import type { Vec3 } from "../geometry/solid.ts";

/** A joint as assembly sees it: `part` goes into `into` along `direction`, the last `long` mm guided by the mortise. */
export interface Fitting {
  /** Empty where nothing is cut: one part only stands on the other. */
  name: string;
  part: string;
  into: string;
  /** Unit. */
  direction: Vec3;
  /** How far the tenon is guided, mm. */
  long: number;
  /** How far it may stray sideways over that length before it binds, mm. */
  slack: number;
  /** A tapered tenon is loose as soon as it moves: along any line within this of its own, radians. */
  free?: number;
  /** Into a solid seat: those of parts that hang together may be drawn at once, each along its own line. */
  drawn?: true;
  /** How much of that is springing of the part, mm; none when absent. */
  spring?: number;
}

export interface Parting {
  direction: Vec3;
  groups: string[][];
}
