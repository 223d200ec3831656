import { height } from "../../geometry/plane.ts";
import { dot } from "../../geometry/vec.ts";
import type { Joint } from "../chair.ts";

/** A side that looks back out of the mortise by less than this runs along the tenon; a corner nearer than this to the face is in it, mm. */
const BACK = -0.05;
const IN_FACE = 1e-3;

/** The deepest that a tenon goes as it is cut, square to the face it enters, mm: `long`, or less where it is mitred. */
export function depthCut({ tenon, direction, root, long }: Joint): number {
  const face = tenon[0]?.planes.find(
    (plane) => dot(plane.normal, direction) < BACK && Math.abs(height(plane, root)) < IN_FACE,
  );
  if (!face) return long;
  return Math.min(long, Math.max(...tenon.flatMap(({ points }) => points.map((p) => -height(face, p)))));
}
