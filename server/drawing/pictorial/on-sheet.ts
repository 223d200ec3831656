import { GAP, MARGIN } from "../layout.ts";
import type { Point, Sheet, Stroke } from "../sheet.ts";
import type { Pictorial } from "./pictorial.ts";

/** From the foot of the picture to its caption's line, and from that to the sheet's edge, mm on a full-size sheet. */
const CAPTION = 30;

/** The sheet with a pictorial view to the right of all that is on it, its foot on the views' floor line if there is room; as it is without one. */
export function withPicture(sheet: Sheet, picture: Omit<Pictorial, "title"> | undefined): Sheet {
  if (!picture) return sheet;
  const { caption, width, height, strokes, tenons } = picture;
  const front = sheet.views.find(({ name }) => name === "front")?.bounds;
  const floor = front ? front.y + front.height : sheet.height - MARGIN;
  const right = sheet.width - MARGIN + GAP;
  const top = Math.max(0, floor + MARGIN - height);
  const captionAt: Point = [right + width / 2, top + height + CAPTION];
  const place = ([x, y]: Point): Point => [x + right, y + top];
  return {
    ...sheet,
    width: right + width + MARGIN,
    height: Math.max(sheet.height, captionAt[1] + MARGIN),
    picture: {
      caption,
      captionAt,
      strokes: strokes.map((stroke): Stroke => ({ ...stroke, points: stroke.points.map(place) })),
      tenons: tenons.map((line) => ({ ...line, points: line.points.map(place) })),
    },
  };
}
