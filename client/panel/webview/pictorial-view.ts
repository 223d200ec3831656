import type { Point } from "../../../server/drawing/sheet.ts";
import type { DrawingParams, PictorialWanted } from "../../../server/main/protocol.ts";
import type { PictureShown } from "../messages.ts";
import type { PartElements } from "./part-elements.ts";
import type { FlaggedPicture, PictorialWords } from "./pictorial-words.ts";

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
