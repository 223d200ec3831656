/**
 * Whether a page of sheets with letters under 2.5 mm has room for larger ones, found from what is on it alone (ISO 3098-1 has 2.5 mm among
 * its heights of capitals).
 */
import { widthOf } from "../../../../server/drawing/markout/lettering.ts";
import {
  type Item,
  type Page,
  POINT,
  type Point,
  type Words,
} from "../../../../server/drawing/markout/page.ts";
import { MARGIN } from "../../../../server/drawing/markout/paper.ts";

/** Height of capitals of type of so many points, mm: in Noto Sans 714 thousandths of the type's (its OS/2 table). */
export const capitals = (size: number): number => 0.714 * size * POINT;

const WANTED = 2.5;
/** From one line of words to the next, in heights of capitals, small letters that hang below a line included (ISO 3098-1, from memory). */
const APART = 1.5;

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const largeEnough = ({ size }: Words): boolean => capitals(size) >= WANTED;

/** What words cover in capitals of their own height, or of that height. */
function boxOf({ at: [x, y], text, size, bold, anchor, upright }: Words, high = capitals(size)): Box {
  const long = (widthOf(text, size, bold) * high) / capitals(size);
  const back = anchor === "middle" ? long / 2 : anchor === "end" ? long : 0;
  return upright
    ? { left: x - high, right: x, top: y + back - long, bottom: y + back }
    : { left: x - back, right: x - back + long, top: y - high, bottom: y };
}

const meet = (a: Box, b: Box): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.1 &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.1;

/**
 * How a page could have larger letters: all that is drawn on it so much larger, or each small word larger in its place. Undefined where all its
 * letters are large enough, or where there is no room.
 */
export function roomForLetters(page: Page, titleBlock: number): string | undefined {
  const words = page.items.filter((item) => item.is === "words");
  const small = words.filter((each) => !largeEnough(each));
  if (small.length === 0) return undefined;
  if (!page.fullSize && fitsEnlarged(page, titleBlock)) return "all of it has room larger";
  return growInPlace(page, words, small) ? "each word has room larger in its place" : undefined;
}

/** Whether what is drawn above the title block, enlarged until its smallest letters are large enough, is still above it. */
function fitsEnlarged({ width, height, items }: Page, titleBlock: number): boolean {
  const foot = height - MARGIN - titleBlock;
  const drawn = items.filter((item) => boundsOf(item).bottom < foot - 0.05 && !isBorder(item, height));
  const smallest = Math.min(...drawn.map((item) => (item.is === "words" ? capitals(item.size) : WANTED)));
  if (smallest >= WANTED || drawn.length === 0) return false;
  const by = WANTED / smallest;
  const bounds = drawn.map(boundsOf);
  const wide = Math.max(...bounds.map(({ right }) => right)) - Math.min(...bounds.map(({ left }) => left));
  const high = Math.max(...bounds.map(({ bottom }) => bottom)) - Math.min(...bounds.map(({ top }) => top));
  return wide * by <= width - 2 * MARGIN - 6 && high * by <= foot - MARGIN - 6;
}

const isBorder = (item: Item, height: number): boolean =>
  item.is === "line" && item.points.some(([, y]) => y >= height - MARGIN - 0.05);

function boundsOf(item: Item): Box {
  if (item.is === "words") return boxOf(item);
  const [xs, ys] = [item.points.map(([x]) => x), item.points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Whether all small words of a page could be large enough where they stand, on nothing that they are not on as they are. */
function growInPlace(
  { width, height, items }: Page,
  words: readonly Words[],
  small: readonly Words[],
): boolean {
  const grown = new Map(words.map((each) => [each, boxOf(each, Math.max(WANTED, capitals(each.size)))]));
  const lines = items.filter((item) => item.is === "line" && item.pen !== "none");
  return small.every((each) => {
    const box = grown.get(each)!;
    if (box.left < MARGIN || box.right > width - MARGIN || box.top < MARGIN || box.bottom > height - MARGIN)
      return false;
    const under = WANTED * (APART - 1);
    const line = each.upright ? { ...box, right: box.right + under } : { ...box, bottom: box.bottom + under };
    if (words.some((other) => other !== each && meet(line, grown.get(other)!))) return false;
    const before = boxOf(each);
    return !lines.some((line) => crosses(line, box) && !crosses(line, before));
  });
}

function crosses(item: Item, box: Box): boolean {
  if (item.is === "words") return false;
  const points = item.closed ? [...item.points, item.points[0]!] : item.points;
  return points.some((q, k) => k > 0 && runsThrough(points[k - 1]!, q, box));
}

/** Whether a stretch of a line lies in a box: looked at every half millimetre of it. */
function runsThrough([ax, ay]: Point, [bx, by]: Point, { left, right, top, bottom }: Box): boolean {
  if (Math.max(ax, bx) < left || Math.min(ax, bx) > right) return false;
  if (Math.max(ay, by) < top || Math.min(ay, by) > bottom) return false;
  const count = Math.ceil(Math.hypot(bx - ax, by - ay) / 0.5) + 1;
  return Array.from({ length: count + 1 }, (_, k) => k / count).some((t) => {
    const [x, y] = [ax + (bx - ax) * t, ay + (by - ay) * t];
    return x > left && x < right && y > top && y < bottom;
  });
}
