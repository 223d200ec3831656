/**
 * The three views of a chair as a maker draws them on a board: what is seen, what other wood hides, and the tenons inside.
 */
import { finish } from "../../../grammar/steps.ts";
import type { Chair } from "../../chair/chair.ts";
import { kept } from "../../chair/kept.ts";
import { chainsOf } from "../chains.ts";
import { extentOf } from "../dimension-lines.ts";
import { type SeenLine, seeSteps } from "../hidden-lines.ts";
import type { Extent } from "../measures.ts";
import { tenonLines } from "../pictorial/look.ts";
import { type Turnable, turnableSteps } from "../pictorial/turnable.ts";
import type { Point, View } from "../sheet.ts";
import { motionInto, sights } from "../sight.ts";

export type ViewName = View["name"];

/** As seen, right and up, mm; the middle of the chair and the floor are zero. */
interface DrawnView {
  strokes: { points: Point[]; is: "outline" | "edge" | "hidden" }[];
  extent: Extent;
}

export type DrawnViews = Record<ViewName, DrawnView>;

/** The views of a chair as it stands. */
export const viewsOf = (chair: Chair): DrawnViews => kept(chair, drawn);

function drawn(chair: Chair): DrawnViews {
  const turnable = finish(turnableSteps(chair, false));
  return {
    front: viewOf(turnable, "front"),
    side: viewOf(turnable, "side"),
    plan: viewOf(turnable, "plan"),
  };
}

function viewOf(turnable: Turnable, name: ViewName): DrawnView {
  const into = motionInto(sights[name], turnable.stance);
  const bodies = turnable.parts.map(({ body }) => body);
  const behind: SeenLine[] = [];
  const { lines, bodies: seen } = finish(seeSteps(bodies, into, [], behind));
  const tenons = tenonLines(turnable, into, () => [0, 0, 0]).map(
    ({ points: [a, b] }, k): SeenLine => ({ body: bodies.length + k, is: "edge", a, b }),
  );
  // Where a hidden line lies along one that is seen, only that one is drawn.
  const front = lines.map((line): SeenLine => ({ ...line, is: "outline" }));
  const back = [...behind, ...tenons].map((line): SeenLine => ({ ...line, is: "edge" }));
  const hidden = chainsOf([...front, ...back]).filter(({ is }) => is === "edge");
  const boxes = seen.filter(({ hiders }) => hiders.length > 0);
  return {
    strokes: [
      ...hidden.map(({ points }) => ({ points, is: "hidden" as const })),
      ...chainsOf(lines).map(({ points, is }) => ({ points, is })),
    ],
    extent: extentOf(
      boxes.flatMap(({ left, right, low, high }): Point[] => [
        [left, low],
        [right, high],
      ]),
    ),
  };
}
