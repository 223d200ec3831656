import type { Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Body } from "../geometry/solid.ts";
import type { Fault } from "./fault.ts";

/**
 * What `make` builds, if it is a body of finite numbers; else nothing, and a fault says that the part's sizes make no shape. One part that
 * cannot be built costs that part alone.
 */
export function attempt<T extends { body: Body }>(
  part: string,
  at: Span,
  faults: Fault[],
  make: () => T | undefined,
): T | undefined {
  const message = sentence("fault.no-shape");
  try {
    const made = make();
    if (made === undefined || hasPlace(made.body)) return made;
    faults.push({ is: "not-buildable", part, at, message });
  } catch (thrown) {
    faults.push({ is: "not-buildable", part, at, message, thrown });
  }
  return undefined;
}

function hasPlace(body: Body): boolean {
  if (body.pieces.length === 0) return false;
  for (const piece of body.pieces) {
    for (const point of piece.points) if (!Number.isFinite(point[0] + point[1] + point[2])) return false;
  }
  return true;
}
