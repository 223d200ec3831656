/**
 * Where the lettered flags of faulty parts stand on a view: near the part, clear of everything drawn, each with a leader to a place where
 * the part can be seen. Millimetres on the sheet.
 */
import type { Area, DimensionLine, Point, View } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";

interface Flag {
  part: string;
  /** The findings it stands for, the gravest first. */
  faults: Fault[];
  /** On the part, and where the flag's middle is. */
  anchor: Point;
  at: Point;
}

/** Room a flag takes: half its height, and half its width for each letter. */
const HALF_HIGH = 24;
const HALF_LETTER = 13;
/** From the anchor to the flag: the nearest place tried, the farthest, and the step. */
const NEAREST = 60;
const FARTHEST = 420;
const STEP = 30;
const DIRECTIONS = 16;

/** What flags keep clear of. */
export type Flagged = Pick<View, "areas" | "dimensions" | "caption" | "captionAt">;

/** One flag for each faulty part that can be seen in this view, by the end that is worst. */
export function placeFlags(view: Flagged, faults: readonly Fault[]): Flag[] {
  const flags: Flag[] = [];
  const words = [...view.dimensions.map(wordsOf), captionOf(view)];
  const taken = [...words, ...view.dimensions.map(lineOf)];
  const areas = view.areas.map(boxed);
  for (const { part, towards, faults: found } of byPlace(faults)) {
    const anchor = anchorOf(areas, part, towards);
    if (!anchor) continue;
    const half: Point = [HALF_HIGH + HALF_LETTER * (lettersOf(found).length - 1), HALF_HIGH];
    const at = clearPlace(anchor, half, { areas, taken, words }) ?? [anchor[0], anchor[1] - NEAREST];
    taken.push(boxAround(at, half));
    flags.push({ part, faults: found, anchor, at });
  }
  return flags;
}

/** The letters on a flag: two at most, then a sign that there are more. */
export function lettersOf(faults: readonly { letter: string }[]): string {
  const letters = faults.slice(0, 2).map(({ letter }) => letter);
  return letters.join(" ") + (faults.length > 2 ? "…" : "");
}

function byPlace(faults: readonly Fault[]): { part: string; towards?: string; faults: Fault[] }[] {
  const places = new Map<string, { part: string; towards?: string; faults: Fault[] }>();
  const gravest = [...faults].sort((a, b) => Number(b.severity === "error") - Number(a.severity === "error"));
  for (const fault of gravest) {
    for (const where of fault.parts) {
      const place = places.get(where.part) ?? { ...where, faults: [] };
      if (!place.faults.includes(fault)) place.faults.push(fault);
      places.set(where.part, place);
    }
  }
  return [...places.values()];
}

interface Box {
  left: number;
  right: number;
  top: number;
  foot: number;
}

interface BoxedArea extends Area {
  box: Box;
}

function boxed(area: Area): BoxedArea {
  const box = { left: Infinity, right: -Infinity, top: Infinity, foot: -Infinity };
  for (const [x, y] of area.points) {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.top = Math.min(box.top, y);
    box.foot = Math.max(box.foot, y);
  }
  return { ...area, box };
}

/** A place inside the part that no nearer part covers: by the end at fault, else by its middle. */
function anchorOf(areas: readonly BoxedArea[], part: string, towards: string | undefined): Point | undefined {
  const inside = areas.flatMap((area, index) =>
    area.part === part
      ? pointsInside(area).filter((p) => !areas.slice(index + 1).some((nearer) => holds(nearer, p)))
      : [],
  );
  const about = areas.find((area) => area.part === towards) ?? areas.find((area) => area.part === part);
  if (!about) return undefined;
  const { left, right, top, foot } = about.box;
  // Of an end, how far its post's box is; of a part, how far its middle is.
  const near =
    about.part === part
      ? ([x, y]: Point) => Math.hypot(x - (left + right) / 2, y - (top + foot) / 2)
      : ([x, y]: Point) => Math.hypot(Math.max(left - x, x - right, 0), Math.max(top - y, y - foot, 0));
  return inside.sort((a, b) => near(a) - near(b))[0];
}

const SCANS = 9;

/** The middles of where lines across the outline, level and upright, lie inside it. */
function pointsInside({ points, box }: BoxedArea): Point[] {
  const found: Point[] = [];
  for (let k = 1; k <= SCANS; k++) {
    const share = k / (SCANS + 1);
    const y = box.top + (box.foot - box.top) * share;
    for (const x of middles(points, y, 1)) found.push([x, y]);
    const x = box.left + (box.right - box.left) * share;
    for (const v of middles(points, x, 0)) found.push([x, v]);
  }
  return found;
}

