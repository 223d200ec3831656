import type { Chair } from "../chair/chair.ts";
import { Figures } from "../drawing/markout/figures.ts";
import { type Item, type Pen, POINT } from "../drawing/markout/page.ts";
import { piecesAsked } from "../drawing/markout/pages.ts";
import { fullSizeDrawings } from "../drawing/markout/templates.ts";
import type { BoardDrawing, BoardLineKind } from "./board-drawings.ts";

/** Layers by what a line is, with the AutoCAD colour index and line type each has. Laser and router software cuts by layer. */
const layers: Record<Pen | "words" | BoardLineKind, { name: string; colour: number; dashed?: true }> = {
  outline: { name: "OUTLINE", colour: 7 },
  knife: { name: "KNIFE", colour: 1 },
  fine: { name: "FINE", colour: 8 },
  hidden: { name: "HIDDEN", colour: 8, dashed: true },
  datum: { name: "DATUM", colour: 5 },
  faint: { name: "FAINT", colour: 9 },
  none: { name: "FILL", colour: 9 },
  words: { name: "WORDS", colour: 3 },
  board: { name: "BOARD", colour: 7 },
  clear: { name: "CLEAR", colour: 9 },
  defect: { name: "DEFECT", colour: 6, dashed: true },
  piece: { name: "PIECE", colour: 2 },
  cut: { name: "CUT", colour: 1 },
};

/** Between drawings, mm, and the height of their titles. */
const GAP = 30;
const TITLE = 6;

/**
 * DXF R12 (AC1009, in mm) of everything that is cut to a shape, at full size, one above the other: templates, seat, curves, and the boards
 * with what is sawn from them. Undefined when the part or the chair has no such thing.
 */
export function dxf(chair: Chair, boards: readonly BoardDrawing[], part?: string): string | undefined {
  const figures = new Figures(chair.design.units);
  const out: string[] = [];
  let low = 0;
  let wide = 0;
  for (const piece of piecesAsked(chair, part)) {
    for (const { of, drawing } of fullSizeDrawings(piece, figures)) {
      const top = low - GAP;
      out.push(...text([0, top + TITLE / 2], `${piece.name}: ${of}`, TITLE, 0));
      for (const item of drawing.items) out.push(...entity(item, top));
      low = top - drawing.height - TITLE;
      wide = Math.max(wide, drawing.width);
    }
  }
  for (const board of boards) {
    low -= GAP + board.wide;
    out.push(...boardEntities(board, low));
    low -= TITLE;
    wide = Math.max(wide, board.long);
  }
  if (out.length === 0) return undefined;
  return [
    ...pairs(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009", 9, "$INSUNITS", 70, 4),
    ...pairs(9, "$EXTMIN", 10, 0, 20, number(low), 30, 0, 9, "$EXTMAX", 10, number(wide), 20, 0, 30, 0),
    ...pairs(0, "ENDSEC", 0, "SECTION", 2, "TABLES"),
    ...pairs(0, "TABLE", 2, "LTYPE", 70, 2),
    ...pairs(0, "LTYPE", 2, "CONTINUOUS", 70, 0, 3, "Solid line", 72, 65, 73, 0, 40, "0.0"),
    ...pairs(0, "LTYPE", 2, "DASHED", 70, 0, 3, "Dashed", 72, 65, 73, 2, 40, "5.0", 49, "3.0", 49, "-2.0"),
    ...pairs(0, "ENDTAB", 0, "TABLE", 2, "LAYER", 70, Object.keys(layers).length),
    ...Object.values(layers).flatMap(({ name, colour, dashed }) =>
      pairs(0, "LAYER", 2, name, 70, 0, 62, colour, 6, dashed ? "DASHED" : "CONTINUOUS"),
    ),
    ...pairs(0, "ENDTAB", 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES"),
    ...out,
    ...pairs(0, "ENDSEC", 0, "EOF"),
    "",
  ].join("\n");
}

/** A board with its lower edge at this height, its name over it. */
function boardEntities({ name, wide, lines, words }: BoardDrawing, low: number): string[] {
  return [
    ...text([0, low + wide + TITLE / 2], `Board ${name}`, TITLE, 0),
    ...lines.flatMap(({ is, points, closed }) =>
      polyline(
        layers[is].name,
        points.map(([x, y]) => [x, y + low]),
        closed,
      ),
    ),
    ...words.flatMap(({ at, text: words }) => text([at[0], at[1] + low - TITLE / 2], words, TITLE, 1)),
  ];
}

function polyline(layer: string, points: readonly (readonly [number, number])[], closed: boolean): string[] {
  return [
    ...pairs(0, "POLYLINE", 8, layer, 66, 1, 70, closed ? 1 : 0, 10, "0.0", 20, "0.0", 30, "0.0"),
    ...points.flatMap(([x, y]) => pairs(0, "VERTEX", 8, layer, 10, number(x), 20, number(y), 30, "0.0")),
    ...pairs(0, "SEQEND", 8, layer),
  ];
}

function entity(item: Item, top: number): string[] {
  if (item.is === "words") {
    const { at, text: words, size, anchor, upright } = item;
    const along = anchor === "middle" ? 1 : anchor === "end" ? 2 : 0;
    return text([at[0], top - at[1]], words, size * POINT * CAPITAL, along, upright ? 90 : 0);
  }
  return polyline(
    layers[item.pen].name,
    item.points.map(([x, y]) => [x, top - y]),
    item.closed === true,
  );
}

/** Text in DXF is as high as its capitals: this share of the size of type. */
const CAPITAL = 0.7;

function text([x, y]: [number, number], words: string, height: number, along: number, turn = 0): string[] {
  const at = [number(x), number(y)] as const;
  return [
    ...pairs(0, "TEXT", 8, layers.words.name, 10, at[0], 20, at[1], 30, "0.0", 40, number(height)),
    ...pairs(1, plain(words), 50, number(turn)),
    ...(along ? pairs(72, along, 11, at[0], 21, at[1], 31, "0.0") : []),
  ];
}

/** R12 knows ASCII, and signs of its own for degrees and diameters. */
const plain = (words: string): string =>
  words
    .replaceAll("Ø", "%%c")
    .replaceAll("°", "%%d")
    .replaceAll("×", "x")
    .replaceAll("−", "-")
    .replaceAll("″", '"')
    .replaceAll("⁄", "/")
    .replace(/[^ -~]/g, "?");

const number = (value: number): string => {
  const text = value.toFixed(6).replace(/0+$/, "");
  return text.endsWith(".") ? `${text}0` : text;
};

function pairs(...values: (number | string)[]): string[] {
  const lines: string[] = [];
  for (let k = 0; k < values.length; k += 2) lines.push(String(values[k]), String(values[k + 1]));
  return lines;
}
