/**
 * Full-size drawings cut into pages that overlap, with marks to join them by and a square to check the printing by.
 */

import { widthOf } from "./lettering.ts";
import { circle, type Item, LARGE, type Line, line, POINT, type Point, type Words, words } from "./page.ts";
import type { Paper } from "./paper.ts";
import { roomOn } from "./sheet-page.ts";

/** A drawing at full size, from its upper left corner. */
export interface FullSize {
  width: number;
  height: number;
  items: Item[];
  /** Repeated at the left of every page that what is so wide reaches, at that height. */
  captions: { y: number; text: string; width: number }[];
}

/** Neighbouring pages share this much, mm. */
const OVERLAP = 15;
/** Above and below the drawing, for the marks that pages are joined by. */
const MARKS = 8;
/** The side of the check square, mm. */
const SQUARE = 100;

/** One page of a drawing, and where in it. */
export interface Tile {
  items: Item[];
  column: number;
  row: number;
  columns: number;
  rows: number;
  /** Nothing of the drawing lies on it. */
  empty: boolean;
}

/** The pages of a drawing, row by row. Each has the check square where there is room for it, else a line of the same length. */
export function tiles(drawing: FullSize, paper: Paper): Tile[] {
  const { wide, high } = roomOn(paper);
  const whole = drawing.height + 2 * MARKS;
  const strip = 9;
  const square = whole + SQUARE + 6 <= high;
  const tall = high - strip;
  const columns = countOf(drawing.width, wide);
  const rows = whole <= tall ? 1 : countOf(whole, tall);
  const onSome = drawing.items.map((item) =>
    item.is === "words" ? onOneTile(item, [wide, rows === 1 ? whole : tall]) : item,
  );
  const bounds = onSome.map(boundsOf);
  return Array.from({ length: columns * rows }, (_, k): Tile => {
    const [column, row] = [k % columns, Math.floor(k / columns)];
    const left = column * (wide - OVERLAP);
    const top = row * (tall - OVERLAP) - MARKS;
    const box: Box = { left: 0, top: 0, right: wide, bottom: rows === 1 ? whole : tall };
    const items = onSome.flatMap((item, which) =>
      meets(bounds[which]!, box, left, top) ? cut(shifted(item, -left, -top), box) : [],
    );
    const empty = items.length === 0;
    for (const { y, text, width } of drawing.captions) {
      const at = y - top;
      if (at > 0 && at < box.bottom && width > left + OVERLAP)
        items.push(words([column === 0 ? 0 : OVERLAP + 3, at], text, LARGE, { bold: true }));
    }
    items.push(...joints({ column, row, columns, rows }, box, items.filter(isWords).map(boxOf)));
    const foot = square ? whole + 3 : high - 5;
    items.push(...(square ? checkSquare([1, foot]) : checkLine([1, foot])));
    return { items, column, row, columns, rows, empty };
  });
}

const countOf = (size: number, room: number): number =>
  Math.max(1, Math.ceil((size - OVERLAP - 1e-6) / (room - OVERLAP)));

const shifted = (item: Item, dx: number, dy: number): Item => {
  const move = ([x, y]: Point): Point => [x + dx, y + dy];
  return item.is === "line" ? { ...item, points: item.points.map(move) } : { ...item, at: move(item.at) };
};

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** What an item covers. */
function boundsOf(item: Item): Box {
  if (item.is === "words") return boxOf(item);
  const bounds = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const [x, y] of item.points) {
    bounds.left = Math.min(bounds.left, x);
    bounds.right = Math.max(bounds.right, x);
    bounds.top = Math.min(bounds.top, y);
    bounds.bottom = Math.max(bounds.bottom, y);
  }
  return bounds;
}

/** Whether an item comes near a page that begins there: what lies wholly beside it need not be cut. */
const meets = (item: Box, page: Box, left: number, top: number): boolean =>
  item.right - left >= page.left - NEAR &&
  item.left - left <= page.right + NEAR &&
  item.bottom - top >= page.top - NEAR &&
  item.top - top <= page.bottom + NEAR;

/** Far more than rounding, mm. */
const NEAR = 0.01;

