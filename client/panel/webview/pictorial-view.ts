/**
 * The pictorial view as the rest of the page knows it: its script is loaded when it is first asked for.
 */
import type { GlueUpTold } from "../../../server/drawing/pictorial/glue-ups.ts";
import type { Area, Point } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import type { DrawingParams, PictorialWanted } from "../../../server/main/protocol.ts";
import type { PictureShown } from "../messages.ts";
import type { PartElements } from "./sheet-view.ts";

/** A picture whose faulty parts are to be flagged, seen at so many pixels to the millimetre. */
export interface FlaggedPicture {
  areas: readonly Area[];
  faults: readonly Fault[];
  bounds: { left: number; right: number; top: number; foot: number };
  scale: number;
}

export interface PictorialGiven {
  /** Where its controls go, and the element that has the keyboard while it is turned. */
  controls: HTMLElement;
  focus: HTMLElement;
  /** As it was left. */
  turned: unknown;
  changed(turned: object): void;
  /** What it needs of the chair. */
  asks(wanted: PictorialWanted): void;
  /** The flags of faulty parts among these areas, within bounds in mm. */
  flagged(of: FlaggedPicture): SVGElement[];
  /** Its room on the sheet is another. */
  resized(): void;
  /** Pixels to the millimetre, and the height of figures in pixels. */
  seenAt(): { scale: number; figures: number };
  /** It is drawn and at rest. */
  drawn(parts: PartElements, words: PictorialWords): void;
  /** For a screen reader. */
  told(words: string): void;
}

/** What is said of it. */
export interface PictorialWords {
  caption: string;
  glueUps: readonly GlueUpTold[];
}

export interface Pictorial {
  /** What it needs of the chair now. */
  readonly wants: PictorialWanted;
  /** A drawing has come. */
  show(drawing: DrawingParams): void;
  /** The room it takes on the sheet without its caption, mm; nothing before there is a chair to turn. */
  readonly room: { width: number; height: number } | undefined;
  /** Its lines, from the upper left corner of its room. */
  readonly element: SVGGElement;
  /** It is seen at another scale. */
  rescaled(): void;
  /** Pulled by so many pixels. */
  pulled(by: Point): void;
  /** As it is now, to be kept. */
  picture(): PictureShown | undefined;
  /** It is no longer shown. */
  stop(): void;
}
