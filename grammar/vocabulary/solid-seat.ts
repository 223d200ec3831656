import type { Row } from "../row.ts";
import { hiddenRow, sawnRow } from "./board.ts";
import {
  across,
  after,
  angle,
  choice,
  clauses,
  count,
  either,
  length,
  maybe,
  seq,
  wood,
  word,
} from "./shapes.ts";

const owner = "solid-seat";

const placing: Row[] = [
  {
    owner,
    word: "up",
    shape: length("up"),
    required: true,
    meaning: "Height above the floor of the middle of the top of its front edge.",
    example: "up 430",
  },
  {
    owner,
    word: "back",
    shape: length("back"),
    meaning: "How far the front edge lies behind the front line, at the middle.",
    example: "back 15",
    default: "back 0",
  },
  {
    owner,
    word: "fall",
    shape: length("fall"),
    meaning: "How much lower the back edge is than the front edge, at the middle.",
    example: "fall 12",
    default: "fall 0",
  },
  {
    owner,
    word: "slope",
    shape: angle("angle"),
    facet: "fall",
    meaning: "The angle at which the seat falls to the back.",
    example: "slope 2deg",
  },
  {
    owner,
    word: "thick",
    shape: length("length"),
    required: true,
    meaning: "The seat's thickness, square to its top.",
    example: "thick 44",
  },
];

const outline: Row[] = [
  {
    owner,
    word: "deep",
    shape: length("length"),
    meaning: "From the front edge to the back edge along the top, at the middle. A round seat has none.",
    example: "deep 400",
  },
  {
    owner,
    word: "wide",
    shape: seq(length("wide"), word("at"), length("station"), maybe(word("straight", "straight"))),
    facet: "wide",
    required: true,
    many: true,
    meaning:
      "The full width of the top this far behind the front edge; two at least, from the front to the back, with a fair curve through them, or `straight` from the one before. The first and the last are the corners: the front edge is an arc through the first two corners and the middle at 0, the back edge one through the last two and the middle at `deep`.",
    example: "wide 440 at 150",
  },
  {
    owner,
    word: "round",
    shape: length("diameter"),
    facet: "round",
    insteadOf: ["wide"],
    meaning: "A round seat and its diameter.",
    example: "round 320",
  },
  {
    owner,
    word: "corner",
    shape: either(length("both"), clauses(after("front", length("front")), after("back", length("back")))),
    meaning: "The radius to which the corners are rounded, all of them or those in front and behind.",
    example: "corner front 25, back 40",
    default: "corner 0",
  },
  {
    owner,
    word: "tail",
    shape: across("width", "length"),
    meaning: "A tongue behind the middle of the back edge: its width and how far it runs behind `deep`.",
    example: "tail 90 x 60",
  },
];

const shaped: Row[] = [
  {
    owner,
    word: "hollow",
    shape: seq(
      length("hollow"),
      maybe(word("over"), length("over")),
      maybe(word("open", "open"), word("front")),
      word(","),
      word("rim"),
      length("rim"),
    ),
    meaning:
      "The sitting surface is hollowed this deep inside a plain rim, as wide as the last figure; over that length, 8 depths unless given, it falls away from the rim in a fair curve. `open front` lets it run out at the front edge.",
    example: "hollow 12 over 100, rim 50",
  },
  {
    owner,
    word: "bevel",
    shape: seq(across("width", "depth"), choice("face", "below", "above")),
    many: true,
    meaning:
      "Takes a bevel off the edge all round: so much off the lower or the upper face, by so much off the edge.",
    example: "bevel 25 x 14 below",
  },
];

const wooden: Row[] = [
  {
    owner,
    word: "grain",
    shape: choice("grain", "fore-and-aft", "across"),
    meaning: "Which way the seat's grain runs.",
    example: "grain across",
    default: "grain fore-and-aft",
  },
  {
    owner,
    word: "boards",
    shape: count("count"),
    meaning: "How many boards of equal width the seat is jointed of, edge to edge.",
    example: "boards 3",
    default: "boards 1",
  },
  {
    owner,
    word: "timber",
    shape: wood,
    meaning: "The seat's own species, moisture and density.",
    example: "timber american-elm moisture 9%",
    default: "the file's timber",
  },
  sawnRow(owner, "the seat is"),
  hiddenRow(owner, ["below"], "hidden below"),
];

export const solidSeatRows: Row[] = [...placing, ...outline, ...shaped, ...wooden];
