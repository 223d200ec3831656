import { clip, intersect } from "./convex.ts";
import { flipped } from "./plane.ts";
import type { Convex } from "./solid.ts";

/** What is left of a solid outside another, as convex pieces that touch and do not overlap. */
export function less(solid: Convex, tool: Convex): Convex[] {
  if (!intersect(solid, tool)) return [solid];
  const left: Convex[] = [];
  let rest: Convex | null = solid;
  for (const plane of tool.planes) {
    if (!rest) break;
    const outside: Convex | null = clip(rest, flipped(plane));
    if (outside) left.push(outside);
    rest = clip(rest, plane);
  }
  return left;
}
