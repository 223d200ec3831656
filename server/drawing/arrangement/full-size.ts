/**
 * The maker's rod: the side of the chair and the half of its front on the sitter's left, at full size.
 */
import type { Chair } from "../../chair/chair.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import type { Figures } from "../markout/figures.ts";
import { enlarged, type Point, TYPE } from "../markout/page.ts";
import type { FullSize } from "../markout/tiles.ts";
import { type CellView, cellItems, cellOf } from "./cells.ts";
import { type Labels, namedLabels } from "./labels.ts";
import { type SetOut, type Stop, setOutOf } from "./set-out.ts";
import { strokeItems } from "./sheet.ts";
import { type DrawnViews, viewsOf } from "./views.ts";

interface FullSizeView {
  view: string;
  drawing: FullSize;
}

/** Empty for a chair of which nothing is drawn. */
export function fullSizeViews(chair: Chair, pieces: readonly Piece[], figures: Figures): FullSizeView[] {
  const labels = namedLabels(pieces, figures);
  const { side, front } = viewsOf(chair);
  const setOut = setOutOf(chair);
  if (side.strokes.length === 0) return [];
  const views: { view: string; cell: CellView }[] = [
    {
      view: "side",
      cell: {
        floor: true,
        caption: "Side, from the sitter's left",
        extent: side.extent,
        lines: (scale) => strokeItems(side.strokes, scale),
        setOut: setOut.side,
        origins: { above: setOut.origin, below: setOut.origin },
        axis: false,
      },
    },
    {
      view: "half front",
      cell: {
        floor: true,
        caption: "Half of the front, the sitter's left",
        extent: { ...front.extent, left: 0 },
        lines: (scale) => strokeItems(halved(front.strokes), scale),
        setOut: onHalf(setOut.front),
        origins: {},
        axis: true,
      },
    },
  ];
  return views.map(({ view, cell }) => ({ view, drawing: drawingOf(cell, figures, labels) }));
}

/** Laid out smaller and enlarged until its letters are large, which leaves the view itself at full size. */
function drawingOf(view: CellView, figures: Figures, labels: Labels): FullSize {
  const [by] = TYPE;
  const cell = cellOf(view, figures, labels, by);
  return {
    width: (cell.left + cell.right) * by,
    height: (cell.above + cell.below) * by,
    items: cellItems(cell, [cell.left, cell.above]).map((item) => enlarged(item, by)),
    captions: [],
  };
}

/** Heights are led to the middle line, where the half begins. */
function onHalf(front: SetOut["front"]): SetOut["front"] {
  const toMiddle = (stop: Stop): Stop => ({ ...stop, across: stop.across.map(() => 0) });
  return { ...front, left: front.left.map(toMiddle) };
}

type Strokes = DrawnViews["front"]["strokes"];

/** What of some strokes lies on the right of the middle line. */
function halved(strokes: Strokes): Strokes {
  return strokes.flatMap(({ points, is }) => runsOnRight(points).map((run) => ({ points: run, is })));
}

function runsOnRight(points: readonly Point[]): Point[][] {
  const runs: Point[][] = [];
  let run: Point[] = [];
  const close = () => {
    if (run.length > 1) runs.push(run);
    run = [];
  };
  points.forEach((q, k) => {
    const p = points[k - 1];
    if (p && p[0] < 0 !== q[0] < 0) {
      const share = p[0] / (p[0] - q[0]);
      const on: Point = [0, p[1] + (q[1] - p[1]) * share];
      run.push(on);
      if (q[0] < 0) close();
    }
    if (q[0] >= 0) run.push(q);
  });
  close();
  return runs;
}
