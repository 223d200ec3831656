/**
 * All that is lettered on a drawing laid out in the panel, placed for a scale: figures, captions, the title, words laid over it, flags.
 */

import { angleLines } from "../../../../server/drawing/label-room.ts";
import type { Area, DimensionLine, OverlayWords, Point, View } from "../../../../server/drawing/sheet.ts";
import { tickLines } from "../../../../server/drawing/ticks.ts";
import type { Laid } from "../arrange.ts";
import { type Flagged, flagLabel } from "../flag-places.ts";
import { boxOf } from "./boxes.ts";
import { pictureRoom } from "./picture-letters.ts";
import { apron, rowAt, rowsOf, shortly } from "./rows.ts";
import { createTable, type Label, type Placed, place, type Stand, standOf, type Table } from "./search.ts";
import {
  ASCENT,
  BAR,
  captionDrop,
  DESCENT,
  estimate,
  LINE,
  type Measure,
  NOTE,
  OFF_LINE,
  PAST_LINE,
  STEP,
  TICK,
  TITLE,
} from "./type-scale.ts";

/** A part's name with its figures, and a place on it; mm on the sheet. */
export interface Named {
  part: string;
  lines: readonly string[];
  anchor: Point;
}

interface Lettered {
  /** Pixels to the millimetre. */
  scale: number;
  measure?: Measure;
  /** What is flagged and named in each view. */
  flagged?: Partial<Record<View["name"], readonly Flagged[]>>;
  named?: Partial<Record<View["name"], readonly Named[]>>;
}

/** Everything lettered, in pixels from the sheet's upper left corner. */
export function lettered(
  laid: Laid,
  { scale, measure = estimate, flagged = {}, named = {} }: Lettered,
): Placed[] {
  const [right, down] = laid.spare;
  const table = createTable(
    boxOf([
      [MARGIN - right * scale, MARGIN - down * scale],
      [(laid.width + right) * scale - MARGIN, (laid.height + down) * scale - MARGIN],
    ]),
  );
  const picture = pictureRoom(laid, scale);
  if (picture) table.taken.push(picture);
  const views = laid.views.map((view) => seen(laid, view, scale));
  for (const view of views) putLines(table, view);
  const size = laid.figures;
  const wide: Given["wide"] = (words, height = size, weight) => measure(words, height, weight);
  const given: Given = { laid, scale, size, wide };
  const block = blockLabels(given);
  const all = <T>(of: (view: Seen) => T[]) => views.flatMap(of);
  return [
    ...place(table, block),
    ...place(
      table,
      all((view) => view.dimensions.map((each) => dimensionLabel(each, view, given))),
    ),
    ...place(
      table,
      all((view) => [captionLabel(view, given)]),
    ),
    ...place(
      table,
      all((view) =>
        (flagged[view.name] ?? []).map((flag) =>
          flagLabel(flag, view.px(flag.anchor), view.areas, view.name),
        ),
      ),
    ),
    ...place(table, all((view) => view.words.map((each) => overlayLabel(each, view, given))).sort(loadsLast)),
    ...place(
      table,
      all((view) => (named[view.name] ?? []).map((each) => nameLabel(each, view, given))),
    ),
  ];
}

/** Nothing is lettered nearer to the panel's edge, px. */
const MARGIN = STEP / 2;

const loadsLast = (a: Label, b: Label) =>
  Number(a.kind.includes("of-load")) - Number(b.kind.includes("of-load"));

interface Given {
  laid: Laid;
  scale: number;
  /** Height of figures. */
  size: number;
  wide(words: string, size?: number, weight?: "title"): number;
}

/** A view in pixels. */
interface Seen {
  name: View["name"];
  view: View;
  px(at: Point): Point;
  dimensions: DimensionLine[];
  areas: Area[];
  words: (OverlayWords & { overlay: string })[];
}

function seen(laid: Laid, view: View, scale: number): Seen {
  const [right, down] = laid.moved[view.name] ?? [0, 0];
  const px = ([x, y]: Point): Point => [(x + right) * scale, (y + down) * scale];
  return {
    name: view.name,
    view,
    px,
    dimensions: view.dimensions.map((each) => ({
      ...each,
      label: figureOf(each.label, laid),
      line: [px(each.line[0]), px(each.line[1])],
      extensions: each.extensions.map(([a, b]) => [px(a), px(b)]),
      ...(each.arc && { arc: each.arc.map(px) }),
    })),
    areas: view.areas.map((area) => ({ ...area, points: area.points.map(px) })),
    words: (view.overlays ?? []).flatMap(({ name, words }) =>
      words.map((each) => ({ ...each, overlay: name })),
    ),
  };
}

/** Words as they are lettered: lengths without the unit that the scale bar under the title tells for all, as working drawings have it. */
export function figureOf(words: string, { block, scaleBar }: Pick<Laid, "block" | "scaleBar">): string {
  const unit = / ([a-z]+)$/.exec(scaleBar.label)?.[1];
  return block && unit ? words.replaceAll(new RegExp(`(?<=\\d) ${unit}\\b`, "g"), "") : words;
}

