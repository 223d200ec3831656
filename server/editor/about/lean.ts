/**
 * How a post leans, as a maker sets it out.
 */

import type { Side } from "../../chair/chair.ts";
import type { Vec3 } from "../../geometry/solid.ts";

export interface Lean {
  /** Radians from plumb seen square from the side; positive leaning back going up. */
  rake: number;
  /** Radians from plumb seen square from the front; positive with the foot further out than the top. */
  splay: number;
  /** Radians between the post's line and plumb. */
  resultant: number;
  /** Radians on the floor from the fore-and-aft line to the line along which the post leans. */
  sightline: number;
}

/**
 * The lean of a line that goes up along `direction` (x to the sitter's left, y back, z up).
 * tan(resultant) = √(tan² rake + tan² splay); tan(sightline) = tan splay / tan rake.
 */
export function leanOf(direction: Vec3, side: Side): Lean {
  const [x, y, z] = direction;
  const inward = side === "right" ? x : -x;
  return {
    rake: Math.atan2(y, z),
    splay: Math.atan2(inward, z),
    resultant: Math.atan2(Math.hypot(x, y), z),
    sightline: Math.atan2(Math.abs(inward), Math.abs(y)),
  };
}
