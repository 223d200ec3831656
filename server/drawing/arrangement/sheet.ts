/**
 * The arrangement drawing: front, side and plan of the whole chair to a preferred scale, with all that a maker sets out, and a pictorial view
 * in the corner that is left.
 */
import type { Chair } from "../../chair/chair.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import type { Block } from "../markout/faces.ts";
import type { Figures } from "../markout/figures.ts";
import {
  enlarged,
  type Item,
  line,
  moved,
  type Pen,
  type Point,
  SMALL,
  TYPE,
  words,
} from "../markout/page.ts";
import { LINE, paragraphs } from "../markout/table.ts";
import { eyes } from "../pictorial/eye.ts";
import { drawPictorial, type Pictorial } from "../pictorial/pictorial.ts";
import { type Cell, type CellView, cellItems, cellOf } from "./cells.ts";
import { type Labels, namedLabels, numberedLabels } from "./labels.ts";
import { type SetOut, setOutOf } from "./set-out.ts";
import { type Angle, projectionSymbol, SYMBOL } from "./symbol.ts";
import { type DrawnViews, type ViewName, viewsOf } from "./views.ts";

/** ISO 5455: as it is, and reductions. One to so many. */
export const SCALES = [1, 2, 5, 10, 20, 50, 100];

export interface Room {
  wide: number;
  high: number;
}

export interface Arrangement {
  items: Item[];
  scale: number;
  /** The sheet stands on its short side. */
  upright: boolean;
}

/** Between views, and the least height for the picture with what is said under it, mm. */
const GAP = 5;
const PICTURE = 45;

const captions: Record<ViewName, string> = {
  front: "Front",
  side: "Side, from the sitter's left",
  plan: "Plan, from above",
};

const pens: Record<DrawnViews["front"]["strokes"][number]["is"], Pen> = {
  hidden: "hidden",
  edge: "knife",
  outline: "outline",
};

/** A view's strokes on paper at one to so many, what is hidden first. */
export const strokeItems = (strokes: DrawnViews["front"]["strokes"], scale: number): Item[] =>
  (["hidden", "edge", "outline"] as const).flatMap((is) =>
    strokes
      .filter((stroke) => stroke.is === is)
      .map(({ points }) =>
        line(
          points.map(([u, v]): Point => [u / scale, -v / scale]),
          pens[is],
        ),
      ),
  );

/** Something laid out to go into a room, mm. */
interface Laid {
  wide: number;
  high: number;
}

/**
 * The largest of the preferred scales at which one of the ways of laying out goes into one of the rooms, the first ways first, the larger
 * letters first: it is laid out smaller, in a smaller room, and enlarged by `by`. The last of all is taken whether it fits or not.
 */
export function fitted<W, T extends Laid>(
  rooms: readonly Room[],
  ways: readonly W[],
  layOut: (scale: number, way: W, room: Room) => T,
): { laid: T; room: Room; index: number; by: number; scale: number } {
  const tries = SCALES.flatMap((scale) =>
    TYPE.flatMap((by) =>
      ways.flatMap((way) => rooms.map((room, index) => ({ scale, way, by, room, index }))),
    ),
  );
  const laidOut = ({ scale, way, by, room: { wide, high }, index }: (typeof tries)[number]) => {
    const room = { wide: wide / by, high: high / by };
    return { laid: layOut(scale * by, way, room), room, index, by, scale };
  };
  for (const each of tries) {
    const made = laidOut(each);
    if (made.laid.wide <= made.room.wide && made.laid.high <= made.room.high) return made;
  }
  return laidOut(tries[tries.length - 1]!);
}

/** The drawing in the room of a sheet on its long side, or on its short one where it can be larger there. */
export function arrangement(
  chair: Chair,
  pieces: readonly Piece[],
  figures: Figures,
  rooms: { level: Room; upright: Room },
  angle: Angle,
): Arrangement {
  const views = viewsOf(chair);
  const setOut = setOutOf(chair);
  const ways = [namedLabels(pieces, figures), numberedLabels(pieces, figures)];
  const { laid, room, index, by, scale } = fitted([rooms.level, rooms.upright], ways, (one, labels, within) =>
    planned({ views, setOut, figures, labels }, one, within),
  );
  const items = drawn({ chair, figures, setOut, angle }, laid, room);
  return { items: items.map((item) => enlarged(item, by)), scale, upright: index === 1 };
}

interface Plan extends Record<ViewName, Cell> {
  /** Of the columns and rows that hold the front and the others. */
  column: number;
  other: number;
  row: number;
  second: number;
  /** The parts, along the foot. */
  key: Block;
  wide: number;
  high: number;
}

