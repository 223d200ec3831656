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
  list,
  maybe,
  place,
  ref,
  seq,
  station,
  wood,
  word,
} from "./shapes.ts";

const owner = "post";

const standing: Row[] = [
  {
    owner,
    word: "section",
    shape: across("width", "depth"),
    required: true,
    meaning: "The post's width across the chair by its depth fore-and-aft, square to its centre line.",
    example: "section 40 x 40",
  },
  {
    owner,
    word: "round",
    shape: length("diameter"),
    facet: "section",
    meaning: "The diameter of a turned post.",
    example: "round 38",
  },
  {
    owner,
    word: "foot",
    shape: place,
    facet: "place",
    required: true,
    meaning:
      "Where the centre line meets the floor: out from the middle of the chair, back from the front line. A leg in a solid seat leans from its place there to this.",
    example: "foot out 205, back 20",
  },
  {
    owner,
    word: "top",
    shape: place,
    facet: "place",
    meaning:
      "Where the top of the centre line is: out from the middle of the chair, back from the front line.",
    example: "top out 205, back 20",
  },
  {
    owner,
    word: "at",
    shape: seq(length("height"), place),
    facet: "place",
    meaning: "Where the centre line is at a height above the floor.",
    example: "at 430 out 190, back 40",
  },
  {
    owner,
    word: "into",
    shape: seq(word("seat", "seat"), word("at"), place, maybe(word("from"), word("above", "above"))),
    insteadOf: ["place"],
    meaning:
      "The post is a leg let into a solid seat: where its centre line meets the seat's under face, out from the middle of the chair and back from the front line, level; `from above` on its top.",
    example: "into seat at out 155, back 80",
  },
  {
    owner,
    word: "height",
    shape: length("height"),
    meaning: "Height of the top of the centre line, plumb above the floor.",
    example: "height 930",
    default: "up to the rail that lies over the post",
  },
  {
    owner,
    word: "stand",
    shape: seq(
      word("on"),
      either(
        seq(word("seat", "seat"), word("at"), place),
        seq(ref("rail", "rail"), maybe(word("at"), length("station"))),
      ),
    ),
    facet: "place",
    meaning:
      "The post stands on a rail instead of the floor, at a distance or a share along it; or on the top of a solid seat, out from the middle of the chair and back from the front line, and is let into it.",
    example: "stand on seat-side at 1/3",
  },
];

const leaning: Row[] = [
  {
    owner,
    word: "splay",
    shape: seq(angle("angle"), maybe(choice("end", "foot", "top"), choice("towards", "out", "in"))),
    meaning:
      "Lean seen from the front. The words say which end goes which way; a bare angle puts the foot further out than the top, as `foot out` does.",
    example: "splay 3deg foot out",
    default: "splay 0deg",
    drawing: `seen from the front: splay 4deg

          |    |      tops
         /      \\
        /        \\    feet further out
    ___/__________\\___ floor`,
  },
  {
    owner,
    word: "rake",
    shape: seq(
      angle("angle"),
      maybe(choice("end", "foot", "top"), choice("towards", "forward", "back")),
      maybe(word("above"), length("height")),
      maybe(word("over"), length("over")),
    ),
    many: true,
    meaning:
      "Lean seen from the side. The words say which end goes which way; a bare angle leans the top back, as `top back` does. `above` only over that height, `over` makes the change of direction a fair curve of that length.",
    example: "rake 6.5deg top back above 475 over 90",
    default: "rake 0deg",
    drawing: `seen from the side: rake 6deg

    front           back
              /       top further back
             /
            /
    _______/_________ floor`,
  },
  {
    owner,
    word: "lean",
    shape: clauses(angle("lean"), after("sight-line", angle("sight-line"))),
    meaning:
      "Which way a leg leans from square to the seat: by how much, and in which direction its foot goes as seen in the seat's face, 0° straight back, 90° out, 180° forward.",
    example: "lean 14deg, sight-line 45deg",
    default: "by its splay and rake, or by its foot",
  },
  {
    owner,
    word: "kick",
    shape: seq(angle("angle"), word("below"), length("height"), maybe(word("over"), length("over"))),
    meaning:
      "The foot runs back below that height; `over` makes the change of direction a fair curve of that length.",
    example: "kick 4deg below 100 over 50",
  },
  {
    owner,
    word: "bend",
    shape: seq(
      angle("angle"),
      either(word("above", "stretch"), word("below", "stretch")),
      length("height"),
      maybe(word("over"), length("over")),
      maybe(word("seen"), word("from"), choice("seen", "side", "front")),
    ),
    many: true,
    meaning:
      "A change of lean at a height: from there up, or down, the post leans by this angle from plumb, backwards (or, seen from the front, inwards) going up.",
    example: "bend 3deg above 600 over 80 seen from front",
  },
  {
    owner,
    word: "turn",
    shape: angle("angle"),
    meaning: "Turns the post about its own length, the front face outward.",
    example: "turn 10deg",
    default: "turn 0deg",
  },
];

const shaping: Row[] = [
  {
    owner,
    word: "taper",
    shape: seq(
      length("width"),
      maybe(word("x"), length("depth")),
      word("from"),
      station("from"),
      word("to"),
      station("to"),
      maybe(word("keeping"), list(choice("keeping", "front", "back", "inside", "outside"))),
    ),
    many: true,
    meaning:
      "Tapers the section down to this one, about the centre line unless `keeping` names faces that stay straight; a turned post takes one diameter.",
    example: "taper 30 x 30 from 250 to foot keeping front, inside",
  },
  {
    owner,
    word: "shape",
    shape: seq(
      word("at"),
      station("station"),
      either(after("round", length("diameter")), across("width", "depth")),
    ),
    many: true,
    meaning:
      "The outline at one height: a diameter, or width by depth; between such heights it runs straight.",
    example: "shape at 200 round 44",
  },
  {
    owner,
    word: "top",
    shape: seq(
      word("into"),
      ref("head", "rail"),
      maybe(word("at"), length("station")),
      maybe(word("with"), ref("joint", "joint")),
    ),
    facet: "top-into",
    meaning:
      "The post's own tenon goes up into a rail that runs over it, or into a bow at a distance along its centre line from the foot or hand on the post's own side.",
    example: "top into crest with crest-tenon",
  },
  {
    owner,
    word: "joined",
    shape: ref("joint", "joint"),
    meaning: "The joint at a solid seat, of a leg or of a post that stands on it.",
    example: "joined leg-socket",
  },
  {
    owner,
    word: "top",
    shape: word("square", "square"),
    facet: "top-cut",
    meaning: "The top is cut square to the post instead of level.",
    example: "top square",
    default: "cut level",
  },
  {
    owner,
    word: "timber",
    shape: wood,
    meaning: "This post's own species, moisture and density.",
    example: "timber white-oak moisture 10%",
    default: "the file's timber",
  },
  sawnRow("post", "the post is"),
  hiddenRow("post", ["front", "back", "inside", "outside"], "hidden inside, back"),
];

export const postRows: Row[] = [...standing, ...leaning, ...shaping];
