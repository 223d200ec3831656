/**
 * Where the lettered flags of faulty parts stand on a view: near the part, clear of everything drawn, each with a leader to a place where
 * the part can be seen.
 */
import type { Area, Point } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import { type Box, boxAround, boxOf, meet } from "./lettering/boxes.ts";
import type { Label, Stand } from "./lettering/search.ts";
import { STEP } from "./lettering/type-scale.ts";

/** A faulty part that can be seen, and a place on it; mm on the sheet. */
export interface Flagged {
  part: string;
  /** The findings it stands for, the gravest first. */
  faults: Fault[];
  anchor: Point;
}

/** One for each faulty part that can be seen among these areas, by the end that is worst. */
export function flaggedIn(areas: readonly Area[], faults: readonly Fault[]): Flagged[] {
  const boxes = areas.map(boxed);
  return byPlace(faults).flatMap(({ part, towards, faults: found }) => {
    const anchor = anchorOf(boxes, part, towards);
    return anchor ? [{ part, faults: found, anchor }] : [];
  });
}

/** A place on a part where it can be seen, by its middle. */
export const placeOn = (areas: readonly Area[], part: string): Point | undefined =>
  anchorOf(areas.map(boxed), part, undefined);

/** Half of a flag's height, and its width for each letter and sign of it; px. */
export const HALF_HIGH = 9;
export const flagWide = (letters: string): number => 14 + 7 * letters.length;
/** From the anchor to the flag: the nearest place tried, the farthest, and the step; px. */
const NEAREST = 20;
const FARTHEST = 200;
const DIRECTIONS = 16;

/** The flag of a part as a label, its anchor and the areas of its view in px: clear of all parts if it can. */
export function flagLabel(
  { faults, part }: Flagged,
  anchor: Point,
  areas: readonly Area[],
  view: string,
): Label {
  const letters = lettersOf(faults);
  const half: Point = [flagWide(letters) / 2, HALF_HIGH];
  const boxes = areas.map(boxed);
  return {
    kind: `flag ${faults[0]?.severity === "error" ? "error" : "warning"}`,
    size: 12,
    of: part,
    view,
    stands: () => around(anchor, half, letters),
    shuns: (box) => boxes.some((area) => meet(box, area.box) && touches(area, box)),
  };
}

/** Places in all directions, from near to far, each with a leader to its middle. */
function* around([x, y]: Point, half: Point, letters: string): Generator<Stand> {
  for (let away = NEAREST; away <= FARTHEST; away += 2 * STEP) {
    for (let k = 0; k < DIRECTIONS; k++) {
      // From upright, by turns to the right and to the left.
      const turn = (Math.ceil(k / 2) * (k % 2 ? 1 : -1) * 2 * Math.PI) / DIRECTIONS;
      const at: Point = [x + Math.sin(turn) * away, y - Math.cos(turn) * away];
      yield { lines: [letters], at, anchor: "middle", box: boxAround(at, half), leader: [[x, y], at] };
    }
  }
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

interface BoxedArea extends Area {
  box: Box;
}

const boxed = (area: Area): BoxedArea => ({ ...area, box: boxOf(area.points) });

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
