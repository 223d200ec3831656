/**
 * How the views of a sheet are laid out in the panel: as the sheet has them, in a row or in a column, whichever lets the drawing be
 * largest. What is lettered keeps its size on the screen, so room for it is in pixels while the chair is in millimetres.
 */
import type { Point, Sheet, View } from "../../../server/drawing/sheet.ts";
import type { Box } from "./lettering/boxes.ts";
import { drawnBox, inRows, roomOf } from "./lettering/rows.ts";
import {
  ASCENT,
  BAR,
  BETWEEN,
  CAPTION_LINES,
  captionDrop,
  EDGE,
  estimate,
  figureSize,
  LINE,
  type Measure,
  NOTE,
  STEP,
  TITLE,
} from "./lettering/type-scale.ts";
import type { LookName } from "./showable.ts";

/** A sheet with each view moved from where the sheet has it, and with a room for the pictorial view; mm. */
export interface Laid extends Sheet {
  look: LookName;
  /** In what way it is laid out: two layouts of one way differ in their sizes alone. */
  way: string;
  /** Pixels to the millimetre that it is laid out for, and the height of its figures, px. */
  scale: number;
  figures: number;
  moved: Partial<Record<View["name"], Point>>;
  /** What is drawn of each view without its dimensions, where the sheet has it. */
  drawn: Partial<Record<View["name"], Box>>;
  pictorial?: { x: number; y: number; width: number; height: number };
  /** Room that is left over on each side, right and left, above and below. */
  spare: Point;
  block?: TitleBlock;
}

/** The title with what a reader should know, and the scale bar under it: where it begins, its lines, and how deep it is. */
export interface TitleBlock {
  x: number;
  y: number;
  title: string[];
  notes: string[];
  /** From its top to the scale bar. */
  bar: number;
}

interface Size {
  width: number;
  height: number;
}

/** Rectangles laid beside each other: their sizes, and what puts them there. */
interface Cell extends Size {
  put(x: number, y: number): void;
}

interface Given {
  /** The room there is, px. */
  room: Size;
  look?: LookName;
  /** The room that a pictorial view takes, mm. */
  pictorial?: Size | undefined;
  measure?: Measure;
}

/** The sheet laid out for a room. */
export function arranged(sheet: Sheet, { room, look = "all", pictorial, measure = estimate }: Given): Laid {
  const figures = figureSize(room);
  const views = sheet.views.filter(({ name }) => look === "all" || look === name);
  const alone = look !== "all";
  const shown = views.length > 0 || pictorial ? views : sheet.views;
  const drawn = Object.fromEntries(shown.map((view) => [view.name, drawnBox(view)]));
  const words = {
    title: measured(sheet.title, figures * TITLE, (words, size) => measure(words, size, "title")),
    notes: (sheet.notes ?? []).map((note) => measured(note, figures * NOTE, measure)),
    bar: measure(sheet.scaleBar.label, figures),
  };
  const start: Start = { sheet, shown, drawn, look, figures, measure, alone, room, words, ...spacing(room) };
  const ways: Way[] = shown.length === 3 ? [onSheet, inRow, inStrip, inColumn] : [inLine];
  const layouts = ways.flatMap((way) =>
    pictorial && (!alone || look === "pictorial")
      ? (["beside", "below"] as const).map((where) => largest(start, way, { ...pictorial, where }))
      : [largest(start, way)],
  );
  return layouts.reduce((best, laid) => (laid.scale > best.scale ? laid : best));
}

interface Start {
  sheet: Sheet;
  shown: readonly View[];
  drawn: Laid["drawn"];
  look: LookName;
  figures: number;
  measure: Measure;
  /** One view is looked at, without the title. */
  alone: boolean;
  room: Size;
  words: { title: Measured; notes: Measured[]; bar: number };
  narrow: boolean;
  /** Around all, and between views, px. */
  edge: number;
  between: number;
}

/** Where there is little room across, views stand nearer. */
function spacing({ width }: Size): Pick<Start, "narrow" | "edge" | "between"> {
  const narrow = width < NARROW;
  return narrow ? { narrow, edge: EDGE / 2, between: BETWEEN / 2 } : { narrow, edge: EDGE, between: BETWEEN };
}

/** A room less wide than this is narrow, px. */
const NARROW = 520;

type Way = (start: Start, scale: number, laid: Laid) => Size;
interface Turned extends Size {
  where: "beside" | "below";
}

/** Pixels to the millimetre: the least, the most, and how often the search between them halves. */
const FARTHEST = 0.02;
const NEAREST = 6;
const HALVINGS = 15;

