/**
 * The page that every sheet stands on: a border, and a title block along its foot with the fields of ISO 7200, in a layout of our own.
 */
import { linesOf, shortened, widthOf } from "./lettering.ts";
import { BODY, type Item, LARGE, line, moved, type Page, type Point, SMALL, words } from "./page.ts";
import { MARGIN, type Paper } from "./paper.ts";

/** Height of the title block, mm; on a narrow sheet it has two rows. */
const ROW = 22;
const NARROW = 240;
/** From the border to what is drawn. */
const INSIDE = 3;
/** Widths of what stands at the right: who owns, made and passed it; date and text; the sheet's number. */
const PEOPLE = 42;
const ISSUE = 26;
const SHEET = 23;
/** How much of what those leave the part's name has, the shares that are tried first first; scale and caution have the rest. */
const SHARES = [0.43, 0.36, 0.3];
/** How words may be set, the largest first: type in points, from one line to the next in mm, how many lines there may be. */
interface Setting {
  size: number;
  step: number;
  most: number;
}
const ABOUT: readonly Setting[] = [
  { size: LARGE, step: 4.2, most: 2 },
  { size: SMALL, step: 3.1, most: 2 },
];
const CAUTION: readonly Setting[] = [
  { size: LARGE, step: 3.95, most: 4 },
  { size: 8.4, step: 3.6, most: 4 },
  { size: SMALL, step: 3.1, most: 5 },
];

export interface Titles {
  chair: string;
  part: string;
  /** Quantity, timber and what else belongs under the part's name. */
  about: string;
  /** Scale and unit: `Drawn 1 : 3. Figures in mm.` */
  scale: string;
  caution: string;
  sheet: string;
  /** The day that the sheets are of, and the short hash of the text they are made from. */
  date?: string;
  text?: string;
}

/** A page before it is known how many there are. */
export interface Unnumbered {
  titles: Pick<Titles, "part" | "about" | "scale" | "caution">;
  items: Item[];
  page: Pick<Page, "name" | "fullSize">;
  /** It stands on its short side. */
  upright?: true;
}

const isNarrow = ({ width }: Paper): boolean => width < NARROW;

