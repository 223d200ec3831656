import type { Row } from "../row.ts";
import { after, choice, length, maybe, seq, text, value, wood, word } from "./shapes.ts";

export const boardRows: Row[] = [
  {
    owner: "board",
    word: "size",
    shape: seq(length("long"), word("x"), length("wide"), word("x"), length("thick")),
    meaning: "The board's length, width and thickness.",
    example: "size 2400 x 180 x 32",
  },
  {
    owner: "board",
    word: "grain",
    shape: choice("grain", "quarter", "flat", "rift"),
    meaning: "How the board was sawn from the log.",
    example: "grain quarter",
  },
  {
    owner: "board",
    word: "timber",
    shape: wood,
    meaning: "The board's species, moisture and density.",
    example: "timber white-ash moisture 11%",
  },
  {
    owner: "board",
    word: "defect",
    shape: seq(
      word("at"),
      length("at"),
      maybe(after("long", length("long"))),
      maybe(after("from", word("edge"), length("from-edge"))),
      maybe(text("what")),
    ),
    many: true,
    meaning: "A knot, shake or split, at this distance from the board's first end.",
    example: 'defect at 640 long 60 "knot"',
  },
  {
    owner: "board",
    word: "price",
    shape: value("price"),
    meaning: "What the board costs, a bare number in your own money.",
    example: "price 38",
  },
];

const wasteRow = (name: string, meaning: string, example: string, preset: string): Row => ({
  owner: "waste",
  word: name,
  shape: length("length"),
  meaning,
  example,
  default: preset,
});

export const wasteRows: Row[] = [
  wasteRow("saw", "The width of wood a saw cut takes.", "saw 3", "saw 3mm"),
  wasteRow("plane", "What planing takes off each face.", "plane 2", "plane 2mm"),
  wasteRow("ends", "What is cut off each end of a board.", "ends 50", "ends 50mm"),
];
