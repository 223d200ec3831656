/**
 * The outlines of whole parts in the pictorial view, for flags to find a place.
 */
import { outlinesOf } from "../../../../server/drawing/areas.ts";
import type { Looked } from "../../../../server/drawing/pictorial/look.ts";
import type { Area, Point } from "../../../../server/drawing/sheet.ts";

/** As seen, right and up, into what SVG draws: y down. */
export const down = ([x, y]: Point): Point => [x, -y];

/** Flags do not ask where a part stands in the text. */
const NOWHERE = { start: 0, end: 0 };

/** The outlines of what is seen, the farthest part first. */
export function areasOf({ shapes }: Looked): Area[] {
  return shapes.flatMap(({ part, seen }) =>
    outlinesOf(seen.hiders).map((points) => ({ part, at: NOWHERE, points: points.map(down) })),
  );
}
