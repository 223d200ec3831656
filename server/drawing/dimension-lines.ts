import { angleLines, labelRoom, WORDS } from "./label-room.ts";
import type { Extent, LeanMeasure, LengthMeasure } from "./measures.ts";
import type { DimensionLine, Point } from "./sheet.ts";

/** From the view to the first dimension line, and from one to the next. */
const FIRST = 62;
const STEP = 46;
/** Extension lines stand clear of the part and run past the line by so much. */
const CLEAR = 8;
const PAST = 9;
/** From a line to its label. */
const LABEL = 7;

/** Length of both legs of an angle, and how far they stand clear of the chair. */
const LEG = 230;
const LEG_CLEAR = 30;
/** Letters in a line of what is said of it. */
const LEAN_LETTERS = 10;

/** Dimension lines around a view, the later farther out on each side; as seen, y up. */
export function lengthLines(measures: readonly LengthMeasure[], around: Extent): DimensionLine[] {
  const rows = { left: 0, right: 0, above: 0, below: 0 };
  return measures.map((measure) => {
    const out = FIRST + STEP * rows[measure.beside]++;
    return measure.beside === "left" || measure.beside === "right"
      ? vertical(measure, measure.beside === "left" ? around.left - out : around.right + out)
      : level(measure, measure.beside === "below" ? around.low - out : around.high + out);
  });
}

function vertical({ name, label, from, to }: LengthMeasure, x: number): DimensionLine {
  const away = x < from[0] ? -1 : 1;
  const extension = ([u, v]: Point): [Point, Point] => [
    [u + away * CLEAR, v],
    [x + away * PAST, v],
  ];
  return {
    name,
    label,
    labelAt: [x - LABEL, (from[1] + to[1]) / 2],
    upright: true,
    line: [
      [x, from[1]],
      [x, to[1]],
    ],
    extensions: [extension(from), extension(to)],
  };
}

function level({ name, label, from, to }: LengthMeasure, y: number): DimensionLine {
  const away = y < from[1] ? -1 : 1;
  const extension = ([u, v]: Point): [Point, Point] => [
    [u, v + away * CLEAR],
    [u, y + away * PAST],
  ];
  return {
    name,
    label,
    labelAt: [(from[0] + to[0]) / 2, y + LABEL],
    line: [
      [from[0], y],
      [to[0], y],
    ],
    extensions: [extension(from), extension(to)],
  };
}

/** A lean drawn behind the chair: a line along the one that leans and one as it would stand upright, clear of all these outlines. */
export function leanLine(
  { name, label, from, to, upright }: LeanMeasure,
  clearOf: readonly (readonly Point[])[],
): DimensionLine {
  const size = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const lean: Point = [(to[0] - from[0]) / size, (to[1] - from[1]) / size];
  const leg = Math.min(LEG, size);
  const base: Point = [from[0] + (to[0] - from[0]) * 0.25, from[1] + (to[1] - from[1]) * 0.25];
  const slope = Math.min(lean[0] / lean[1], upright[0] / upright[1]);
  const shift = Math.max(0, ...clearOf.map((outline) => standsOut(outline, base, slope, leg)));
  const foot: Point = [base[0] + shift + LEG_CLEAR, base[1]];
  const on = (direction: Point, by: number): Point => [
    foot[0] + direction[0] * by,
    foot[1] + direction[1] * by,
  ];
  const angle = Math.atan2(lean[1], lean[0]);
  const start = Math.atan2(upright[1], upright[0]);
  const arc = Array.from({ length: 9 }, (_, k): Point => {
    const bearing = start + ((angle - start) * k) / 8;
    return on([Math.cos(bearing), Math.sin(bearing)], leg * 0.86);
  });
  const rightmost = Math.max(on(lean, leg)[0], on(upright, leg)[0]);
  return {
    name,
    label,
    // To the right of both legs, however large the words are.
    labelAt: [rightmost + LABEL, on(lean, leg * 0.8)[1]],
    lines: angleLines(label, LEAN_LETTERS),
    line: [foot, on(lean, leg)],
    extensions: [[foot, on(upright, leg)]],
    arc,
  };
}

/** How far an outline stands out behind the line through `base` that goes back `slope` for each one up, over the height of the leg. */
function standsOut(outline: readonly Point[], base: Point, slope: number, leg: number): number {
  const low = base[1] - WORDS;
  const high = base[1] + leg + WORDS;
  let most = 0;
  for (const [k, b] of outline.entries()) {
    const a = outline[(k + outline.length - 1) % outline.length]!;
    const [under, over] = a[1] < b[1] ? [a, b] : [b, a];
    if (over[1] < low || under[1] > high) continue;
    for (const v of [Math.max(low, under[1]), Math.min(high, over[1])]) {
      const share = over[1] > under[1] ? (v - under[1]) / (over[1] - under[1]) : 0;
      most = Math.max(most, under[0] + (over[0] - under[0]) * share - base[0] - slope * (v - base[1]));
    }
  }
  return most;
}

/** What a dimension line reaches, its label included. */
export function reachOf({ line, extensions, label, labelAt, upright, lines, arc }: DimensionLine): Extent {
  const half = (label.length * WORDS * 0.58) / 2;
  const [x, y] = labelAt;
  if (lines) {
    const { wide, deep } = labelRoom(lines);
    const words: Point[] = [
      [x, y + WORDS],
      [x + wide, y - deep],
    ];
    return extentOf([...line, ...extensions.flat(), ...words, ...(arc ?? [])]);
  }
  const words: Point[] = upright
    ? [
        [x - WORDS, y - half],
        [x, y + half],
      ]
    : [
        [x - half, y],
        [x + half, y + WORDS],
      ];
  return extentOf([...line, ...extensions.flat(), ...words, ...(arc ?? [])]);
}

/** The upright box around some points; all zero when there are none. */
export function extentOf(points: Iterable<Point>): Extent {
  const extent = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  for (const [x, y] of points) {
    extent.left = Math.min(extent.left, x);
    extent.right = Math.max(extent.right, x);
    extent.low = Math.min(extent.low, y);
    extent.high = Math.max(extent.high, y);
  }
  return extent.left <= extent.right ? extent : { left: 0, right: 0, low: 0, high: 0 };
}

/** The box around both. */
export const around = (a: Extent, b: Extent): Extent => ({
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
  low: Math.min(a.low, b.low),
  high: Math.max(a.high, b.high),
});
