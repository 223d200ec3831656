/**
 * One sawn board drawn to scale: its pieces with their numbers, its defects, what is cut away, its cuts in order. Its first end is on
 * the left and its first edge below, as the text counts them.
 */
import type { PlannedBoard, PlannedPiece } from "../../boards/plan.ts";
import type { Box } from "../../boards/wood.ts";
import type { Block } from "../markout/faces.ts";
import { widthOf } from "../markout/lettering.ts";
import { type Item, line, POINT, type Point, SMALL, words } from "../markout/page.ts";

/** A piece with its number among all of the plan. */
export interface Numbered {
  piece: PlannedPiece;
  number: number;
}

interface BoardDrawing {
  planned: PlannedBoard;
  pieces: readonly Numbered[];
  /** Millimetres of paper to one of the board. */
  scale: number;
  /** Width of a saw cut, mm. */
  saw: number;
}

/** Above the board, for the numbers of its crosscuts, and below it for the arrow of its grain, mm of paper. */
const ABOVE = 4;
const BELOW = 5;
/** Type on the pieces, points. */
const TYPE = SMALL;
const TALL = TYPE * POINT;
/** Shades of what is no piece. */
const WASTE = 0.88;
const KEPT = 1;

/** How high and wide the drawing of a board is at a scale, mm. */
export const sizeOfBoard = ({ board }: PlannedBoard, scale: number): { wide: number; high: number } => ({
  wide: board.long * scale,
  high: board.wide * scale + ABOVE + BELOW,
});

/** The drawing of a board. */
export function boardBlock({ planned, pieces, scale, saw }: BoardDrawing): Block {
  const { board, offcuts, cuts } = planned;
  const to = ([x, y]: Point): Point => [x * scale, ABOVE + (board.wide - y) * scale];
  const whole: Box = { x: 0, y: 0, long: board.long, wide: board.wide };
  const items: Item[] = [
    line(ring(whole).map(to), "knife", { closed: true, fill: WASTE }),
    ...offcuts.map((box) => line(ring(box).map(to), "faint", { closed: true, fill: KEPT })),
  ];
  for (const { piece } of pieces)
    items.push(line((piece.outline ?? ring(piece)).map(to), "outline", { closed: true, fill: KEPT }));
  const { clear } = board;
  if (clear.y > 0)
    for (const y of [clear.y, clear.y + clear.wide])
      items.push(line([to([0, y]), to([board.long, y])], "hidden"));
  for (const defect of board.defects) items.push(...defectItems(defect, to));
  cuts.forEach((cut, k) => {
    const number = String(k + 1);
    const middle = cut.at + saw / 2;
    if (cut.is === "crosscut") {
      items.push(line([to([middle, cut.from]), to([middle, cut.to])], "fine"));
      const through = cut.to >= board.wide - 1e-6;
      const [x, y] = to([middle, cut.to]);
      items.push(...label([x, through ? y - 1 : y + TALL], number, !through));
    } else if (cut.is === "rip") {
      items.push(line([to([cut.from, middle]), to([cut.to, middle])], "fine"));
      const [x, y] = to([cut.from, middle]);
      items.push(...label([x + widthOf(number, TYPE - 2) / 2 + 0.6, y + TALL / 3], number, true));
    }
  });
  for (const defect of board.defects) items.push(...defectWords(defect, to));
  for (const group of overEachOther(pieces)) items.push(...pieceWords(group, to, scale));
  items.push(...grain(board.long * scale, ABOVE + board.wide * scale + 3));
  return { items, height: sizeOfBoard(planned, scale).high };
}

const ring = ({ x, y, long, wide }: Box): Point[] => [
  [x, y],
  [x + long, y],
  [x + long, y + wide],
  [x, y + wide],
];

/** A defect: crossed out. */
function defectItems(defect: Box, to: (p: Point) => Point): Item[] {
  const [a, b, c, d] = ring(defect).map(to) as [Point, Point, Point, Point];
  return [line([a, b, c, d], "datum", { closed: true }), line([a, c], "datum"), line([b, d], "datum")];
}

/** What a defect is, at its lower edge. */
function defectWords({ what = "", ...box }: Box & { what?: string }, to: (p: Point) => Point): Item[] {
  const [x, y] = to([box.x + box.long / 2, box.y]);
  return label([Math.max(x, widthOf(what, TYPE - 1) / 2 + 0.4), y - 0.5], what, true);
}

/** Small words on white, so that lines under them do not hide them. */
function label([x, y]: Point, text: string, backed: boolean): Item[] {
  if (!text) return [];
  const size = TYPE - 1;
  const half = widthOf(text, size) / 2 + 0.2;
  const back = line(
    [
      [x - half, y - size * POINT * 0.8],
      [x + half, y - size * POINT * 0.8],
      [x + half, y + 0.2],
      [x - half, y + 0.2],
    ],
    "none",
    { closed: true, fill: 1 },
  );
  return [...(backed ? [back] : []), words([x, y], text, size, { anchor: "middle" })];
}

/** Pieces of a board that is resawn lie at one place; each group is told once. */
function overEachOther(pieces: readonly Numbered[]): Numbered[][] {
  const groups = new Map<string, Numbered[]>();
  for (const each of pieces) {
    const { x, y } = each.piece;
    const key = `${x.toFixed(2)} ${y.toFixed(2)}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()];
}

/** The number of a piece and, where it has room, its name; the number alone says it in the list below. */
function pieceWords(group: readonly Numbered[], to: (p: Point) => Point, scale: number): Item[] {
  const { piece } = group[0]!;
  const [x, y] = to(middleOf(piece));
  const room = piece.long * scale - 2;
  const number = group.map((each) => each.number).join("+");
  const named = `${number} ${piece.part}`;
  const text = widthOf(named, TYPE) <= room ? named : number;
  const size = widthOf(text, TYPE) <= room ? TYPE : TYPE - 2;
  return [
    words([x, y + size * POINT * 0.35], text, size, {
      anchor: "middle",
      ...(text === number && { bold: true }),
    }),
  ];
}

/** The middle of a piece; of a curved one halfway along, within it. */
function middleOf({ x, y, long, wide, outline }: PlannedPiece): Point {
  const at = x + long / 2;
  if (!outline) return [at, y + wide / 2];
  const ys = outline.flatMap(([u, v], k) => {
    const [p, q] = outline[(k + 1) % outline.length]!;
    return Math.min(u, p) <= at && Math.max(u, p) >= at && u !== p
      ? [v + ((q - v) * (at - u)) / (p - u)]
      : [];
  });
  return [at, (Math.min(...ys) + Math.max(...ys)) / 2];
}

/** Which way the grain runs: along the board. */
function grain(long: number, y: number): Item[] {
  const reach = Math.min(30, long / 2);
  const head = (x: number, way: 1 | -1): Point[] => [
    [x + way * 1.6, y - 0.8],
    [x, y],
    [x + way * 1.6, y + 0.8],
  ];
  return [
    line(
      [
        [0, y],
        [reach, y],
      ],
      "fine",
    ),
    line(head(0, 1), "fine"),
    line(head(reach, -1), "fine"),
    words([reach + 1.5, y + 0.8], "grain", TYPE),
  ];
}
