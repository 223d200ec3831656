import type { Row } from "../row.ts";
import { hiddenRow, sawnRow } from "./board.ts";
import { across, choice, count, length, list, ref, seq, wood, word } from "./shapes.ts";

export const slatRows: Row[] = [
  {
    owner: "slat",
    word: "from",
    shape: seq(ref("rail", "from"), word("to"), ref("rail", "to")),
    required: true,
    meaning: "The two rails that the slats run between.",
    example: "from back-lower to crest",
  },
  {
    owner: "slat",
    word: "count",
    shape: seq(count("count"), word("even")),
    facet: "count",
    required: true,
    meaning: "How many, with equal gaps on each rail by itself.",
    example: "count 4 even",
  },
  {
    owner: "slat",
    word: "at",
    shape: list(length("station")),
    facet: "count",
    meaning:
      "Where the slats stand: distances or shares along the first rail, from its first shoulder to each slat's middle.",
    example: "at 60, 120, 180",
  },
  {
    owner: "slat",
    word: "section",
    shape: across("thickness", "width"),
    required: true,
    meaning: "Each slat's thickness by its width.",
    example: "section 9 x 38",
  },
  {
    owner: "slat",
    word: "round",
    shape: length("diameter"),
    facet: "section",
    meaning: "The diameter of turned spindles.",
    example: "round 14",
  },
  {
    owner: "slat",
    word: "bow",
    shape: seq(length("rise"), choice("towards", "back", "front", "out", "in")),
    meaning: "Curves the slats: how far they rise at the middle from the straight between their shoulders.",
    example: "bow 12 back",
  },
  {
    owner: "slat",
    word: "joined",
    shape: ref("joint", "joint"),
    meaning: "The joint at both ends.",
    example: "joined slat-tenon",
  },
  {
    owner: "slat",
    word: "end",
    shape: ref("rail", "which"),
    opens: "end",
    many: true,
    meaning: "What differs at one end, named by the rail it enters.",
    example: "end crest {",
  },
  {
    owner: "slat",
    word: "timber",
    shape: wood,
    meaning: "These slats' own species, moisture and density.",
    example: "timber white-oak moisture 10%",
    default: "the file's timber",
  },
  sawnRow("slat", "the slats are"),
  hiddenRow("slat", ["inside", "outside", "top", "bottom"], "hidden inside"),
];
