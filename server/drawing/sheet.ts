/**
 * A sheet of views as neutral strokes: made from a Chair, turned into SVG, PDF or a panel elsewhere. Millimetres, y down.
 */
import type { Span } from "../../grammar/problem.ts";
import type { Chair } from "../chair/chair.ts";

export type Point = readonly [number, number];

export interface Sheet {
  /** The chair's title as written: escape it wherever it goes into markup. */
  title: string;
  views: View[];
  /** All views with their labels, laid out on one sheet. */
  width: number;
  height: number;
  scaleBar: ScaleBar;
  /** Where a title of so much width may stand, from its left end and first line; for sheets that show one. */
  titleAt?: { x: number; y: number; width: number };
  /** What a reader of the sheet should know, one sentence a line. */
  notes?: string[];
  /** Beside the views: the chair from any side. */
  picture?: Picture;
}

/** A pictorial view on a sheet, in the sheet's coordinates. */
export interface Picture {
  /** From where it is seen. */
  caption: string;
  captionAt: Point;
  /** What else is to be known of it, under the caption. */
  note?: string;
  noteAt?: Point;
  strokes: Stroke[];
  /** Lines of tenons that the wood hides. */
  tenons: { points: Point[]; part: string }[];
}

export interface View {
  name: "front" | "side" | "plan";
  /** "Front", "Side (from the sitter's left)", … */
  caption: string;
  captionAt: Point;
  /** Where the view stands on the sheet. */
  bounds: { x: number; y: number; width: number; height: number };
  strokes: Stroke[];
  /** Closed outlines that take a click, front-most last; same coordinates as the strokes. */
  areas: Area[];
  dimensions: DimensionLine[];
  /** What was asked to be laid over it. */
  overlays?: Overlay[];
}

/** What can be laid over a drawing: how it stands on the floor, in plan; a sitter, from the side; hidden lines, in all views. */
export const overlayNames = ["floor", "sitter", "hidden"] as const;
export type OverlayName = (typeof overlayNames)[number];
/** What is laid over one view as an overlay of its own; hidden lines are strokes of every view. */
export type OneViewName = Exclude<OverlayName, "hidden">;

export interface Overlay {
  name: OneViewName;
  strokes: OverlayStroke[];
  words: OverlayWords[];
}

/** Outlines are closed: `foot`, `support`, `centre`, `quarter`, `body`, `arm`; `tipping` and `load` are lines. */
export interface OverlayStroke {
  points: Point[];
  is: "foot" | "support" | "tipping" | "load" | "centre" | "quarter" | "body" | "arm";
}

/** Whether a stroke of an overlay is a closed outline. */
export const isClosed = ({ is }: OverlayStroke): boolean => is !== "tipping" && is !== "load";

export interface OverlayWords {
  text: string;
  /** What it tells of; the words of loads go first where there is no room. */
  of: "line" | "load" | "weight";
  /** Foot of the words at their anchor. */
  at: Point;
  anchor: "start" | "middle" | "end";
  upright?: true;
}

export interface Stroke {
  /** Polyline in sheet coordinates. */
  points: Point[];
  is: "edge" | "outline" | "floor" | "centre" | "seat" | "before" | "hidden";
  /** Full name of the part. */
  part?: string;
  /** The part is another than in the chair laid behind. */
  changed?: true;
}

/** A chair to lay behind another, and which parts of the one in front are others than in it. */
export interface Behind {
  chair: Chair;
  changed: ReadonlySet<string>;
}

export interface Area {
  part: string;
  /** Where the part's name stands in the text. */
  at: Span;
  /** The text it stands in, where that is another file: its address. */
  file?: string;
  points: Point[];
}

export interface DimensionLine {
  /** Dotted name of the value, such as `seat.height`, or a plain description. */
  name: string;
  /** In the file's units, such as "440 mm" or `17 3/8 in`. */
  label: string;
  /** Middle of the label's foot. */
  labelAt: Point;
  /** The label runs upward, read from the right. */
  upright?: true;
  /** The label as it is written where it is too long for one line: these, the first from `labelAt` to the right, the others under it. */
  lines?: string[];
  /** The measured line with its end ticks, and the extension lines. */
  line: [Point, Point];
  extensions: [Point, Point][];
  /** For an angle: its arc, in place of ticks, from the extension line to the measured one. */
  arc?: Point[];
}

export interface ScaleBar {
  at: Point;
  /** mm on the sheet. */
  length: number;
  label: string;
  divisions: number;
}
