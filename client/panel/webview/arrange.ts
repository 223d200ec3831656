/**
 * How the views of a sheet are laid out in the panel: as the sheet has them, or in a row where the room is wider than high, so that the
 * drawing is as large as it can be.
 */
import type { Point, Sheet, View } from "../../../server/drawing/sheet.ts";

/** A sheet with each view moved from where the sheet has it. */
export interface Laid extends Sheet {
  moved: Partial<Record<View["name"], Point>>;
}

/** Room around the sheet and between the views, and from the top to the title, the scale bar and what is under them; mm. */
const MARGIN = 50;
const GAP = 70;
const TITLE = 46;
const BAR = 190;
const UNDER_BAR = 250;

/** The sheet laid out for a room of this width over height. */
export function arranged(sheet: Sheet, aspect: number): Laid {
  const inRow = rowOf(sheet);
  if (!inRow) return { ...sheet, moved: {} };
  const asLarge = (laid: { width: number; height: number }) => Math.min(aspect / laid.width, 1 / laid.height);
  return asLarge(inRow) > asLarge(sheet) ? inRow : { ...sheet, moved: {} };
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
    ...dimensions.flatMap(({ line, extensions, labelAt }) => [...line, ...extensions.flat(), labelAt]),
  ];
  for (const [x, y] of points) {
    reach.left = Math.min(reach.left, x);
    reach.right = Math.max(reach.right, x);
    reach.top = Math.min(reach.top, y);
    reach.foot = Math.max(reach.foot, y);
  }
  return reach;
}

/** About how wide a letter of a caption is, and how far one goes under its line; mm. */
const LETTER = 14;
const CAPTION_FOOT = 11;