/** What words cover. */
function boxOf({ text, size, bold, anchor, upright, at: [x, y] }: Words): Box {
  const long = widthOf(text, size, bold);
  const back = anchor === "middle" ? long / 2 : anchor === "end" ? long : 0;
  return upright
    ? { left: x - size * POINT, right: x, top: y + back - long, bottom: y + back }
    : { left: x - back, right: x - back + long, top: y - size * POINT, bottom: y };
}

/** Words that would lie on the edge of every tile, moved back onto the one that they begin on. */
function onOneTile(item: Words, size: readonly [number, number]): Words {
  const box = boxOf(item);
  const back = ([from, to]: [number, number], room: number): number => {
    const first = Math.max(0, Math.floor((from + MARKS) / (room - OVERLAP)));
    const end = first * (room - OVERLAP) + room;
    return Math.max(0, to + MARKS - end);
  };
  const [dx, dy] = [
    back([box.left - MARKS, box.right - MARKS], size[0]),
    back([box.top, box.bottom], size[1]),
  ];
  return dx || dy ? { ...item, at: [item.at[0] - dx, item.at[1] - dy] } : item;
}

/** What of an item lies in a box: lines cut off at its sides, words whole or not at all. */
function cut(item: Item, box: Box): Item[] {
  if (item.is === "words") {
    const { left, right, top, bottom } = boxOf(item);
    return left >= box.left && right <= box.right && top >= box.top && bottom <= box.bottom ? [item] : [];
  }
  const points = item.closed ? [...item.points, item.points[0]!] : item.points;
  const filled = item.fill === undefined ? [] : fillIn(item, box);
  if (item.pen === "none") return filled;
  return [...filled, ...runsIn(points, box).map((run) => line(run, item.pen))];
}

/** The stretches of a line inside a box. */
function runsIn(points: readonly Point[], box: Box): Point[][] {
  const runs: Point[][] = [];
  for (let k = 1; k < points.length; k++) {
    const span = within(points[k - 1]!, points[k]!, box);
    if (!span) continue;
    const last = runs[runs.length - 1];
    const end = last?.[last.length - 1];
    if (last && end && end[0] === span[0][0] && end[1] === span[0][1]) last.push(span[1]);
    else runs.push([...span]);
  }
  return runs;
}

/** The part of a segment inside a box (Liang and Barsky, ACM Trans. Graphics 3, 1984). */
function within(a: Point, b: Point, box: Box): [Point, Point] | undefined {
  let [from, to] = [0, 1];
  const sides = [
    [a[0] - b[0], a[0] - box.left],
    [b[0] - a[0], box.right - a[0]],
    [a[1] - b[1], a[1] - box.top],
    [b[1] - a[1], box.bottom - a[1]],
  ] as const;
  for (const [rate, room] of sides) {
    if (rate === 0 && room < 0) return undefined;
    if (rate < 0) from = Math.max(from, room / rate);
    else if (rate > 0) to = Math.min(to, room / rate);
  }
  if (from > to) return undefined;
  const at = (t: number): Point =>
    t === 0 ? a : t === 1 ? b : [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  return [at(from), at(to)];
}

/** A filled figure cut off at the sides of a box (Sutherland and Hodgman, Comm. ACM 17, 1974). */
function fillIn(item: Line, box: Box): Item[] {
  const sides: ((p: Point) => number)[] = [
    ([x]) => x - box.left,
    ([x]) => box.right - x,
    ([, y]) => y - box.top,
    ([, y]) => box.bottom - y,
  ];
  let ring = item.points;
  for (const inside of sides) {
    ring = ring.flatMap((p, k): Point[] => {
      const before = ring[(k + ring.length - 1) % ring.length]!;
      const [a, b] = [inside(before), inside(p)];
      const crossing: Point[] =
        a < 0 === b < 0
          ? []
          : [
              [
                before[0] + ((p[0] - before[0]) * a) / (a - b),
                before[1] + ((p[1] - before[1]) * a) / (a - b),
              ],
            ];
      return b >= 0 ? [...crossing, p] : crossing;
    });
  }
  return ring.length < 3 ? [] : [line(ring, "none", { closed: true, fill: item.fill! })];
}

/** Where this page meets its neighbours: a line to cut or fold to, and targets to lay on each other. */
function joints(
  { column, row, columns, rows }: Omit<Tile, "items" | "empty">,
  box: Box,
  taken: Box[],
): Item[] {
  const items: Item[] = [];
  const nameOf = (c: number, r: number) => (rows > 1 ? `${r + 1}.${c + 1}` : `${c + 1}`);
  const upright = (x: number, way: 1 | -1, to: string) => {
    items.push(
      line(
        [
          [x, box.top],
          [x, box.bottom],
        ],
        "hidden",
      ),
    );
    for (const y of [box.top + 4, box.bottom - 4]) items.push(...target([x, y]));
    const heights = [box.top + 2.9, ...stepsFrom(box.top + 8, box.bottom)];
    const more = way < 0 ? { anchor: "end" as const } : {};
    items.push(
      free(
        heights.map((at) => words([x + way * 3.6, at], to, LARGE, more)),
        taken,
      ),
    );
  };
  const level = (y: number, to: string) => {
    items.push(
      line(
        [
          [box.left, y],
          [box.right, y],
        ],
        "hidden",
      ),
    );
    for (const x of [box.left + 60, box.right - 60]) items.push(...target([x, y]));
    items.push(
      free(
        stepsFrom(box.left + 66, box.right - 20).map((x) => words([x, y - 1], to, LARGE)),
        taken,
      ),
    );
  };
  if (column > 0) upright(box.left + OVERLAP / 2, 1, `from ${nameOf(column - 1, row)}`);
  if (column < columns - 1) upright(box.right - OVERLAP / 2, -1, `to ${nameOf(column + 1, row)}`);
  if (row > 0) level(box.top + OVERLAP / 2, `below ${nameOf(column, row - 1)}`);
  if (row < rows - 1) level(box.bottom - OVERLAP / 2, `above ${nameOf(column, row + 1)}`);
  return items;
}

const stepsFrom = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(1, Math.floor((to - from) / 4)) }, (_, k) => from + k * 4);