/** The layout of one way that fills the room. */
function largest(start: Start, way: Way, pictorial?: Turned): Laid {
  const { width, height } = start.room;
  let low = FARTHEST;
  let high = NEAREST;
  for (let k = 0; k < HALVINGS; k++) {
    const scale = Math.sqrt(low * high);
    const laid = layOut(start, way, scale, pictorial);
    if (laid.width * scale <= width && laid.height * scale <= height) low = scale;
    else high = scale;
  }
  const laid = layOut(start, way, low, pictorial);
  return {
    ...laid,
    spare: [Math.max(0, width / low - laid.width) / 2, Math.max(0, height / low - laid.height) / 2],
    views: start.shown.map((view) => ({
      ...view,
      dimensions: inRows(view, start.drawn[view.name]!, { scale: low, figures: start.figures }),
    })),
  };
}

function layOut(start: Start, way: Way, scale: number, pictorial: Turned | undefined): Laid {
  const { sheet, look, figures, drawn } = start;
  const laid: Laid = { ...sheet, look, way: way.name, scale, figures, drawn, moved: {}, spare: [0, 0] };
  const own = start.shown.length > 0 ? way(start, scale, laid) : { width: 0, height: 0 };
  const edge = start.edge / scale;
  const gap = start.shown.length > 0 ? start.between / scale : 0;
  let { width, height } = own;
  if (pictorial) {
    const beside = pictorial.where === "beside";
    const tall =
      pictorial.height + captionDrop(figures) / scale + ((CAPTION_LINES - 1) * LINE * figures) / scale;
    const wide = Math.max(pictorial.width, LEAST_BLOCK / scale);
    width = beside ? own.width + gap + wide : Math.max(own.width, wide);
    height = beside ? Math.max(own.height, tall) : own.height + gap + tall;
    const x = (beside ? own.width + gap : 0) + ((beside ? wide : width) - pictorial.width) / 2;
    const y = beside ? Math.max(0, (height - tall) / 2) : own.height + gap;
    laid.pictorial = { x: x + edge, y: y + edge, width: pictorial.width, height: pictorial.height };
    laid.way += ` ${pictorial.where}`;
  }
  return { ...laid, width: width + 2 * edge, height: height + 2 * edge };
}

/** The plan over the front, the side to the right of it on one floor, the title in the corner. */
function onSheet(start: Start, scale: number, laid: Laid): Size {
  const { front, side, plan } = roomsOf(start, scale);
  const gap = start.between / scale;
  const left = Math.min(front.left, plan.left);
  const first = Math.max(front.right, plan.right) - left;
  const block = blockCell(start, scale, laid, side.right - side.left);
  const second = Math.max(side.right - side.left, block.width);
  const upper = Math.max(plan.foot - plan.top, block.height);
  const top = Math.min(front.top, side.top);
  const edge = start.edge / scale;
  const across = edge - left;
  const down = edge + upper + gap - top;
  laid.moved = {
    front: [across, down],
    side: [edge + first + gap - side.left, down],
    plan: [across, edge + upper - plan.foot],
  };
  block.put(edge + first + gap, edge);
  return { width: first + gap + second, height: upper + gap + Math.max(front.foot, side.foot) - top };
}

/** Front and side on one floor, the plan to the right of them under the title. */
function inRow(start: Start, scale: number, laid: Laid): Size {
  const { front, side, plan } = roomsOf(start, scale);
  const gap = start.between / scale;
  const edge = start.edge / scale;
  const block = blockCell(start, scale, laid, plan.right - plan.left);
  const third = Math.max(plan.right - plan.left, block.width);
  const top = Math.min(front.top, side.top);
  const height = Math.max(Math.max(front.foot, side.foot) - top, block.height + gap + plan.foot - plan.top);
  // All captions on one line.
  const down = edge + height - Math.max(front.foot, side.foot);
  const first = front.right - front.left;
  const second = side.right - side.left;
  const last = edge + first + gap + second + gap;
  laid.moved = {
    front: [edge - front.left, down],
    side: [edge + first + gap - side.left, down],
    plan: [last - plan.left, edge + height - plan.foot],
  };
  block.put(last, edge);
  return { width: first + second + third + 2 * gap, height };
}