/** All lines of a view that words keep off. */
function putLines({ lines }: Table, { view, px, dimensions }: Seen): void {
  for (const { points } of view.strokes) lines.putAll(points.map(px));
  for (const { strokes } of view.overlays ?? []) {
    for (const { points } of strokes) lines.putAll([...points, points[0]!].map(px));
  }
  for (const { line, extensions, arc } of dimensions) {
    lines.put(...line);
    if (!arc) for (const ends of tickLines(line, TICK)) lines.put(...ends);
    for (const ends of extensions) lines.put(...ends);
    if (arc) lines.putAll(arc);
  }
}

/** Along a measured line, where its figure may stand: its middle first. */
const SHARES = [0.5, 0.36, 0.64, 0.2, 0.8];

function dimensionLabel(dimension: DimensionLine, { name }: Seen, given: Given): Label {
  const { arc } = dimension;
  return {
    kind: "label",
    size: given.size,
    view: name,
    stands: () => (arc ? angleStands(dimension, given) : lengthStands(dimension, given)),
  };
}

function* lengthStands({ line: [a, b], label }: DimensionLine, { size, wide }: Given): Generator<Stand> {
  const upright = a[0] === b[0];
  const room = wide(label);
  const along = upright ? 1 : 0;
  const [low, high] = [Math.min(a[along], b[along]), Math.max(a[along], b[along])];
  const stand = (at: Point, anchor: Stand["anchor"] = "middle") =>
    standOf([label], at, { size, wide: room, anchor, ...(upright && { upright }) });
  const on = (share: number, off: number): Point => {
    const at = low + (high - low) * share;
    return upright ? [a[0] + off, at] : [at, a[1] + off];
  };
  // On the line's upper side, then under it past where the extension lines end, then beyond its ends.
  for (const share of SHARES) yield stand(on(share, -OFF_LINE));
  for (const share of SHARES) yield stand(on(share, PAST_LINE + 2 + ASCENT * size));
  const middle = ((ASCENT - DESCENT) * size) / 2;
  for (const away of [2 * STEP, 5 * STEP]) {
    yield upright
      ? stand([a[0] + middle, low - away], "start")
      : stand([high + away, a[1] + middle], "start");
    yield upright ? stand([a[0] + middle, high + away], "end") : stand([low - away, a[1] + middle], "end");
  }
  // Level beside an upright line, where it is too short for words that run upward.
  for (const share of SHARES) {
    const [x, y] = on(share, 0);
    const level = (at: Point, anchor: Stand["anchor"]) => standOf([label], at, { size, wide: room, anchor });
    if (!upright) continue;
    yield level([x - 2 * STEP, y + middle], "end");
    yield level([x + 2 * STEP, y + middle], "start");
  }
}

function* angleStands(
  { line, extensions, arc = [], label }: DimensionLine,
  { size, wide }: Given,
): Generator<Stand> {
  const box = boxOf([...line, ...extensions.flat(), ...arc]);
  for (const letters of [10, 14, 20, 80]) {
    const lines = angleLines(label, letters);
    yield* beside(box, lines, { size, wide: Math.max(...lines.map((each) => wide(each))) });
  }
  // Where all that is taken: farther off, with a leader to the arc.
  const about = arc[Math.floor(arc.length / 2)] ?? line[1];
  for (const letters of [20, 10, 80]) {
    const lines = angleLines(label, letters);
    yield* ring(about, lines, { size, wide: Math.max(...lines.map((each) => wide(each))) });
  }
}

/** In all directions from a place, from near to far, with leaders. */
function* ring(
  [x, y]: Point,
  lines: readonly string[],
  { size, wide }: { size: number; wide: number },
): Generator<Stand> {
  for (let away = 4 * STEP; away <= FARTHEST; away += 3 * STEP) {
    for (let k = 0; k < DIRECTIONS; k++) {
      const turn = (2 * Math.PI * k) / DIRECTIONS;
      const [right, down] = [Math.cos(turn), Math.sin(turn)];
      const anchor = right > 0.3 ? "start" : right < -0.3 ? "end" : "middle";
      const stand = standOf(lines, [x + right * away, y + down * away], { size, wide, anchor });
      yield { ...stand, leader: [[x, y], nearestOf(stand, [x, y])] };
    }
  }
}

/** Lines of words right, left, over and under a box, near first. */
function* beside(
  { left, right, top, foot }: ReturnType<typeof boxOf>,
  lines: readonly string[],
  { size, wide }: { size: number; wide: number },
): Generator<Stand> {
  const deep = (lines.length - 1) * LINE * size;
  for (const away of [2, 4, 8, 14]) {
    const off = away * STEP;
    for (const share of [0.2, 0, 0.5, 0.8, 1]) {
      const y = top + (foot - top) * share + ASCENT * size;
      yield standOf(lines, [right + off, y], { size, wide, anchor: "start" });
      yield standOf(lines, [left - off, y], { size, wide, anchor: "end" });
    }
    for (const share of [0, 0.5, 1]) {
      const x = left + (right - left) * share;
      yield standOf(lines, [x, top - off - DESCENT * size - deep], { size, wide });
      yield standOf(lines, [x, foot + off + ASCENT * size], { size, wide });
    }
  }
}