const isWords = (item: Item): item is Words => item.is === "words";

/** The first of some words that lie on none of these, if there is one; it lies there then. */
function free(places: readonly Words[], taken: Box[]): Words {
  const lies = (a: Box) =>
    taken.some((b) => a.left < b.right + 1 && b.left < a.right + 1 && a.top < b.bottom && b.top < a.bottom);
  const place = places.find((each) => !lies(boxOf(each))) ?? places[0]!;
  taken.push(boxOf(place));
  return place;
}

function target([x, y]: Point): Item[] {
  return [
    circle([x, y], 2, "fine"),
    line(
      [
        [x - 3.2, y],
        [x + 3.2, y],
      ],
      "fine",
    ),
    line(
      [
        [x, y - 3.2],
        [x, y + 3.2],
      ],
      "fine",
    ),
  ];
}

/** A square of 100 mm with its upper left corner there, graduated along two sides. */
export function checkSquare([x, y]: Point): Item[] {
  const corners: Point[] = [
    [x, y],
    [x + SQUARE, y],
    [x + SQUARE, y + SQUARE],
    [x, y + SQUARE],
  ];
  const ticks = Array.from({ length: 9 }, (_, k) => (k + 1) * 10).flatMap((d) => [
    line(
      [
        [x + d, y + SQUARE],
        [x + d, y + SQUARE - (d === 50 ? 4 : 2)],
      ],
      "fine",
    ),
    line(
      [
        [x, y + SQUARE - d],
        [x + (d === 50 ? 4 : 2), y + SQUARE - d],
      ],
      "fine",
    ),
  ]);
  return [
    line(corners, "knife", { closed: true }),
    ...ticks,
    words([x + SQUARE / 2, y + SQUARE / 2 - 1], "100 mm each way", LARGE, {
      anchor: "middle",
      bold: true,
    }),
    words([x + SQUARE / 2, y + SQUARE / 2 + 4.2], "Check it with a rule before using this page.", LARGE, {
      anchor: "middle",
    }),
  ];
}

/** A line of 100 mm, where the square has no room. */
function checkLine([x, y]: Point): Item[] {
  const ends = [x, x + SQUARE];
  return [
    line(
      [
        [x, y],
        [x + SQUARE, y],
      ],
      "knife",
    ),
    ...ends.map((at) =>
      line(
        [
          [at, y - 2],
          [at, y + 2],
        ],
        "knife",
      ),
    ),
    words([x + SQUARE + 4, y + 0.9], "100 mm: check it with a rule before using this page.", LARGE),
  ];
}
