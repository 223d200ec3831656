import type { PostDesign, PostStation } from "../../design/design.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { breaksOf, type Profile, profileOf, stretchAt, valueAt } from "./profile.ts";

/** A post's centre line: how far out and how far back it is at each plumb height, two functions that know nothing of each other. */
export interface CentreLine {
  /** Seen from the side: back grows with a rake. */
  side: Profile;
  /** Seen from the front: values are inward, as a positive splay leans inward going up. */
  front: Profile;
  /** Of the line at height 0, as drawn. */
  out: number;
  back: number;
  /** +1 where out is x, −1 on the right. */
  sign: 1 | -1;
}

/**
 * The centre line of a post as the text has it, or undefined when it was not placed.
 * `ends` are the plumb heights of foot and top, by which it may have been placed.
 */
export function centreLineOf(
  design: PostDesign,
  sign: 1 | -1,
  ends: { foot: number; top: number },
): CentreLine | undefined {
  const place = design.place?.value;
  if (!place) return undefined;
  const knees = design.knees.map((given) => given.value);
  const side = profileOf(
    design.rake?.value ?? 0,
    knees.filter((knee) => knee.seen === "side"),
  );
  const front = profileOf(
    design.splay?.value ?? 0,
    knees.filter((knee) => knee.seen === "front"),
  );
  const z = stationHeight(place.station, ends);
  return { side, front, out: place.out + valueAt(front, z), back: place.back - valueAt(side, z), sign };
}

/** The plumb height a station of a post stands for. */
export function stationHeight(station: PostStation, ends: { foot: number; top: number }): number {
  return station === "foot" ? ends.foot : station === "top" ? ends.top : station;
}

/** The point of the line at a plumb height. */
export function pointAt(line: CentreLine, z: number): Vec3 {
  return [line.sign * (line.out - valueAt(line.front, z)), line.back + valueAt(line.side, z), z];
}

/** The heights at which it changes direction, in either view. */
export function breaksAlong(line: CentreLine): number[] {
  return [...breaksOf(line.side), ...breaksOf(line.front)];
}

/** Whether it is part of a fair curve at a height, in either view. */
export function curvedAt(line: CentreLine, z: number): boolean {
  return stretchAt(line.side, z).curved || stretchAt(line.front, z).curved;
}

/** Two knees of a post whose curves run into each other, so that they were shortened to fit. */
export function crowdedKnees(design: PostDesign): Profile["crowded"] {
  return (["side", "front"] as const).flatMap((seen) => {
    const knees = design.knees.map((given) => given.value).filter((knee) => knee.seen === seen);
    return profileOf((seen === "side" ? design.rake : design.splay)?.value ?? 0, knees).crowded;
  });
}
