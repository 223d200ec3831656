/**
 * A bow: the form that it is bent to, drawn to scale with its bores, and tables of the form's places, its feet and its bores.
 */
import type { BowForm, Piece } from "../../joinery/pieces/piece.ts";
import type { Block } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { circle, type Item, line, type Point, SMALL, words } from "./page.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { paragraphs, tableBlock } from "./table.ts";
import { marksOf } from "./wording.ts";

const scales = [1, 2, 3, 4, 5, 6, 8, 10];
/** Round the drawing, mm. */
const CLEAR = 5;

/** The drawing, as large as its share of the page holds; all of the page is enlarged `by` so much afterwards. */
export function bowDrawing(piece: Piece, wide: number, high: number, by: number): Block & { scale: number } {
  const form = piece.form!;
  const { lines, reach, rise } = outlinesOf(form, piece.size.thick);
  const fits = (size: number) => (2 * reach) / size <= wide - 2 * CLEAR && rise / size <= high - 2 * CLEAR;
  const drawn = scales.find((each) => fits(each * by)) ?? 10;
  const scale = drawn * by;
  const to = ([x, y]: Point): Point => [CLEAR + (reach + x) / scale, CLEAR + (rise - y) / scale];
  const items: Item[] = lines.map(({ spots, pen }) => line(spots.map(to), pen));
  for (const bore of form.bores) {
    const [x, y] = to(spotAt(form, bore.along));
    items.push(circle([x, y], Math.max(0.6, bore.diameter / 2 / scale), "knife"));
    items.push(words([x + 1.6, y - 1.4], bore.letter, SMALL, { bold: true }));
  }
  return { items, height: rise / scale + 2 * CLEAR, scale: drawn };
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

/** Its figures in tables. */
export function bowTables(sheet: SheetPart, wide: number, figures: Figures): Block[] {
  const [bend] = marksOf(sheet, "bend");
  if (!bend) return [];
  const ends = bend.figures["thick at the ends"]
    ? ` It tapers from the crown to ${told(bend, "thick at the ends")} × ${told(bend, "wide at the ends")} at both ends.`
    : "";
  const blocks: Block[] = [
    paragraphs(
      [
        `Bend the strip to the form: ${told(bend, "along")} ${figures.sign} along its centre line from end to end without tenons, ${told(bend, "between")} apart at the ends, no tighter than a radius of ${told(bend, "radius")} inside.${ends}`,
        HOW,
      ],
      wide,
    ),
    tableBlock(
      "The form, from the left end to the crown; the other half mirrors it",
      ["along the line", "across from the middle", "up from the ends", ""],
      marksOf(sheet, "form").map((spot) => [
        told(spot, "along"),
        told(spot, "across"),
        told(spot, "rise"),
        "",
      ]),
      wide,
    ),
  ];
  const feet = marksOf(sheet, "foot");
  if (feet.length > 0) blocks.push(tableBlock("Feet", FEET, feet.map(footRow), wide));
  const bores = marksOf(sheet, "bow-bore", "through-bow-bore");
  if (bores.length > 0)
    blocks.push(
      tableBlock(
        "Bores, along the centre line from the left end; from the right end of a mirrored pair",
        BORES,
        bores.map(boreRow),
        wide,
      ),
    );
  return blocks;
}

const HOW =
  "Steam it, hold its outside in a strap with stops at both ends, and let it set on the form. Lay it out only when it has dried and keeps its shape; bore it on the chair, against the sticks and posts, where that can be done. Steam and a strap under load can hurt.";

const FEET = ["", "into", "tenon", "long", "along it", "lean from square", ""];

const footRow = (foot: SheetMark): string[] => [
  foot.face,
  told(foot, "enters"),
  foot.figures.diameter
    ? `Ø ${told(foot, "diameter")}${foot.figures["at its end"] ? ` to Ø ${told(foot, "at its end")}` : ""}`
    : `${told(foot, "thick")} × ${told(foot, "wide")}`,
  told(foot, "long"),
  told(foot, "along it"),
  told(foot, "lean"),
  "",
];

const BORES = ["", "for", "along", "face", "bit", "deep", "leans"];

const boreRow = (bore: SheetMark): string[] => [
  told(bore, "letter"),
  told(bore, "for"),
  told(bore, "along"),
  bore.face,
  `Ø ${told(bore, "diameter")}`,
  told(bore, "deep") || "through",
  `${told(bore, "leans along")} to the ${told(bore, "leans to")}, ${told(bore, "leans across")} to the ${told(bore, "leans over")}`,
];