interface Given {
  views: DrawnViews;
  setOut: SetOut;
  figures: Figures;
  labels: Labels;
}

function planned({ views, setOut, figures, labels }: Given, scale: number, room: Room): Plan {
  const { origin } = setOut;
  const cell = (name: ViewName, origins: CellView["origins"]): Cell => {
    const { extent, strokes } = views[name];
    const view: CellView = {
      caption: captions[name],
      extent,
      lines: (one) => strokeItems(strokes, one),
      setOut: setOut[name],
      origins,
      axis: name !== "side",
      floor: name !== "plan",
    };
    return cellOf(view, figures, labels, scale);
  };
  const front = cell("front", {});
  const side = cell("side", { above: origin, below: origin });
  const plan = cell("plan", { right: origin });
  const key = paragraphs([labels.key], room.wide);
  const column = Math.max(front.left, plan.left) + Math.max(front.right, plan.right);
  const other = Math.max(side.left + side.right, 2 * SYMBOL.width);
  const row = Math.max(front.above, side.above) + Math.max(front.below, side.below);
  const second = Math.max(plan.above + plan.below, PICTURE);
  const high = row + GAP + second + GAP + key.height;
  return { front, side, plan, column, other, row, second, key, wide: column + GAP + other, high };
}

interface Drawn {
  chair: Chair;
  figures: Figures;
  setOut: SetOut;
  angle: Angle;
}

/** The views in their places, in the middle of the room over the key. */
function drawn({ chair, figures, setOut, angle }: Drawn, laid: Plan, room: Room): Item[] {
  const { front, side, plan, column, row, key } = laid;
  // What the views leave of the room goes to the picture's column and row.
  const other = laid.other + Math.max(0, (room.wide - laid.wide) / 3);
  const second = laid.second + Math.max(0, (room.high - laid.high) / 2);
  const [wide, high] = [column + GAP + other, row + GAP + second];
  const over = room.high - key.height - GAP;
  const [x0, y0] = [Math.max(0, (room.wide - wide) / 2), Math.max(0, (over - high) / 2)];
  const third = angle === "third";
  const [frontColumn, otherColumn] = third ? [x0, x0 + column + GAP] : [x0 + other + GAP, x0];
  const [frontRow, planRow] = third ? [y0 + second + GAP, y0] : [y0, y0 + row + GAP];
  const frontX = frontColumn + Math.max(front.left, plan.left);
  const floorY = frontRow + Math.max(front.above, side.above);
  const planY = planRow + plan.above + (second - plan.above - plan.below) / 2;
  return [
    ...cellItems(front, [frontX, floorY]),
    ...cellItems(side, [otherColumn + side.left + (other - side.left - side.right) / 2, floorY]),
    ...cellItems(plan, [frontX, planY]),
    ...inCorner(
      { x: otherColumn, y: planRow, wide: other, high: second },
      [...sizesOver(chair, figures), ...originsSaid(setOut)],
      angle,
      drawPictorial(chair, { eye: eyes["front-left"]! }),
    ),
    ...key.items.map((item) => moved(item, 0, room.high - key.height)),
  ];
}

/** How wide, deep and high it is over all. */
function sizesOver({ values }: Chair, figures: Figures): string[] {
  const size = (name: string) => values.get(name)?.number;
  const [wide, deep, high] = [size("width"), size("depth"), size("height")];
  if (wide === undefined || deep === undefined || high === undefined) return [];
  return [`Over all ${figures.print(wide)} wide, ${figures.print(deep)} deep, ${figures.print(high)} high.`];
}

const originsSaid = ({ originIs }: SetOut): string[] => [
  "Heights from the floor, widths from the middle,",
  `depths from ${originIs}.`,
];

/** The projection's symbol, where distances run from, and the picture as large as goes there, which has no scale. */
function inCorner(
  { x, y, wide, high }: Room & { x: number; y: number },
  says: readonly string[],
  angle: Angle,
  picture: Pictorial,
): Item[] {
  const foot = y + high - SYMBOL.height - 1;
  const room = foot - 6 - says.length * LINE - y;
  const share = Math.min(wide / picture.width, room / picture.height);
  const left = x + (wide - picture.width * share) / 2;
  const to = ([u, v]: Point): Point => [left + u * share, y + v * share];
  return [
    ...picture.strokes.map(({ points, is }) => line(points.map(to), is === "outline" ? "knife" : "fine")),
    words([x + wide / 2, y + picture.height * share + 3], "Not to scale", SMALL, { anchor: "middle" }),
    ...says.map((text, k) => words([x, foot - 2.1 - (says.length - 1 - k) * LINE], text, SMALL)),
    ...projectionSymbol([x, foot], angle),
  ];
}
