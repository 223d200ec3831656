/**
 * A page of marking-out sheets as neutral lines and words: one model, written as PDF or as SVG. Millimetres on the paper, y down.
 */
import type { Point } from "../sheet.ts";

export type { Point };

export interface Page {
  width: number;
  height: number;
  /** What it shows, for a file's name and its list of pages: `front`, `rods 2`. */
  name: string;
  /** It is true only when it is printed at full size. */
  fullSize?: true;
  items: Item[];
}

export type Item = Line | Words;

/** `outline` is what is cut; `knife` a line struck with a knife, `fine` a dimension; `hidden` lies behind; `datum` is squared
 * round; `none` only fills. */
export type Pen = "outline" | "knife" | "fine" | "hidden" | "datum" | "faint" | "none";

/** Widths of lines, mm. */
export const pens: Record<Pen, { width: number; grey: number; dash?: readonly number[] }> = {
  outline: { width: 0.4, grey: 0 },
  knife: { width: 0.25, grey: 0 },
  fine: { width: 0.13, grey: 0.25 },
  hidden: { width: 0.2, grey: 0.2, dash: [1.2, 0.8] },
  datum: { width: 0.18, grey: 0, dash: [4, 1, 0.6, 1] },
  faint: { width: 0.13, grey: 0.6 },
  none: { width: 0, grey: 1 },
};

export interface Line {
  is: "line";
  points: Point[];
  pen: Pen;
  closed?: true;
  /** Filled with this much white: 0 is black, 1 white. */
  fill?: number;
}

export interface Words {
  is: "words";
  at: Point;
  text: string;
  /** Height of the type, points. */
  size: number;
  bold?: true;
  anchor?: "middle" | "end";
  /** Runs upward, read from the right. */
  upright?: true;
}

/** Smallest type used, points: readable at arm's length on a bench. */
export const SMALL = 7;
export const BODY = 8;
/** Its capitals are 2.5 mm high (ISO 3098); for pages that have the room. */
export const LARGE = 10;

/** How much larger lettering may be where a page has room, the largest first: its small capitals are then 2.5 mm high (ISO 3098). */
export const TYPE = [1.43, 1.2, 1] as const;

/** Millimetres in a point. */
export const POINT = 25.4 / 72;

export const line = (points: Point[], pen: Pen, more: Partial<Line> = {}): Line => ({
  is: "line",
  points,
  pen,
  ...more,
});

export const words = (at: Point, text: string, size: number, more: Partial<Words> = {}): Words => ({
  is: "words",
  at,
  text,
  size,
  ...more,
});

export const circle = ([x, y]: Point, radius: number, pen: Pen, more: Partial<Line> = {}): Line => {
  const count = Math.max(16, Math.min(96, Math.ceil(radius * 6)));
  const points = Array.from({ length: count }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / count;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  return line(points, pen, { closed: true, ...more });
};

export const moved = (item: Item, dx: number, dy: number): Item => {
  const move = ([x, y]: Point): Point => [x + dx, y + dy];
  return item.is === "line" ? { ...item, points: item.points.map(move) } : { ...item, at: move(item.at) };
};

/** Made so many times as large with its lettering; lines stay as thick as they are. */
export const enlarged = (item: Item, by: number): Item => {
  const place = ([x, y]: Point): Point => [x * by, y * by];
  return item.is === "line"
    ? { ...item, points: item.points.map(place) }
    : { ...item, at: place(item.at), size: item.size * by };
};
