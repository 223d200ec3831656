import type { Row } from "../row.ts";
import { hiddenRow, sawnRow } from "./board.ts";
import {
  across,
  after,
  angle,
  choice,
  clauses,
  either,
  length,
  maybe,
  place,
  ref,
  seq,
  wood,
  word,
} from "./shapes.ts";

const owner = "bow";

const placing: Row[] = [
  {
    owner,
    word: "feet",
    shape: seq(word("in"), word("seat", "seat"), word("at"), place),
    facet: "ends",
    required: true,
    meaning:
      "A hoop: where its feet stand on a solid seat's top, out from the middle of the chair and back from the front line, level.",
    example: "feet in seat at out 150, back 330",
  },
  {
    owner,
    word: "hands",
    shape: place,
    facet: "ends",
    meaning: "An arm bow: where its two hands, its front ends, are.",
    example: "hands out 255, back 150",
  },
  {
    owner,
    word: "rake",
    shape: seq(angle("angle"), maybe(word("top", "end"), choice("towards", "forward", "back"))),
    meaning: "Of a hoop: how its plane leans from plumb; bare, the top goes back.",
    example: "rake 12deg",
    default: "rake 0deg",
  },
  {
    owner,
    word: "lie",
    shape: clauses(after("up", length("up")), after("fall", length("fall"))),
    meaning: "Of an arm bow: the height of its top face at the hands, and how much lower it is at its crown.",
    example: "lie up 660, fall 10",
  },
  {
    owner,
    word: "wide",
    shape: seq(length("wide"), word("at"), length("station")),
    meaning:
      "How wide its centre line is where it is widest, and how far that lies from the line between its feet or hands. Up to there it is an arc, beyond there half an ellipse.",
    example: "wide 470 at 180",
    default: "half an ellipse from its feet or hands",
  },
  {
    owner,
    word: "rise",
    shape: length("rise"),
    required: true,
    meaning: "From the line between its feet or hands to the middle of its crown, along its plane.",
    example: "rise 480",
  },
];

const shaping: Row[] = [
  {
    owner,
    word: "round",
    shape: length("diameter"),
    facet: "section",
    required: true,
    meaning: "The diameter of a round bow.",
    example: "round 24",
  },
  {
    owner,
    word: "section",
    shape: across("thickness", "width"),
    facet: "section",
    meaning: "Its thickness in the plane that it is bent in, by its width square to that plane.",
    example: "section 22 x 32",
  },
  {
    owner,
    word: "taper",
    shape: seq(either(across("thickness", "width"), length("diameter")), word("to"), word("ends", "towards")),
    meaning: "Tapers the section from the crown to this one at both ends.",
    example: "taper 20 to ends",
  },
];

const joining: Row[] = [
  {
    owner,
    word: "joined",
    shape: ref("joint", "joint"),
    meaning: "The joint of a hoop's feet in the seat.",
    example: "joined hoop-foot",
  },
  {
    owner,
    word: "timber",
    shape: wood,
    meaning: "The bow's own species, moisture and density.",
    example: "timber white-oak moisture 20%",
    default: "the file's timber",
  },
  sawnRow(owner, "the bow is"),
  hiddenRow(owner, ["inside", "outside", "top", "bottom"], "hidden inside"),
];

export const bowRows: Row[] = [...placing, ...shaping, ...joining];
