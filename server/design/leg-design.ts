/** Where a leg is in the seat, level: on its under face, or on its top. */
export interface LegPlace {
  out: number;
  back: number;
  above: boolean;
}

/** How a leg goes when neither splay nor rake says so: to a foot, or by the seat's own face (radians). */
export type LegWay =
  | { is: "foot"; out: number; back: number }
  | { is: "lean"; lean: number; sightLine: number };
