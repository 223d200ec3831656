import type { Point, Sheet, Stroke, View } from "../sheet.ts";
import type { Pictorial } from "./pictorial.ts";

/** The most of the views' scale that the picture has, and the least that it is still worth. */
const MOST = 1 / 2;
const LEAST = 1 / 8;

/** From the scale bar to the picture, under it to the foot of its caption, and from that to the side view; mm on a full-size sheet. */
const AIR = 20;
const CAPTION = 10;
/** From the first line of the caption to the second. */
const LINE = 34;

/**
 * The sheet with a pictorial view in its free corner, over the side view and under title and scale bar, as large as it fits; as it is where
 * there is no room. A picture shows how things lie, and is not measured: it has no scale.
 */
export function withCornerPicture(sheet: Sheet, picture: Omit<Pictorial, "title">): Sheet {
  const side = sheet.views.find(({ name }) => name === "side");
  if (!side || !sheet.titleAt) return sheet;
  const { x, width } = sheet.titleAt;
  const top = sheet.scaleBar.at[1] + AIR;
  const room = topOf(side) - AIR - CAPTION - LINE - top;
  const share = Math.min(MOST, width / picture.width, room / picture.height);
  if (share < LEAST) return sheet;
  const left = x + (width - picture.width * share) / 2;
  const foot = top + room;
  const place = ([u, v]: Point): Point => [left + u * share, foot + (v - picture.height) * share];
  return {
    ...sheet,
    picture: {
      caption: picture.caption,
      captionAt: [x + width / 2, foot + CAPTION],
      note: "Not to scale.",
      noteAt: [x + width / 2, foot + CAPTION + LINE],
      strokes: picture.strokes.map((stroke): Stroke => ({ ...stroke, points: stroke.points.map(place) })),
      tenons: picture.tenons.map((line) => ({ ...line, points: line.points.map(place) })),
    },
  };
}

/** The highest that anything of a view reaches. */
function topOf({ bounds, dimensions, overlays = [] }: View): number {
  const points = [
    ...dimensions.flatMap(({ line, extensions }) => [...line, ...extensions.flat()]),
    ...overlays.flatMap(({ strokes }) => strokes.flatMap(({ points }) => points)),
  ];
  return points.reduce((top, [, y]) => Math.min(top, y), bounds.y);
}
