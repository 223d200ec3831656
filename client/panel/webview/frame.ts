/**
 * Which part of the sheet the panel shows, in the sheet's millimetres.
 */
import type { Point } from "../../../server/drawing/sheet.ts";

export interface Frame {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** What is framed. */
type Framed = { width: number; height: number };

/** All of it. */
export const wholeFrame = ({ width, height }: Framed): Frame => ({ x: 0, y: 0, width, height });

/** Nearer by `factor` above 1, farther below it; the point `about` stays where it is on screen. */
export function zoomed(frame: Frame, factor: number, [x, y]: Point, sheet: Framed): Frame {
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
export function moved(frame: Frame, [right, down]: Point, sheet: Framed): Frame {
  return kept({ ...frame, x: frame.x + right, y: frame.y + down }, sheet);
}

export function middle({ x, y, width, height }: Frame): Point {
  return [x + width / 2, y + height / 2];
}

/** The middle of what is shown stays on the sheet, so that the drawing cannot be lost. */
function kept(frame: Frame, sheet: Framed): Frame {
  const [x, y] = middle(frame);
  return {
    ...frame,
    x: Math.min(sheet.width, Math.max(0, x)) - frame.width / 2,
    y: Math.min(sheet.height, Math.max(0, y)) - frame.height / 2,
  };
}

const NEAREST = 40;
const FARTHEST = 2;
