/**
 * What is lettered in the room of the pictorial view: its flags, and the caption under it. Nothing of the other views stands there.
 */
import type { Point } from "../../../../server/drawing/sheet.ts";
import { wrapped } from "../../../../server/drawing/xml.ts";
import type { Laid } from "../arrange.ts";
import { flaggedIn, flagLabel } from "../flag-places.ts";
import type { FlaggedPicture } from "../pictorial-words.ts";
import { type Box, boxOf } from "./boxes.ts";
import { createTable, type Placed, place } from "./search.ts";
import { CAPTION_LINES, captionDrop, DESCENT, LINE } from "./type-scale.ts";

/** The flags of a picture that is not part of the sheet, px. */
export function pictureFlagged({ areas, faults, bounds, scale }: FlaggedPicture): Placed[] {
  const px = ([x, y]: Point): Point => [x * scale, y * scale];
  const { left, right, top, foot } = bounds;
  const seen = areas.map((area) => ({ ...area, points: area.points.map(px) }));
  const labels = flaggedIn(areas, faults).map((flag) => flagLabel(flag, px(flag.anchor), seen, "pictorial"));
  return place(createTable(boxOf([px([left, top]), px([right, foot])])), labels);
}

/** About how wide a letter of a caption is for its height, and the fewest letters on a line of it. */
const LETTER = 0.54;
const FEWEST = 12;

/** A caption under a room so wide, px. */
export const captionLines = (words: string, wide: number, figures: number): string[] =>
  wrapped(words.replace(/\.$/, ""), Math.max(FEWEST, Math.floor(wide / (figures * LETTER))), CAPTION_LINES);

/** All of the picture's room with its caption, px from the sheet's corner. */
export function pictureRoom({ pictorial, figures }: Laid, scale: number): Box | undefined {
  if (!pictorial) return undefined;
  const { x, y, width, height } = pictorial;
  const half = Math.max((width * scale) / 2, (FEWEST * LETTER * figures) / 2);
  const middle = (x + width / 2) * scale;
  const words = captionDrop(figures) + ((CAPTION_LINES - 1) * LINE + DESCENT) * figures;
  return { left: middle - half, right: middle + half, top: y * scale, foot: (y + height) * scale + words };
}