function captionLabel({ name, view, px }: Seen, { laid, size, wide, scale }: Given): Label {
  const box = laid.drawn[name]!;
  const below = rowsOf(view, box).below;
  const [x, drawn] = px([view.bounds.x + view.bounds.width / 2, box.foot]);
  // Rows are laid for the scale that the sheet is laid out for, and grow with the drawing.
  const rows = below === 0 ? STEP : rowAt("below", below - 1, laid.figures) + 1.5 * TICK;
  const out = ((rows + apron(view, laid.figures)) * scale) / laid.scale;
  return {
    kind: "caption",
    size,
    view: name,
    *stands() {
      const short = shortly(view.caption);
      for (const caption of [view.caption, short]) {
        for (const down of [0, 2, 4, 6]) {
          const y = drawn + out + captionDrop(laid.figures) - 2 * STEP + down * STEP;
          for (const off of [0, -4, 4, -8, 8]) {
            const stand = standOf([caption], [x + off * STEP, y], { size, wide: wide(caption) });
            if (caption === short || isWellWithin(stand, laid, scale)) yield stand;
          }
        }
      }
    },
  };
}

/** Whether words stand clear of the panel's left and right edges by as much as they do of each other. */
function isWellWithin({ box }: Stand, { width, spare: [right] }: Laid, scale: number): boolean {
  return box.left >= 2 * STEP - right * scale && box.right <= (width + right) * scale - 2 * STEP;
}

/** How far words that are laid over a view may stand from where they were meant, and in how many directions; px. */
const FARTHEST = 240;
const DIRECTIONS = 16;

function overlayLabel(words: OverlayWords & { overlay: string }, { name, px }: Seen, given: Given): Label {
  const { size, wide } = given;
  const { text, of, anchor, upright, overlay } = words;
  const [x, y] = px(words.at);
  const room = wide(text);
  return {
    kind: `label overlay ${overlay} of-${of}`,
    size,
    view: name,
    optional: true,
    *stands() {
      yield standOf([text], [x, y], { size, wide: room, anchor, ...(upright && { upright }) });
      for (let away = 2 * STEP; away <= FARTHEST; away += 2 * STEP) {
        for (let k = 0; k < DIRECTIONS; k++) {
          const turn = (2 * Math.PI * k) / DIRECTIONS;
          const at: Point = [x + Math.cos(turn) * away, y + Math.sin(turn) * away];
          const stand = standOf([text], at, { size, wide: room, anchor });
          yield away > 6 * STEP ? { ...stand, leader: [[x, y], nearestOf(stand, [x, y])] } : stand;
        }
      }
    },
  };
}

/** Where on the edge of a label's room a leader to it ends. */
function nearestOf({ box: { left, right, top, foot } }: Stand, [x, y]: Point): Point {
  const air = STEP / 2;
  return [Math.min(right + air, Math.max(left - air, x)), Math.min(foot + air, Math.max(top - air, y))];
}

function nameLabel(
  { part, lines: told, anchor }: Named,
  { name, px }: Seen,
  { size, wide, laid }: Given,
): Label {
  const lines = told.map((line) => figureOf(line, laid));
  const height = size * NOTE;
  const room = Math.max(...lines.map((each) => wide(each, height)));
  return {
    kind: "label named",
    size: height,
    view: name,
    of: part,
    optional: true,
    stands: () => aired(ring(px(anchor), lines, { size: height, wide: room })),
  };
}

/** With room over and under them, so that where lines of words stand one over the other it is seen which belong together. */
function* aired(stands: Iterable<Stand>): Generator<Stand> {
  for (const stand of stands) {
    const { top, foot } = stand.box;
    yield { ...stand, box: { ...stand.box, top: top - STEP, foot: foot + STEP } };
  }
}

/** The title, its notes and the scale bar's figure, which stand where the layout left room for them. */
function blockLabels({ laid, scale, size, wide }: Given): Label[] {
  const { block, scaleBar } = laid;
  if (!block) return [];
  const [x, top] = [block.x * scale, block.y * scale];
  const labels: Label[] = [];
  const put = (kind: "title" | "note" | "scale", words: string, height: number, at: Point) => {
    const room = wide(words, height, kind === "title" ? kind : undefined);
    const stand = standOf([words], at, { size: height, wide: room, anchor: "start" });
    labels.push({ kind, size: height, stands: () => [stand] });
  };
  let y = top;
  for (const line of block.title) {
    put("title", line, size * TITLE, [x, y + size * TITLE]);
    y += size * TITLE * LINE;
  }
  y += STEP;
  for (const line of block.notes) {
    put("note", line, size * NOTE, [x, y + size * NOTE]);
    y += size * NOTE * LINE;
  }
  put("scale", scaleBar.label, size, [x + scaleBar.length * scale + 2 * STEP, barAt(laid, scale) + BAR]);
  return labels;
}

/** The top of the scale bar, px. */
export const barAt = ({ block, scale: own }: Laid, scale: number): number =>
  block ? block.y * scale + block.bar * own : 0;