/** The views in a row on one floor and the title at their right: for rooms that are wide and low. */
function inStrip(start: Start, scale: number, laid: Laid): Size {
  const rooms = roomsOf(start, scale);
  const gap = start.between / scale;
  const edge = start.edge / scale;
  const all = Object.values(rooms);
  const top = Math.min(rooms.front.top, rooms.side.top);
  const foot = Math.max(rooms.front.foot, rooms.side.foot);
  const block = blockCell(start, scale, laid, LEAST_BLOCK / scale);
  const height = Math.max(foot - top, rooms.plan.foot - rooms.plan.top, block.height);
  let x = edge;
  for (const name of ["front", "side", "plan"] as const) {
    const room = rooms[name];
    laid.moved[name] = [x - room.left, edge + height - (name === "plan" ? room.foot : foot)];
    x += room.right - room.left + gap;
  }
  block.put(x, edge);
  const wide = all.reduce((sum, { left, right }) => sum + right - left + gap, 0);
  return { width: wide + block.width, height };
}

/** The title, and the views under each other, middle under middle. */
function inColumn(start: Start, scale: number, laid: Laid): Size {
  const rooms = roomsOf(start, scale);
  const gap = start.between / scale;
  const edge = start.edge / scale;
  const width = Math.max(...Object.values(rooms).map(({ left, right }) => right - left));
  const block = blockCell(start, scale, laid, width);
  let y = edge + block.height + gap;
  for (const name of ["front", "side", "plan"] as const) {
    const { left, right, top, foot } = rooms[name];
    laid.moved[name] = [edge + (width - (right - left)) / 2 - left, y - top];
    y += foot - top + gap;
  }
  block.put(edge, edge);
  return { width: Math.max(width, block.width), height: y - gap - edge };
}

/** Views in a line, without a title: the one that is looked at, or those of a sheet that has not three. */
function inLine(start: Start, scale: number, laid: Laid): Size {
  const edge = start.edge / scale;
  let x = 0;
  let height = 0;
  for (const view of start.shown) {
    const room = roomOf(view, start.drawn[view.name]!, { ...start, scale });
    laid.moved[view.name] = [edge + x - room.left, edge - room.top];
    x += room.right - room.left + start.between / scale;
    height = Math.max(height, room.foot - room.top);
  }
  return { width: x - start.between / scale, height };
}

function roomsOf(start: Start, scale: number): Record<View["name"], Box> {
  const rooms = start.shown.map((view) => [
    view.name,
    roomOf(view, start.drawn[view.name]!, { ...start, scale }),
  ]);
  return Object.fromEntries(rooms) as Record<View["name"], Box>;
}

/** The title and what is under it, wrapped to a width in mm. */
function blockCell({ sheet, words, figures }: Start, scale: number, laid: Laid, width: number): Cell {
  const longest = Math.max(0, ...words.title.words.map(({ wide }) => wide));
  const least = Math.max(LEAST_BLOCK, longest, sheet.scaleBar.length * scale + 2 * STEP + words.bar);
  const across = Math.max(width * scale, least);
  const title = filled(words.title, across, 2);
  const notes = words.notes.flatMap((note) => filled(note, across, 4));
  const lines = title.length * figures * TITLE * LINE + notes.length * figures * NOTE * LINE;
  // The figure stands on the bar's lower edge and reaches over it, clear of the notes.
  const bar = lines + 2 * STEP + Math.max(STEP, ASCENT * figures - BAR);
  const deep = bar + Math.max(BAR, figures) + STEP;
  return {
    width: least / scale,
    height: deep / scale,
    put(x, y) {
      laid.block = { x, y, title, notes, bar: bar / scale };
    },
  };
}

interface Measured {
  words: { word: string; wide: number }[];
  space: number;
}

function measured(text: string, size: number, measure: Measure): Measured {
  const words = text.split(/\s+/).filter(Boolean);
  return { words: words.map((word) => ({ word, wide: measure(word, size) })), space: measure(" ", size) };
}

/** Lines no wider than this as far as words break; what is more than `most` lines ends in an ellipsis. */
function filled({ words, space }: Measured, width: number, most: number): string[] {
  const lines: string[] = [];
  let left = -1;
  for (const { word, wide } of words) {
    if (left >= wide + space) {
      lines[lines.length - 1] += ` ${word}`;
      left -= wide + space;
    } else {
      if (lines.length === most) return [...lines.slice(0, -1), `${lines[most - 1]}…`];
      lines.push(word);
      left = width - wide;
    }
  }
  return lines;
}

/** A title has at least so much room, px. */
const LEAST_BLOCK = 120;

/** Whether two are laid out in the same way, whatever their sizes. */
export const sameWay = (a: Laid, b: Laid): boolean => a.way === b.way && a.look === b.look;
