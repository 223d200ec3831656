/**
 * A view with running dimensions round it, its name under it, as one block on paper. Zero is where right and up are zero.
 */
import type { Figures } from "../markout/figures.ts";
import { BODY, type Item, line, moved, type Point, words } from "../markout/page.ts";
import type { Extent } from "../measures.ts";
import { bandLength, bandRoom, CLEAR, levelBand, type Tick, uprightBand } from "./bands.ts";
import type { Labels } from "./labels.ts";
import type { Said, Stop, ViewSetOut } from "./set-out.ts";

/** Under a view for its name, and how far a centre line runs past it, mm. */
const CAPTION = 5;
const PAST = 3;

type Side = "left" | "right" | "above" | "below";

/** What is to be drawn, as seen, mm of the chair; its lines on paper at one to so many. */
export interface CellView {
  caption: string;
  extent: Extent;
  lines: (scale: number) => Item[];
  setOut: ViewSetOut;
  /** Where each side's distances run from; zero unless given. */
  origins: Partial<Record<Side, number>>;
  /** A middle line, and the floor. */
  axis: boolean;
  floor: boolean;
}

export interface Cell {
  view: CellView;
  scale: number;
  bands: Record<Side, Tick[]>;
  told: Record<"left" | "right", { to: Point; text: string }[]>;
  /** What the block takes on each side of its zero, mm on paper. */
  left: number;
  right: number;
  above: number;
  below: number;
}

const texts = (some: readonly { text: string }[]): string[] => some.map(({ text }) => text);

/** The block of a view at one to so many. */
export function cellOf(view: CellView, figures: Figures, labels: Labels, scale: number): Cell {
  const { extent, setOut, origins } = view;
  const ticks = (side: Side) =>
    setOut[side].map((stop) =>
      tickOf(
        stop,
        `${figuresOf(stop, figures, origins[side] ?? 0)} ${labels.of(stop.of)}`,
        scale,
        side === "left" || side === "right",
      ),
    );
  const bands = { left: ticks("left"), right: ticks("right"), above: ticks("above"), below: ticks("below") };
  const told = {
    left: toldOn(setOut.saidLeft, labels, scale),
    right: toldOn(setOut.saidRight, labels, scale),
  };
  const beside = (side: "left" | "right") => bandRoom(texts([...bands[side], ...told[side]]));
  const [high, wide] = [(extent.high - extent.low) / scale, (extent.right - extent.left) / scale];
  const counts = (["left", "right"] as const).map((side) => bands[side].length + told[side].length);
  // Labels that are more than the view has room beside itself for stand past its ends.
  const spareHigh = Math.max(0, (bandLength(Math.max(...counts)) - high) / 2);
  const spareWide = Math.max(0, (bandLength(Math.max(bands.above.length, bands.below.length)) - wide) / 2);
  return {
    view,
    scale,
    bands,
    told,
    left: -extent.left / scale + Math.max(beside("left"), spareWide, PAST),
    right: extent.right / scale + Math.max(beside("right"), spareWide, PAST),
    above: extent.high / scale + Math.max(spareHigh, PAST + bandRoom(texts(bands.above))),
    below: -extent.low / scale + Math.max(spareHigh, PAST + bandRoom(texts(bands.below))) + CAPTION,
  };
}

const toldOn = (some: readonly Said[], labels: Labels, scale: number) =>
  some.map((said) => ({
    to: [said.at[0] / scale, -said.at[1] / scale] as Point,
    text: labels.said(said),
  }));

/** Of two edges both, the lower first. */
const figuresOf = ({ at }: Stop, figures: Figures, origin: number): string =>
  [...at]
    .sort((a, b) => a - b)
    .map((mm) => figures.print(mm - origin))
    .join(" – ");

function tickOf({ at, across }: Stop, text: string, scale: number, upright: boolean): Tick {
  // On paper y runs down.
  const sign = upright ? -1 : 1;
  return {
    ticks: at.map((mm, k) => ({ at: (sign * mm) / scale, from: (-sign * across[k]!) / scale })),
    text,
  };
}

/** The block with its zero at that place. */
export function cellItems({ view, scale, bands, told, ...cell }: Cell, [x, y]: Point): Item[] {
  const { extent, lines, origins, caption } = view;
  const [left, right] = [extent.left / scale, extent.right / scale];
  const [top, foot] = [-extent.high / scale, -extent.low / scale];
  const upright = { low: -cell.above + 1.5, high: cell.below - CAPTION - 1.5 };
  const level = { low: -cell.left + 1.5, high: cell.right - 1.5 };
  const origin = (side: Side) => (origins[side] ?? 0) / scale;
  const at = {
    left: left - CLEAR,
    right: right + CLEAR,
    above: top - PAST - CLEAR,
    below: foot + PAST + CLEAR,
  };
  const items: Item[] = [
    ...lines(scale),
    ...(view.axis ? [straight([0, top - PAST], [0, foot + PAST], "datum")] : []),
    ...(view.floor ? [straight([left - PAST, 0], [right + PAST, 0], "knife")] : []),
    ...uprightBand({
      ...upright,
      ticks: bands.left,
      told: told.left,
      at: at.left,
      way: -1,
      origin: -origin("left"),
    }),
    ...uprightBand({
      ...upright,
      ticks: bands.right,
      told: told.right,
      at: at.right,
      way: 1,
      origin: -origin("right"),
    }),
    ...levelBand({ ...level, ticks: bands.above, at: at.above, way: -1, origin: origin("above") }),
    ...levelBand({ ...level, ticks: bands.below, at: at.below, way: 1, origin: origin("below") }),
    words([(left + right) / 2, cell.below - 0.8], caption, BODY, { anchor: "middle", bold: true }),
  ];
  return items.map((item) => moved(item, x, y));
}

const straight = (a: Point, b: Point, pen: "datum" | "knife"): Item => line([a, b], pen);
