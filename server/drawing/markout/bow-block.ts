/**
 * A bow: the form that it is bent to, drawn to scale with its bores, and tables of the form's places, its feet and its bores.
 */
import type { BowBore, BowForm, Piece } from "../../joinery/pieces/piece.ts";
import type { Block } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { widthOf } from "./lettering.ts";
import { circle, type Item, line, moved, type Point, SMALL, words } from "./page.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { paragraphs, tableBlock } from "./table.ts";
import { leansOf, marksOf } from "./wording.ts";

const scales = [1, 2, 3, 4, 5, 6, 8, 10];
/** Round the drawing, mm. */
const CLEAR = 5;
/** From the bow to the middle of a letter beside it, mm. */
const LETTER = 2.2;

/** The drawing with the form's places beside it where there is room, and the tables under it. */
export function bowBlocks(
  piece: Piece,
  sheet: SheetPart,
  { wide, high, by }: { wide: number; high: number; by: number },
  figures: Figures,
): { drawing: Block & { scale: number }; below: Block[] } {
  const drawing = bowDrawing(piece, wide, high, by);
  const below = bowTables(sheet, wide, figures);
  const places = formTable(sheet, wide - drawing.wide - CLEAR);
  const reach = places.items.map((item) =>
    item.is === "words" ? item.at[0] + widthOf(item.text, item.size, item.bold) : 0,
  );
  if (Math.max(...reach) > wide - drawing.wide - CLEAR)
    return { drawing, below: [...below.slice(0, 1), formTable(sheet, wide), ...below.slice(1)] };
  const beside = places.items.map((item) => moved(item, drawing.wide + CLEAR, 0));
  return {
    drawing: {
      ...drawing,
      items: [...drawing.items, ...beside],
      height: Math.max(drawing.height, places.height),
    },
    below,
  };
}

/** The drawing, as large as its share of the page holds; all of the page is enlarged `by` so much afterwards. */
function bowDrawing(
  piece: Piece,
  wide: number,
  high: number,
  by: number,
): Block & { scale: number; wide: number } {
  const form = piece.form!;
  const { lines, reach, rise } = outlinesOf(form, piece.size.thick);
  const fits = (size: number) => (2 * reach) / size <= wide - 2 * CLEAR && rise / size <= high - 2 * CLEAR;
  const drawn = scales.find((each) => fits(each * by)) ?? 10;
  const scale = drawn * by;
  const to = ([x, y]: Point): Point => [CLEAR + (reach + x) / scale, CLEAR + (rise - y) / scale];
  const items: Item[] = lines.map(({ spots, pen }) => line(spots.map(to), pen));
  for (const bore of form.bores) {
    items.push(circle(to(boreAt(form, bore)), Math.max(0.6, bore.diameter / 2 / scale), "knife"));
    const [x, y] = to(boreAt(form, { ...bore, off: piece.size.thick / 2 + LETTER * scale }));
    items.push(words([x, y + LETTER / 2], bore.letter, SMALL, { bold: true, anchor: "middle" }));
  }
  for (const [k, end] of ["left end", "right end"].entries()) {
    const [x, y] = to([form.between / (k ? -2 : 2), 0]);
    items.push(words([x, y + CLEAR - 0.6], end, SMALL, { anchor: "middle" }));
  }
  return { items, height: rise / scale + 2 * CLEAR, scale: drawn, wide: (2 * reach) / scale + 2 * CLEAR };
}

/** Outlines of the bow in its plane, both halves, and its centre line; and the room that they take, mm. */
export function outlinesOf(
  form: BowForm,
  thick: number,
): { lines: { spots: Point[]; pen: "outline" | "datum" }[]; reach: number; rise: number } {
  const half = form.spots.map(({ across, rise }): Point => [across, rise]);
  const whole = [
    ...half,
    ...half
      .slice(0, -1)
      .reverse()
      .map(([x, y]): Point => [-x, y]),
  ];
  const side = (sign: number): Point[] =>
    whole.map(([x, y], k) => {
      const [a, b] = [whole[Math.max(0, k - 1)]!, whole[Math.min(whole.length - 1, k + 1)]!];
      const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const share = Math.abs((2 * k) / (whole.length - 1) - 1);
      const t = (thick + ((form.ends?.thick ?? thick) - thick) * share) / 2;
      return [x + (sign * t * (b[1] - a[1])) / size, y - (sign * t * (b[0] - a[0])) / size];
    });
  const sides = [side(1), side(-1)];
  const all = sides.flat();
  return {
    lines: [
      { spots: sides[0]!, pen: "outline" },
      { spots: sides[1]!, pen: "outline" },
      { spots: whole, pen: "datum" },
    ],
    reach: Math.max(...all.map(([x]) => Math.abs(x))),
    rise: Math.max(...all.map(([, y]) => y)),
  };
}

