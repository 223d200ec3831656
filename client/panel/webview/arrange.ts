/**
 * How the views of a sheet are laid out in the panel: as the sheet has them, or in a row where the room is wider than high, so that the
 * drawing is as large as it can be.
 */
import { labelRoom } from "../../../server/drawing/label-room.ts";
import type { Point, Sheet, View } from "../../../server/drawing/sheet.ts";

/** A sheet with each view moved from where the sheet has it, and with a room for the pictorial view. */
export interface Laid extends Sheet {
  moved: Partial<Record<View["name"], Point>>;
  pictorial?: { x: number; y: number; width: number; height: number; below: boolean };
}

/** Room around the sheet and between the views, and from the top to the title, the scale bar and what is under them; mm. */
const MARGIN = 50;
const GAP = 70;
const TITLE = 46;
const BAR = 190;
const UNDER_BAR = 250;

/** The sheet laid out for a room of this width over height; `pictorial` is the room that a pictorial view takes, mm. */
export function arranged(sheet: Sheet, aspect: number, pictorial?: { width: number; height: number }): Laid {
  const asOnSheet: Laid = { ...sheet, moved: {} };
  const inRow = rowOf(sheet);
  const plain = inRow ? [asOnSheet, inRow] : [asOnSheet];
  const ways = pictorial ? plain.flatMap((laid) => [beside(laid, pictorial), below(laid, pictorial)]) : plain;
  const asLarge = (laid: Laid) => Math.min(aspect / laid.width, 1 / laid.height);
  return ways.reduce((best, way) => (asLarge(way) > asLarge(best) ? way : best));
}

/** Whether two are laid out in the same way, whatever their sizes. */
export const sameWay = (a: Laid, b: Laid): boolean =>
  (a.moved.plan === undefined) === (b.moved.plan === undefined) && a.pictorial?.below === b.pictorial?.below;

/** The pictorial view to the right of all else. */
function beside(laid: Laid, { width, height }: { width: number; height: number }): Laid {
  const tall = Math.max(laid.height, height + 2 * MARGIN);
  const x = laid.width - MARGIN + GAP;
  const y = Math.max(MARGIN, (tall - height) / 2);
  return {
    ...laid,
    width: x + width + MARGIN,
    height: tall,
    pictorial: { x, y, width, height, below: false },
  };
}

/** The pictorial view under all else. */
function below(laid: Laid, { width, height }: { width: number; height: number }): Laid {
  const wide = Math.max(laid.width, width + 2 * MARGIN);
  const y = laid.height - MARGIN + GAP;
  return {
    ...laid,
    width: wide,
    height: y + height + MARGIN,
    pictorial: { x: (wide - width) / 2, y, width, height, below: true },
  };
}

/** Front and side as they are, the plan to the right of them under the title; nothing when there are no such three views. */
function rowOf(sheet: Sheet): Laid | undefined {
  const [front, side, plan] = (["front", "side", "plan"] as const).map((wanted) => {
    const view = sheet.views.find(({ name }) => name === wanted);
    return view && reachOf(view);
  });
  if (!front || !side || !plan || sheet.views.length !== 3) return undefined;
  const left = MARGIN - Math.min(front.left, side.left);
  const planLeft = left + Math.max(front.right, side.right) + GAP;
  const standing = Math.max(front.foot, side.foot) - Math.min(front.top, side.top);
  const height = Math.max(standing, UNDER_BAR - MARGIN + plan.foot - plan.top);
  // All captions on one line.
  const foot = MARGIN + height;
  const down = foot - Math.max(front.foot, side.foot);
  const width = Math.max(plan.right - plan.left, sheet.scaleBar.length * 1.6);
  return {
    ...sheet,
    width: planLeft + width + MARGIN,
    height: foot + MARGIN,
    moved: { front: [left, down], side: [left, down], plan: [planLeft - plan.left, foot - plan.foot] },
    ...(sheet.titleAt && { titleAt: { x: planLeft, y: MARGIN + TITLE, width } }),
    scaleBar: { ...sheet.scaleBar, at: [planLeft, MARGIN + BAR] },
  };
}

interface Reach {
  left: number;
  right: number;
  top: number;
  foot: number;
}

/** All that is drawn of a view. */
function reachOf({ strokes, dimensions, bounds, captionAt, caption }: View): Reach {
  const half = (caption.length * LETTER) / 2;
  const reach = {
    left: Math.min(bounds.x, captionAt[0] - half),
    right: Math.max(bounds.x + bounds.width, captionAt[0] + half),
    top: bounds.y,
    foot: captionAt[1] + CAPTION_FOOT,
  };
  const points = [
    ...strokes.flatMap((stroke) => stroke.points),
    ...dimensions.flatMap(({ line, extensions, labelAt, lines }) => [
      ...line,
      ...extensions.flat(),
      labelAt,
      ...labelEnd(labelAt, lines),
    ]),
  ];
  for (const [x, y] of points) {
    reach.left = Math.min(reach.left, x);
    reach.right = Math.max(reach.right, x);
    reach.top = Math.min(reach.top, y);
    reach.foot = Math.max(reach.foot, y);
  }
  return reach;
}

/** The lower right end of a label on several lines. */
export function labelEnd([x, y]: Point, lines: readonly string[] | undefined): Point[] {
  if (!lines) return [];
  const { wide, deep } = labelRoom(lines);
  return [[x + wide, y + deep]];
}

/** About how wide a letter of a caption is, and how far one goes under its line; mm. */
const LETTER = 14;
const CAPTION_FOOT = 11;
