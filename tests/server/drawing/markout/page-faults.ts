/**
 * What is wrong with a page of sheets as it is read: letters too small, words over words, words or lines outside its border, room for larger
 * letters.
 */
import { widthOf } from "../../../../server/drawing/markout/lettering.ts";
import { type Page, POINT, SMALL, type Words } from "../../../../server/drawing/markout/page.ts";
import { MARGIN } from "../../../../server/drawing/markout/paper.ts";
import { roomForLetters } from "./room-for-letters.ts";

interface Box {
  text: string;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Capitals reach some 0.72 of the type's height above the line; what hangs below it is left out, as nothing is lost where it touches. */
function boxOf({ at: [x, y], text, size, bold, anchor, upright }: Words): Box {
  const long = widthOf(text, size, bold);
  const high = 0.72 * size * POINT;
  const back = anchor === "middle" ? long / 2 : anchor === "end" ? long : 0;
  return upright
    ? { text, left: x - high, right: x, top: y + back - long, bottom: y + back }
    : { text, left: x - back, right: x - back + long, top: y - high, bottom: y };
}

export const wordsOf = ({ items }: Page): Words[] => items.filter((item) => item.is === "words");

const meet = (a: Box, b: Box): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.1 &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.1;

/** Widths of sheets up to which the title block has two rows, and the height of a row, mm. */
const NARROW = 240;
const ROW = 22;

/** Empty when nothing is. */
export function faultsOn(page: Page): string[] {
  const { name, width, height, items } = page;
  const all = wordsOf(page);
  const boxes = all.map(boxOf);
  const isIn = ([x, y]: readonly [number, number]) =>
    x > MARGIN - 0.01 && x < width - MARGIN + 0.01 && y > MARGIN - 0.01 && y < height - MARGIN + 0.01;
  const small = all.filter(({ size }) => size < SMALL).map(({ text }) => `small: ${text}`);
  const outside = boxes
    .filter(
      ({ left, right, top, bottom }) =>
        left < MARGIN || right > width - MARGIN || top < MARGIN || bottom > height - MARGIN,
    )
    .map(({ text }) => `outside the border: ${text}`);
  const strays = items
    .filter((item) => item.is === "line" && !item.points.every(isIn))
    .map(() => "a line outside the border");
  const over = boxes.flatMap((a, k) =>
    boxes.slice(k + 1).flatMap((b) => (meet(a, b) ? [`${a.text} | ${b.text}`] : [])),
  );
  const room = roomForLetters(page, width < NARROW ? 2 * ROW : ROW);
  return [...small, ...outside, ...strays, ...over, ...(room ? [room] : [])].map(
    (fault) => `${name}: ${fault}`,
  );
}