/** The room inside a sheet's border and above its title block. */
export const roomOn = (paper: Paper): { wide: number; high: number } => ({
  wide: paper.width - 2 * MARGIN - 2 * INSIDE,
  high: paper.height - 2 * MARGIN - (isNarrow(paper) ? 2 : 1) * ROW - 2 * INSIDE,
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
  const box: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return {
    width,
    height,
    ...page,
    items: [
      ...items.map((item) => moved(item, left + INSIDE, top + INSIDE)),
      line(box, "knife", { closed: true }),
      ...(isNarrow(paper) ? twoRows(titles, left, right, bottom) : oneRow(titles, left, right, bottom)),
    ],
  };
}

/** Chair and part on the left, scale and caution in the middle, the rest on the right. */
function oneRow(titles: Titles, left: number, right: number, bottom: number): Item[] {
  const head = bottom - ROW;
  const fixed = right - SHEET - ISSUE - PEOPLE;
  const fields = SHARES.map((share) => {
    const second = left + (fixed - left) * share;
    return {
      second,
      items: [...named(titles, left, head, second - left), ...warned(titles, second, head, fixed - second)],
    };
  });
  const { second, items } = fields.find((each) => each.items.every(isLarge)) ?? fields[0]!;
  return [
    level(left, right, head),
    ...[second, fixed, fixed + PEOPLE, fixed + PEOPLE + ISSUE].map((x) => upright(x, head, bottom)),
    ...items,
    ...people(fixed, head),
    ...issued(titles, fixed + PEOPLE, head),
    ...numbered(titles, fixed + PEOPLE + ISSUE, head),
  ];
}

function twoRows(titles: Titles, left: number, right: number, bottom: number): Item[] {
  const [head, middle] = [bottom - 2 * ROW, bottom - ROW];
  const issue = right - SHEET - ISSUE;
  const persons = right - PEOPLE;
  return [
    level(left, right, head),
    level(left, right, middle),
    upright(issue, head, middle),
    upright(issue + ISSUE, head, middle),
    upright(persons, middle, bottom),
    ...named(titles, left, head, issue - left),
    ...issued(titles, issue, head),
    ...numbered(titles, issue + ISSUE, head),
    ...warned(titles, left, middle, persons - left),
    ...people(persons, middle),
  ];
}

const level = (from: number, to: number, y: number): Item =>
  line(
    [
      [from, y],
      [to, y],
    ],
    "knife",
  );

const upright = (x: number, from: number, to: number): Item =>
  line(
    [
      [x, from],
      [x, to],
    ],
    "fine",
  );

function named({ chair, part, about }: Titles, x: number, y: number, wide: number): Item[] {
  const room = wide - 4;
  return [
    words([x + 2, y + 6], shortened(part, 12, room, true), 12, { bold: true }),
    ...set([about], ABOUT, [x + 2, y + 10.6], room),
    words([x + 2, y + 18.8], shortened(chair, 10, room), 10),
  ];
}

function warned({ scale, caution }: Titles, x: number, y: number, wide: number): Item[] {
  const room = wide - 4;
  const size = widthOf(scale, LARGE) <= room ? LARGE : BODY;
  return [
    words([x + 2, y + 4.4], shortened(scale, size, room), size),
    ...set(caution.split("\n"), CAUTION, [x + 2, y + 8.6], room),
  ];
}

const isLarge = (item: Item): boolean =>
  item.is === "line" || (item.size >= LARGE && !item.text.endsWith("…"));

/**
 * Sentences in the largest type that all their lines have room in, each on lines of its own or, where that is too many, run on; in the smallest
 * the lines beyond are left out.
 */
function set(
  sentences: readonly string[],
  settings: readonly Setting[],
  [x, y]: Point,
  room: number,
): Item[] {
  const ways = [sentences, [sentences.join(" ")]];
  const tries = settings.flatMap((setting) => ways.map((way) => ({ ...setting, way })));
  const made = tries.map(({ size, step, most, way }) => {
    const lines = way.flatMap((text) => linesOf(text, size, room));
    const fits = lines.length <= most && lines.every((text) => widthOf(text, size) <= room);
    return { size, step, most, lines, fits };
  });
  const { size, step, most, lines } = made.find(({ fits }) => fits) ?? made[made.length - 1]!;
  return lines.slice(0, most).map((text, k) => words([x, y + k * step], shortened(text, size, room), size));
}

/** Ruled blanks, to be filled in by hand. */
const people = (x: number, y: number): Item[] =>
  ["Owner", "Drawn by", "Approved"].flatMap((text, k) => {
    const foot = y + 5.6 + k * 6.8;
    return [words([x + 2, foot], text, LARGE), ...rule(x + 20, x + PEOPLE - 2, foot)];
  });

const rule = (from: number, to: number, y: number): Item[] => [
  line(
    [
      [from, y + 0.4],
      [to, y + 0.4],
    ],
    "fine",
  ),
];

function issued({ date, text }: Titles, x: number, y: number): Item[] {
  const field = (name: string, value: string | undefined, foot: number): Item[] => [
    words([x + 2, foot], name, LARGE),
    ...(value === undefined
      ? rule(x + 2, x + ISSUE - 2, foot + 5)
      : [words([x + 2, foot + 4.4], value, LARGE)]),
  ];
  return [...field("Date", date, y + 4.4), ...field("Text", text, y + 14)];
}

const numbered = ({ sheet }: Titles, x: number, y: number): Item[] => [
  words([x + 2, y + 4.4], "Sheet", LARGE),
  words([x + 2, y + 10.4], shortened(sheet, 11, SHEET - 3, true), 11, { bold: true }),
];
