import type { Kind } from "../kind.ts";
import type { Row } from "../row.ts";
import { after, choice, count, length, list, maybe, ref, seq, text, value, wood, word } from "./shapes.ts";

export const boardRows: Row[] = [
  {
    owner: "board",
    word: "size",
    shape: seq(length("long"), word("x"), length("wide"), word("x"), length("thick")),
    required: true,
    meaning: "The board's length, width and thickness as it lies at the yard, before `waste` is taken off.",
    example: "size 2400 x 180 x 32",
  },
  {
    owner: "board",
    word: "count",
    shape: count("count"),
    meaning: "How many boards there are like this one; they are called `plank.1` upward.",
    example: "count 3",
    default: "count 1",
  },
  {
    owner: "board",
    word: "wane",
    shape: length("width"),
    meaning: "How much of each long edge cannot be used: sapwood or bark.",
    example: "wane 20",
    default: "wane 0",
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
    default: "the file's timber",
  },
  {
    owner: "board",
    word: "defect",
    shape: seq(
      word("at"),
      length("at"),
      maybe(after("long", length("long"))),
      maybe(after("from", word("edge"), length("from-edge")), maybe(after("wide", length("wide")))),
      maybe(text("what")),
    ),
    many: true,
    meaning:
      "A knot, shake or split: how far it begins from the board's first end, and from its first edge, the lower one as the plan draws it. Without `long` it is 50mm long, without `from edge` right across, without `wide` to the other edge.",
    example: 'defect at 640 long 60 from edge 40 wide 35 "knot"',
  },
  {
    owner: "board",
    word: "price",
    shape: value("price"),
    meaning: "What one such board costs, a bare number in your own money.",
    example: "price 38",
  },
];

const between = (name: string, meaning: string, example: string, preset: string): Row => ({
  owner: "yard",
  word: name,
  shape: seq(length("low"), word("to"), length("high")),
  meaning,
  example,
  default: preset,
});

export const yardRows: Row[] = [
  {
    owner: "yard",
    word: "thick",
    shape: list(length("thick")),
    required: true,
    meaning: "The thicknesses the yard sells, as sawn, before planing.",
    example: "thick 27, 34, 54",
  },
  between(
    "long",
    "The shortest and the longest board the yard sells.",
    "long 2400 to 3600",
    "long 2400mm to 3600mm; in a file in inches 96in to 144in",
  ),
  between(
    "wide",
    "The narrowest and the widest board the yard sells.",
    "wide 120 to 260",
    "wide 120mm to 260mm; in a file in inches 5in to 10in",
  ),
  {
    owner: "yard",
    word: "timber",
    shape: wood,
    meaning: "The species, moisture and density of what the yard sells.",
    example: "timber white-ash moisture 11%",
    default: "the file's timber",
  },
  {
    owner: "yard",
    word: "price",
    shape: value("price"),
    meaning:
      "What a cubic metre costs, a bare number in your own money; where the file has `units in`, what a board foot costs.",
    example: "price 1400",
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
  wasteRow("saw", "The width of wood a saw cut takes.", "saw 3", "saw 3mm; in a file in inches 1/8in"),
  wasteRow(
    "plane",
    "What planing takes off each face and each edge.",
    "plane 2",
    "plane 2mm; in a file in inches 1/16in",
  ),
  wasteRow(
    "ends",
    "What is cut off each end of a board, once.",
    "ends 50",
    "ends 50mm; in a file in inches 2in",
  ),
  wasteRow(
    "jointing",
    "What is planed off each edge that is glued to another.",
    "jointing 1",
    "jointing 1mm; in a file in inches 1/32in",
  ),
];

/** `sawn from BOARD`, in every part that is sawn from a board. */
export const sawnRow = (owner: Kind, what: string): Row => ({
  owner,
  word: "sawn",
  shape: seq(word("from"), ref("board", "board")),
  meaning: `The board that ${what} sawn from; with a number, that one of several alike.`,
  example: "sawn from plank.2",
});

/** `hidden FACE, …`: faces that nobody sees, where the plan of the boards leaves defects in. */
export const hiddenRow = (owner: Kind, faces: readonly string[], example: string): Row => ({
  owner,
  word: "hidden",
  shape: list(choice("face", ...faces)),
  meaning:
    "Faces that nobody sees: a `defect` of a board may stay there, up to half the part's thickness and never at a joint. `seatwright boards` says which defect lies where.",
  example,
  default: "no face is hidden",
});
