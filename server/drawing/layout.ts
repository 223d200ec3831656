import type { LengthUnit } from "../design/design.ts";
import { WORDS } from "./label-room.ts";
import type { Extent } from "./measures.ts";
import type { Area, DimensionLine, Point, ScaleBar, Sheet, Stroke, View } from "./sheet.ts";

/** A view as seen, y up, its corner not yet on the sheet. */
export interface Placed {
  view: Omit<View, "bounds">;
  /** The chair itself. */
  extent: Extent;
  /** All that is drawn. */
  reach: Extent;
}

/** Room around the sheet and between the views, mm on a full-size sheet. */
export const MARGIN = 50;
export const GAP = 56;
/** From the top of the sheet to the title's first line, and to the scale bar. */
const TITLE = 46;
const BAR = 190;

/** The scale bar's length in the file's unit, and how many parts it has. */
const bars: Record<LengthUnit, { length: number; label: string; divisions: number }> = {
  mm: { length: 200, label: "200 mm", divisions: 4 },
  cm: { length: 200, label: "20 cm", divisions: 4 },
  in: { length: 8 * 25.4, label: "8 in", divisions: 8 },
};

/**
 * The views on one sheet, y down: side to the right of the front on one floor line, plan over the front on one centre line; the title, its
 * notes and the scale bar fill the corner, which has room for one note and `moreNotes`.
 */
export function layOut(
  { front, side, plan }: Record<View["name"], Placed>,
  unit: LengthUnit,
  moreNotes = 0,
): Omit<Sheet, "title"> {
  const left = Math.min(front.reach.left, plan.reach.left);
  const right = Math.max(front.reach.right, plan.reach.right);
  const high = Math.max(front.reach.high, side.reach.high);
  const low = Math.min(front.reach.low, side.reach.low);
  const firstColumn = MARGIN - left;
  const secondColumn = MARGIN + (right - left) + GAP - side.reach.left;
  const top = MARGIN + plan.reach.high;
  const floor = MARGIN + (plan.reach.high - plan.reach.low) + GAP + high;
  const bar = bars[unit];
  const x = rounded(secondColumn + side.reach.left);
  const width = Math.max(side.reach.right - side.reach.left, bar.length);
  const scaleBar: ScaleBar = { at: [x, MARGIN + BAR + moreNotes * WORDS * 1.35], ...bar };
  return {
    views: [
      onSheet(front, [firstColumn, floor]),
      onSheet(side, [secondColumn, floor]),
      onSheet(plan, [firstColumn, top]),
    ],
    width: rounded(x + width + MARGIN),
    height: rounded(floor - low + MARGIN),
    scaleBar,
    titleAt: { x, y: MARGIN + TITLE, width: rounded(width) },
  };
}

/** To a hundredth of a millimetre. */
const rounded = (mm: number): number => Math.round(mm * 100) / 100;

/** A view with the place where right and up are zero put at that point of the sheet. */
function onSheet({ view, extent }: Placed, [x, y]: Point): View {
  const place = ([u, v]: Point): Point => [rounded(x + u), rounded(y - v)];
  const pair = ([a, b]: [Point, Point]): [Point, Point] => [place(a), place(b)];
  const [boundsX, boundsY] = place([extent.left, extent.high]);
  return {
    ...view,
    captionAt: place(view.captionAt),
    bounds: {
      x: boundsX,
      y: boundsY,
      width: rounded(extent.right - extent.left),
      height: rounded(extent.high - extent.low),
    },
    strokes: view.strokes.map((stroke): Stroke => ({ ...stroke, points: stroke.points.map(place) })),
    areas: view.areas.map((area): Area => ({ ...area, points: area.points.map(place) })),
    dimensions: view.dimensions.map((dimension): DimensionLine => {
      const { labelAt, line, extensions, arc, ...rest } = dimension;
      return {
        ...rest,
        labelAt: place(labelAt),
        line: pair(line),
        extensions: extensions.map(pair),
        ...(arc ? { arc: arc.map(place) } : {}),
      };
    }),
    ...(view.overlays && {
      overlays: view.overlays.map(({ name, strokes, words }) => ({
        name,
        strokes: strokes.map((stroke) => ({ ...stroke, points: stroke.points.map(place) })),
        words: words.map((each) => ({ ...each, at: place(each.at) })),
      })),
    }),
  };
}
