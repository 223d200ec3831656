import type { Chair, Joint } from "../chair/chair.ts";
import { rejoined, supposed } from "../chair/joints/rejoined.ts";

/** Another `set` for a tenon, tried on the chair. */
interface SetInstead {
  /** From the outside face, mm. */
  distance: number;
  way: "further in" | "further out";
}

/** mm */
const SLACK = 1e-6;

/** Where a tenon would have to lie in its rail's thickness for this much wood beside its mortise, mm; undefined where none will do. */
export function setInstead(chair: Chair, joint: Joint, wood: number): SetInstead | undefined {
  if (joint.shape !== "rectangular") return undefined;
  const by = wood - joint.mortiseWall;
  for (const way of ["further in", "further out"] as const) {
    const distance = joint.shoulders.outside + (way === "further in" ? by : -by);
    if (distance < 0 || joint.shoulders.outside + joint.shoulders.inside - distance < 0) continue;
    const moved = rejoined(chair, joint, { set: supposed(joint, { from: "outside" as const, distance }) });
    if (moved && moved.mortiseWall >= wood - SLACK) return { distance, way };
  }
  return undefined;
}
