import { dot } from "../../geometry/vec.ts";
import type { Bow, Chair } from "../chair.ts";

/** The strip that a bow is bent from, mm: along its centre line, with both its tenons along theirs. */
export function stripLength(bow: Bow, { joints, seat }: Pick<Chair, "joints" | "seat">): number {
  let length = bow.path.length;
  for (const { part, shape, long, direction } of joints.values()) {
    if (part !== bow.name || shape === "none") continue;
    length += seat ? long / Math.abs(dot(direction, seat.plane.normal)) : long;
  }
  return length;
}