/** A place of the centre line. */
export function spotAt({ spots, along: whole }: BowForm, along: number): Point {
  const near = along > whole / 2 ? whole - along : along;
  const next = Math.max(
    1,
    spots.findIndex((spot) => spot.along >= near - 1e-9),
  );
  const [a, b] = [spots[next - 1]!, spots[next]!];
  const share = (near - a.along) / (b.along - a.along);
  const [x, y] = [a.across + (b.across - a.across) * share, a.rise + (b.rise - a.rise) * share];
  return [along > whole / 2 ? -x : x, y];
}

/** Where a bore is marked, seen square to the bow's plane. */
export function boreAt(form: BowForm, { along, off }: BowBore): Point {
  const [[a, b], [x, y], [c, d]] = [-1, 0, 1].map((step) => spotAt(form, along + step)) as [
    Point,
    Point,
    Point,
  ];
  const size = Math.hypot(c - a, d - b);
  return [x + (off * (d - b)) / size, y - (off * (c - a)) / size];
}

/** Its figures in words and tables, without the form's places. */
function bowTables(sheet: SheetPart, wide: number, figures: Figures): Block[] {
  const [bend] = marksOf(sheet, "bend");
  if (!bend) return [];
  const ends = bend.figures["thick at the ends"]
    ? ` It tapers from the crown to ${told(bend, "thick at the ends")} × ${told(bend, "wide at the ends")} at both ends.`
    : "";
  const leans = ["outside", "inside"]
    .filter((way) => bend.figures[`ends lean to ${way}`])
    .map((way) => `, where it leans ${told(bend, `ends lean to ${way}`)} to the ${way}`);
  const blocks: Block[] = [
    paragraphs(
      [
        `Bend the strip to the form: ${told(bend, "along")} ${figures.sign} along its centre line from end to end without tenons, ${told(bend, "between")} apart at the ends${leans}, no tighter than a radius of ${told(bend, "radius")} inside.${ends}`,
        HOW,
      ],
      wide,
    ),
  ];
  const feet = marksOf(sheet, "foot");
  if (feet.length > 0) blocks.push(tableBlock("Feet", FEET, feet.map(footRow), wide));
  const bores = marksOf(sheet, "bow-bore", "through-bow-bore");
  if (bores.length > 0)
    blocks.push(
      tableBlock(
        "Bores, where the bit goes in; along the centre line from the left end, squared over to the face",
        BORES,
        bores.map(boreRow),
        wide,
      ),
    );
  return blocks;
}

const FORM = ["along", "across", "rise"];

const formTable = (sheet: SheetPart, wide: number): Block =>
  tableBlock(
    "The form to the crown; the other half mirrors it",
    [
      "along the line",
      "from the middle",
      "from the ends up",
      "along the line",
      "from the middle",
      "from the ends up",
    ],
    twoByTwo(marksOf(sheet, "form").map((spot) => FORM.map((name) => told(spot, name)))),
    wide,
  );

/** Two rows on each line, the second half beside the first. */
const twoByTwo = (rows: string[][]): string[][] => {
  const half = Math.ceil(rows.length / 2);
  return rows.slice(0, half).map((row, k) => [...row, ...(rows[half + k] ?? FORM.map(() => ""))]);
};

const HOW =
  "Steam it, hold its outside in a strap with stops at both ends, and let it set on the form. Lay it out only when it has dried and keeps its shape; bore it on the chair, against the sticks and posts, where that can be done. Steam and a strap under load can hurt.";

const FEET = ["", "into", "tenon", "long", "along it", "shoulder, from square", ""];

const footRow = (foot: SheetMark): string[] => [
  foot.face,
  told(foot, "enters"),
  foot.figures.diameter
    ? `Ø ${told(foot, "diameter")}${foot.figures["at its end"] ? ` to Ø ${told(foot, "at its end")}` : ""}`
    : `${told(foot, "thick")} × ${told(foot, "wide")}`,
  told(foot, "long"),
  told(foot, "along it"),
  Object.entries(foot.figures)
    .filter(([name]) => name.startsWith("longer "))
    .map(([name, { text }]) => `${text} longer to the ${name.slice("longer to ".length)}`)
    .join(", "),
  "",
];

const BORES = ["", "for", "along", "face", "bit", "deep", "leans"];

const boreRow = (bore: SheetMark): string[] => [
  told(bore, "letter"),
  told(bore, "for"),
  told(bore, "along"),
  bore.figures.in
    ? `${bore.face}, ${told(bore, "in")} from the ${told(bore, "beside")}`
    : `${bore.face}, ${told(bore, "round")} round to the ${told(bore, "beside")}`,
  `Ø ${told(bore, "diameter")}`,
  told(bore, "deep") || "through",
  leansOf(bore).join("; "),
];
