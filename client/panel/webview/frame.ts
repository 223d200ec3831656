/**
 * Which part of the sheet the panel shows, in the sheet's millimetres.
 */
import type { Point, Sheet } from "../../../server/drawing/sheet.ts";
import { type Laid, labelEnd } from "./arrange.ts";

export interface Frame {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** All of the sheet, or one of its views with its words around it; all when there is no such view. */
export function frameOf(sheet: Laid, what: string): Frame {
  if (what === "pictorial" && sheet.pictorial) {
    const { x, y, width, height } = sheet.pictorial;
    return { x: x - AIR / 2, y: y - AIR / 2, width: width + AIR, height: height + AIR };
  }
  const view = sheet.views.find(({ name }) => name === what);
  if (!view) return { x: 0, y: 0, width: sheet.width, height: sheet.height };
  const points: Point[] = [
    view.captionAt,
    [view.bounds.x, view.bounds.y],
    [view.bounds.x + view.bounds.width, view.bounds.y + view.bounds.height],
    ...view.dimensions.flatMap(({ line, labelAt, lines }) => [...line, labelAt, ...labelEnd(labelAt, lines)]),
  ];
  const [right, down] = sheet.moved[view.name] ?? [0, 0];
  const { x, y, width, height } = around(points, AIR);
  return { x: x + right, y: y + down, width, height };
}

/** Nearer by `factor` above 1, farther below it; the point `about` stays where it is on screen. */
export function zoomed(frame: Frame, factor: number, [x, y]: Point, sheet: Sheet): Frame {
  const least = sheet.width / NEAREST;
  const most = sheet.width * FARTHEST;
  const width = Math.min(most, Math.max(least, frame.width / factor));
  const scale = width / frame.width;
  return kept(
    { x: x - (x - frame.x) * scale, y: y - (y - frame.y) * scale, width, height: frame.height * scale },
    sheet,
  );
}

/** Moved by so much, right and down being positive. */
export function moved(frame: Frame, [right, down]: Point, sheet: Sheet): Frame {
  return kept({ ...frame, x: frame.x + right, y: frame.y + down }, sheet);
}

export function middle({ x, y, width, height }: Frame): Point {
  return [x + width / 2, y + height / 2];
}

/** The middle of what is shown stays on the sheet, so that the drawing cannot be lost. */
function kept(frame: Frame, sheet: Sheet): Frame {
  const [x, y] = middle(frame);
  return {
    ...frame,
    x: Math.min(sheet.width, Math.max(0, x)) - frame.width / 2,
    y: Math.min(sheet.height, Math.max(0, y)) - frame.height / 2,
  };
}

function around(points: readonly Point[], air: number): Frame {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const x = Math.min(...xs) - air;
  const y = Math.min(...ys) - air;
  return { x, y, width: Math.max(...xs) + air - x, height: Math.max(...ys) + air - y };
}

/** Room left around one view, mm on the sheet: enough for a label. */
const AIR = 60;
const NEAREST = 40;
const FARTHEST = 2;
