/**
 * The page that every sheet stands on: a border, and a title block along its foot.
 */
import { shortened } from "./lettering.ts";
import { BODY, type Item, line, moved, type Page, type Point, SMALL, words } from "./page.ts";
import { MARGIN, type Paper } from "./paper.ts";

/** Height of the title block, mm. */
const TITLE = 14;
/** From the border to what is drawn. */
const INSIDE = 3;

export interface Titles {
  chair: string;
  part: string;
  /** Quantity, timber and what else belongs under the part's name. */
  about: string;
  /** Scale and unit: `Drawn 1 : 3. Figures in mm.` */
  scale: string;
  caution: string;
  sheet: string;
}

/** A page before it is known how many there are. */
export interface Unnumbered {
  titles: Omit<Titles, "sheet" | "chair">;
  items: Item[];
  page: Pick<Page, "name" | "fullSize">;
}

/** The room inside a sheet's border and above its title block. */
export const roomOn = (paper: Paper): { wide: number; high: number } => ({
  wide: paper.width - 2 * MARGIN - 2 * INSIDE,
  high: paper.height - 2 * MARGIN - TITLE - 2 * INSIDE,
});

/** What is drawn in that room, put on a page with its titles. */
export function sheetPage(
  paper: Paper,
  titles: Titles,
  items: readonly Item[],
  page: Pick<Page, "name" | "fullSize">,
): Page {
  const { width, height } = paper;
  const [left, right, top, bottom] = [MARGIN, width - MARGIN, MARGIN, height - MARGIN];
  const head = bottom - TITLE;
  const box: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  const wide = right - left;
  // Chair and part on the left, scale and caution in the middle, the sheet's number on the right.
  const [second, third] = [left + wide * 0.4, right - 24];
  const rule = (x: number): Item =>
    line(
      [
        [x, head],
        [x, bottom],
      ],
      "fine",
    );
  const put = (x: number, y: number, text: string, size: number, room: number, bold?: true): Item =>
    words([x + 2, head + y], shortened(text, size, room - 4, bold), size, bold ? { bold } : {});
  return {
    width,
    height,
    ...page,
    items: [
      ...items.map((item) => moved(item, left + INSIDE, top + INSIDE)),
      line(box, "knife", { closed: true }),
      line(
        [
          [left, head],
          [right, head],
        ],
        "knife",
      ),
      rule(second),
      rule(third),
      put(left, 5.4, titles.part, 12, second - left, true),
      put(left, 9.4, titles.about, SMALL, second - left),
      put(left, 12.7, titles.chair, SMALL, second - left),
      put(second, 4.6, titles.scale, BODY, third - second),
      ...captions(titles.caution, second, head, third - second),
      put(third, 5.4, "Sheet", SMALL, 24),
      put(third, 10.4, titles.sheet, 11, 24, true),
    ],
  };
}

function captions(caution: string, x: number, head: number, room: number): Item[] {
  return caution
    .split("\n")
    .map((text, k) => words([x + 2, head + 8.6 + k * 3.3], shortened(text, SMALL, room - 4), SMALL));
}