/** Where a line with this coordinate fixed crosses the outline, the middles of the stretches inside. */
function middles(points: readonly Point[], fixed: number, axis: 0 | 1): number[] {
  const other = axis === 0 ? 1 : 0;
  const crossings: number[] = [];
  let a = points[points.length - 1]!;
  for (const b of points) {
    if (a[axis] < fixed !== b[axis] < fixed)
      crossings.push(a[other] + ((b[other] - a[other]) * (fixed - a[axis])) / (b[axis] - a[axis]));
    a = b;
  }
  crossings.sort((p, q) => p - q);
  return crossings.flatMap((start, k) =>
    k % 2 === 0 && crossings[k + 1] !== undefined ? [(start + crossings[k + 1]!) / 2] : [],
  );
}

function holds({ points, box }: BoxedArea, [x, y]: Point): boolean {
  if (x < box.left || x > box.right || y < box.top || y > box.foot) return false;
  let inside = false;
  let a = points[points.length - 1]!;
  for (const b of points) {
    if (a[1] < y !== b[1] < y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])) inside = !inside;
    a = b;
  }
  return inside;
}

interface Drawn {
  areas: readonly BoxedArea[];
  taken: readonly Box[];
  words: readonly Box[];
}

/** The nearest place around the anchor where a flag of this size touches no part, no figure and no other flag, its leader no words. */
function clearPlace([x, y]: Point, half: Point, { areas, taken, words }: Drawn): Point | undefined {
  for (let away = NEAREST; away <= FARTHEST; away += STEP) {
    for (let k = 0; k < DIRECTIONS; k++) {
      // From upright, by turns to the right and to the left.
      const turn = (Math.ceil(k / 2) * (k % 2 ? 1 : -1) * 2 * Math.PI) / DIRECTIONS;
      const at: Point = [x + Math.sin(turn) * away, y - Math.cos(turn) * away];
      const box = boxAround(at, half);
      if (taken.some((other) => meet(box, other))) continue;
      if (words.some((other) => crosses([x, y], at, other))) continue;
      if (!areas.some((area) => meet(box, area.box) && touches(area, box))) return at;
    }
  }
  return undefined;
}

/** Whether an outline reaches into a box: at one of a grid of places in it, or with a corner of its own. */
function touches(area: BoxedArea, box: Box): boolean {
  const { left, right, top, foot } = box;
  for (let i = 0; i <= 4; i++) {
    for (let j = 0; j <= 2; j++) {
      if (holds(area, [left + ((right - left) * i) / 4, top + ((foot - top) * j) / 2])) return true;
    }
  }
  return area.points.some(([x, y]) => x > left && x < right && y > top && y < foot);
}

function wordsOf({ label, labelAt: [x, y], upright, lines }: DimensionLine): Box {
  if (lines) {
    const long = Math.max(...lines.map((each) => each.length));
    return {
      left: x,
      right: x + long * LETTER_WIDE,
      top: y - LETTER_HIGH,
      foot: y + (lines.length - 1) * LETTER_HIGH,
    };
  }
  const half = (label.length * LETTER_WIDE) / 2;
  return upright
    ? { left: x - LETTER_HIGH, right: x, top: y - half, foot: y + half }
    : { left: x - half, right: x + half, top: y - LETTER_HIGH, foot: y };
}

function captionOf({ caption, captionAt: [x, y] }: Flagged): Box {
  const half = (caption.length * LETTER_WIDE) / 2;
  return { left: x - half, right: x + half, top: y - LETTER_HIGH, foot: y };
}

/** The measured line of a dimension; its extension lines are fine enough to be crossed. */
function lineOf({ line: [a, b] }: DimensionLine): Box {
  return {
    left: Math.min(a[0], b[0]),
    right: Math.max(a[0], b[0]),
    top: Math.min(a[1], b[1]),
    foot: Math.max(a[1], b[1]),
  };
}

/** Whether a straight from one place to another goes through a box. */
function crosses(from: Point, to: Point, { left, right, top, foot }: Box): boolean {
  let start = 0;
  let end = 1;
  for (const [a, b, low, high] of [
    [from[0], to[0], left, right],
    [from[1], to[1], top, foot],
  ] as const) {
    if (a === b) {
      if (a < low || a > high) return false;
      continue;
    }
    const [one, other] = [(low - a) / (b - a), (high - a) / (b - a)];
    start = Math.max(start, Math.min(one, other));
    end = Math.min(end, Math.max(one, other));
  }
  return start <= end;
}

/** About the size of a letter of a dimension's label, mm on the sheet, as large as the panel shows it. */
const LETTER_WIDE = 17;
const LETTER_HIGH = 30;

function boxAround([x, y]: Point, [wide, high]: Point): Box {
  return { left: x - wide, right: x + wide, top: y - high, foot: y + high };
}

function meet(a: Box, b: Box): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.foot && b.top <= a.foot;
}
