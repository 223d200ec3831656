import type { Row } from "../row.ts";
import { sawnRow } from "./board.ts";
import { after, clauses, count, either, length, maybe, place, ref, seq, wood, word } from "./shapes.ts";

const owner = "stick";

const standing: Row[] = [
  {
    owner,
    word: "from",
    shape: seq(word("seat"), word("to"), ref("head", "to")),
    required: true,
    meaning: "From a solid seat up to the crest or the bow that holds the heads.",
    example: "from seat to crest",
  },
  {
    owner,
    word: "count",
    shape: seq(count("count"), word("even")),
    meaning:
      "How many stand in the row, or in each of a pair's; evenly along the seat's edge and along the head.",
    example: "count 7 even",
    default: "count 1",
  },
  {
    owner,
    word: "feet",
    shape: clauses(
      after("in", length("in")),
      after("behind", length("behind"), maybe(word("to"), length("to"))),
    ),
    meaning:
      "The row stands on the line this far inside the seat's outline, from where that crosses so far behind the front edge on the left, round the back, to the same place on the right; with `pair`, from the first place to the second on each side.",
    example: "feet in 34, behind 300",
  },
  {
    owner,
    word: "at",
    shape: place,
    facet: "feet",
    meaning:
      "Where one stick, or one on each side, stands on the seat's top: out from the middle of the chair and back from the front line, level.",
    example: "at out 190, back 210",
  },
  {
    owner,
    word: "heads",
    shape: either(
      after("margin", length("margin"), maybe(word("to"), length("to"))),
      after("spread", length("spread")),
    ),
    meaning:
      "Where the heads are along the crest's lower edge or the bow's centre line: the first so far from its end, foot or hand (with `pair`, from the first to the last); or so far straight across from the first to the last.",
    example: "heads margin 48",
  },
  {
    owner,
    word: "through",
    shape: seq(
      ref("bow", "through"),
      maybe(
        either(
          after("margin", length("margin"), maybe(word("to"), length("to"))),
          after("spread", length("spread")),
        ),
      ),
    ),
    meaning:
      "The sticks go on through a bow on their way up. With `margin` or `spread` the places in it and the heads set the lines, and the feet are where they meet the seat; otherwise it is bored where they pass.",
    example: "through arm-bow",
  },
];

const shaping: Row[] = [
  {
    owner,
    word: "round",
    shape: length("diameter"),
    required: true,
    meaning: "The diameter of each stick.",
    example: "round 14",
  },
  {
    owner,
    word: "taper",
    shape: seq(length("diameter"), word("to"), either(word("end", "towards"), word("ends", "towards"))),
    meaning: "Tapers each to this diameter at its head, or from the middle to both ends.",
    example: "taper 12 to end",
  },
  {
    owner,
    word: "shape",
    shape: seq(word("at"), length("station"), after("round", length("diameter"))),
    many: true,
    meaning: "The diameter at a distance from the seat; between such places it runs straight.",
    example: "shape at 150 round 16",
  },
];

const joining: Row[] = [
  {
    owner,
    word: "joined",
    shape: ref("joint", "joint"),
    meaning: "The joint at both ends.",
    example: "joined stick-tenon",
  },
  {
    owner,
    word: "end",
    shape: ref("head", "which", "seat"),
    opens: "end",
    many: true,
    meaning: "What differs at one end, named by the crest or bow it enters, or `seat`.",
    example: "end seat {",
  },
  {
    owner,
    word: "timber",
    shape: wood,
    meaning: "These sticks' own species, moisture and density.",
    example: "timber white-oak moisture 10%",
    default: "the file's timber",
  },
  sawnRow(owner, "the sticks are"),
];

export const stickRows: Row[] = [...standing, ...shaping, ...joining];
