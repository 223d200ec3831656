/**
 * Dimension lines around a view at even steps of the screen, whatever its scale is.
 */

import { angleLines } from "../../../../server/drawing/label-room.ts";
import type { DimensionLine, OverlayStroke, Point, Stroke, View } from "../../../../server/drawing/sheet.ts";
import { type Box, boxOf } from "./boxes.ts";
import { ASCENT, captionDrop, type Measure, OFF_LINE, PAST_LINE, STEP, TICK } from "./type-scale.ts";

export type Side = "left" | "right" | "above" | "below";

/** What is drawn of a view without its dimensions, mm on the sheet. */
export const drawnBox = ({ strokes, overlays = [], bounds }: View): Box => {
  const points = (some: readonly (Stroke | OverlayStroke)[]): Point[] =>
    some.flatMap((stroke) => stroke.points);
  return boxOf([
    [bounds.x, bounds.y],
    [bounds.x + bounds.width, bounds.y + bounds.height],
    ...points(strokes),
    ...overlays.flatMap((overlay) => points(overlay.strokes)),
  ]);
};

/** The side of its view that a length is measured on; nothing for an angle. */
export function sideOf(
  { line: [a, b], arc }: DimensionLine,
  { left, right, top, foot }: Box,
): Side | undefined {
  if (arc) return undefined;
  if (a[0] === b[0]) return a[0] < (left + right) / 2 ? "left" : "right";
  return a[1] < (top + foot) / 2 ? "above" : "below";
}

/**
 * From a view to its first dimension line, by the height of figures; pixels. Figures stand over their line as it is read, so to the left of
 * one that runs upward: on the left and above that is away from the view, on the right and below it is towards it.
 */
const first = (side: Side, figures: number): number =>
  side === "left" || side === "above" ? 3 * STEP : figures + OFF_LINE + STEP;
/** From one to the next. */
const next = (figures: number): number => figures + OFF_LINE + STEP;

/** Room between a view and its dimensions for words that are laid over its edges, pixels. */
export const apron = ({ overlays = [] }: View, figures: number): number =>
  overlays.some(({ words }) => words.some(({ of }) => of === "line")) ? figures + 2 * STEP : 0;

/** How far out a row of dimensions stands, pixels. */
export const rowAt = (side: Side, row: number, figures: number): number =>
  first(side, figures) + row * next(figures);

/** Lengths on each side, by what is drawn. */
export function rowsOf({ dimensions }: View, box: Box): Record<Side, number> {
  const rows = { left: 0, right: 0, above: 0, below: 0 };
  for (const dimension of dimensions) {
    const side = sideOf(dimension, box);
    if (side) rows[side] += 1;
  }
  return rows;
}

interface Lettering {
  scale: number;
  figures: number;
  measure: Measure;
  /** There is little room across: words beside an angle find theirs where nothing else is. */
  narrow: boolean;
}

/** Words beside an angle, on as few letters a line as they go. */
export const narrowest = (label: string): string[] => angleLines(label, 10);

/** The room that a view takes with its dimensions and its caption, at a scale in pixels to the millimetre; mm. */
export function roomOf(view: View, box: Box, given: Lettering): Box {
  const { scale, figures, measure, narrow } = given;
  const rows = rowsOf(view, box);
  const out = (side: Side, words: number) =>
    (rows[side] === 0 ? STEP : rowAt(side, rows[side] - 1, figures) + words) + apron(view, figures);
  const own = figures * ASCENT + OFF_LINE + STEP / 2;
  const room = {
    left: box.left - out("left", own) / scale,
    right: box.right + out("right", 1.5 * TICK) / scale,
    top: box.top - out("above", own) / scale,
    foot: box.foot + (out("below", 1.5 * TICK) + captionDrop(figures) + STEP) / scale,
  };
  for (const { line, extensions, arc, label } of view.dimensions) {
    if (!arc) continue;
    const drawn = boxOf([...line, ...extensions.flat(), ...arc]);
    const wide = narrow ? 0 : Math.max(...narrowest(label).map((each) => measure(each, figures)));
    room.right = Math.max(room.right, drawn.right + (wide + 3 * STEP) / scale);
    room.left = Math.min(room.left, drawn.left);
  }
  const half = measure(shortly(view.caption), figures) / 2 / scale;
  const middle = view.bounds.x + view.bounds.width / 2;
  return {
    ...room,
    left: Math.min(room.left, middle - half),
    right: Math.max(room.right, middle + half),
  };
}

/** A caption without what stands in brackets, for narrow rooms. */
export const shortly = (caption: string): string => caption.replace(/ \(.*$/, "");

/** The dimensions with their lines in even rows. */
export function inRows(
  view: View,
  box: Box,
  { scale, figures }: { scale: number; figures: number },
): DimensionLine[] {
  const rows = { left: 0, right: 0, above: 0, below: 0 };
  return view.dimensions.map((dimension) => {
    const side = sideOf(dimension, box);
    if (!side) return dimension;
    const out = (rowAt(side, rows[side]++, figures) + apron(view, figures)) / scale;
    const past = PAST_LINE / scale;
    const level = side === "above" || side === "below";
    const sign = side === "left" || side === "above" ? -1 : 1;
    const edge = { left: box.left, right: box.right, above: box.top, below: box.foot }[side];
    const at = edge + sign * out;
    const onLine = ([x, y]: Point): Point => (level ? [x, at] : [at, y]);
    const beyond = ([x, y]: Point): Point => (level ? [x, at + sign * past] : [at + sign * past, y]);
    return {
      ...dimension,
      line: [onLine(dimension.line[0]), onLine(dimension.line[1])],
      extensions: dimension.extensions.map(([from]) => [from, beyond(from)]),
    };
  });
}
