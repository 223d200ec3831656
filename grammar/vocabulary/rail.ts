import type { Row } from "../row.ts";
import { hiddenRow, sawnRow } from "./board.ts";
import { railRestRows } from "./rests.ts";
import {
  across,
  after,
  angle,
  choice,
  count,
  either,
  length,
  list,
  maybe,
  ref,
  seq,
  wood,
  word,
} from "./shapes.ts";

const owner = "rail";

const course: Row[] = [
  {
    owner,
    word: "across",
    shape: seq(ref("part", "of"), maybe(word("at"), length("station"))),
    facet: "course",
    required: true,
    meaning:
      "From the left one of a pair of posts to the right, or between a pair of rails at a distance along them.",
    example: "across front",
  },
  {
    owner,
    word: "from",
    shape: seq(
      ref("part", "from"),
      maybe(word("at"), length("station-from")),
      word("to"),
      ref("part", "to"),
      maybe(word("at"), length("station-to")),
    ),
    facet: "course",
    meaning: "From one post to another, or between rails at a distance along them; each side has its own.",
    example: "from front to back",
  },
  {
    owner,
    word: "over",
    shape: ref("post", "of"),
    facet: "course",
    meaning:
      "Lies centred on the tops of a pair of posts; or across the chair on the top of one, as `long` says.",
    example: "over back",
  },
  {
    owner,
    word: "carried",
    shape: seq(word("by"), list(ref("stick", "stick"))),
    facet: "course",
    meaning:
      "A crest that stands on sticks alone: `up`, `back`, `rake` and `long` place it, and it may have a `bow`.",
    example: "carried by back-stick",
  },
  {
    owner,
    word: "overhang",
    shape: length("length"),
    meaning: "How far a rail that lies over posts runs past their centre lines at each end.",
    example: "overhang 30",
    default: "overhang 0",
  },
];

const setting: Row[] = [
  {
    owner,
    word: "section",
    shape: across("thickness", "width"),
    required: true,
    meaning: "The rail's thickness by its width.",
    example: "section 22 x 70",
  },
  {
    owner,
    word: "round",
    shape: length("diameter"),
    facet: "section",
    meaning: "The diameter of a turned rail; its `up` is its axis.",
    example: "round 22",
  },
  {
    owner,
    word: "up",
    shape: list(length("up")),
    meaning:
      "Height of the top edge at the first shoulder; several heights make a ladder of rails. Of a crest carried by sticks, that of the middle of its lower edge.",
    example: "up 190",
    default: "the middle of the two rails that a cross rail joins",
  },
  {
    owner,
    word: "count",
    shape: seq(count("count"), word("even"), word("from"), length("low"), word("to"), length("high")),
    facet: "up",
    meaning: "Repeats the rail evenly between two heights; the lowest is number 1.",
    example: "count 4 even from 560 to 920",
  },
  {
    owner,
    word: "fall",
    shape: length("fall"),
    facet: "fall",
    meaning: "How much lower the second end is than the first.",
    example: "fall 15",
    default: "fall 0",
  },
  {
    owner,
    word: "slope",
    shape: angle("angle"),
    facet: "fall",
    meaning: "The angle at which the rail falls towards its second end.",
    example: "slope 2deg",
  },
  {
    owner,
    word: "lie",
    shape: word("flat", "flat"),
    meaning: "The rail lies with its face level, as an arm does.",
    example: "lie flat",
  },
  {
    owner,
    word: "face",
    shape: either(
      word("flush", "face"),
      seq(word("inset", "face"), length("inset")),
      word("centred", "face"),
    ),
    meaning:
      "Where the outside face lies at the shoulders: flush with the posts' outside faces, inset from them, or the rail centred on the posts.",
    example: "face inset 3",
    default: "face centred",
  },
  {
    owner,
    word: "stand",
    shape: either(word("plumb", "stand"), seq(word("with", "stand"), word("posts"))),
    meaning: "Whether the rail stands plumb or leans with its posts.",
    example: "stand with posts",
    default: "stand plumb",
  },
];

const shaping: Row[] = [
  {
    owner,
    word: "arch",
    shape: seq(length("rise"), either(word("below", "edge"), word("above", "edge"))),
    many: true,
    meaning:
      "Hollows the lower edge, or crowns the top, by this much at the middle; the width is that of the ends.",
    example: "arch 14 below",
  },
  {
    owner,
    word: "bow",
    shape: seq(length("rise"), choice("towards", "back", "front", "out", "in")),
    meaning:
      "Curves the rail: how far the outside face rises at the middle from the straight between its shoulders.",
    example: "bow 22 back",
  },
  {
    owner,
    word: "taper",
    shape: seq(
      either(across("thickness", "width"), length("diameter")),
      word("to"),
      either(word("end", "towards"), word("ends", "towards")),
    ),
    meaning:
      "Tapers the section to this one, towards the second end or from the middle to both ends; a turned rail takes one diameter.",
    example: "taper 18 x 60 to ends",
  },
  {
    owner,
    word: "shape",
    shape: seq(word("at"), length("station"), after("round", length("diameter"))),
    many: true,
    meaning:
      "The diameter of a turned rail at a distance from its first shoulder; between such places, and on to its `round` at both ends, it runs straight.",
    example: "shape at 180 round 30",
  },
];

const joining: Row[] = [
  {
    owner,
    word: "halved",
    shape: seq(word("over"), ref("rail", "over"), maybe(word("with"), ref("joint", "joint"))),
    many: true,
    meaning:
      "This rail crosses another and both are cut half through where their centre lines are nearest: this one keeps its top, the other its bottom. Said in one of the two; the joint gives glue, fit and peg.",
    example: "halved over diagonal-right with cross-lap",
  },
  {
    owner,
    word: "joined",
    shape: ref("joint", "joint"),
    meaning: "The joint at both ends.",
    example: "joined rail-tenon",
  },
  {
    owner,
    word: "end",
    shape: ref("part", "which", "left", "right"),
    opens: "end",
    many: true,
    meaning:
      "What differs at one end, named by the post or rail it enters, or `left` and `right` for a rail that goes across.",
    example: "end back {",
  },
  {
    owner,
    word: "timber",
    shape: wood,
    meaning: "This rail's own species, moisture and density.",
    example: "timber white-oak moisture 10%",
    default: "the file's timber",
  },
  sawnRow("rail", "the rail is"),
  hiddenRow("rail", ["inside", "outside", "top", "bottom"], "hidden inside"),
];

/** Last, since few rails have them. */
const carried: Row[] = [
  {
    owner,
    word: "back",
    shape: length("back"),
    meaning: "Of a crest carried by sticks: how far back the middle of its lower edge is, as it leans.",
    example: "back 474",
  },
  {
    owner,
    word: "rake",
    shape: seq(angle("angle"), maybe(word("top", "end"), choice("towards", "forward", "back"))),
    meaning: "Of a crest carried by sticks: how its face leans from plumb; bare, the top goes back.",
    example: "rake 14deg",
    default: "rake 0deg",
  },
  {
    owner,
    word: "long",
    shape: length("length"),
    meaning:
      "Of a crest carried by sticks, or over one post: its length, straight from end to end along the outside arris of its lower edge.",
    example: "long 430",
  },
];

export const railRows: Row[] = [...course, ...setting, ...shaping, ...railRestRows, ...joining, ...carried];
