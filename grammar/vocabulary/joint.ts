import type { Kind } from "../kind.ts";
import type { Row } from "../row.ts";
import { after, choice, clauses, count, either, length, maybe, nothing, ref, seq, word } from "./shapes.ts";

/** The words of a joint; an `end` block takes them too, for what differs there. */
function jointRowsOf(owner: Kind): Row[] {
  return [...tenonRows(owner), ...otherRows(owner), ...insteadRows(owner)];
}

function tenonRows(owner: Kind): Row[] {
  return [
    {
      owner,
      word: "tenon",
      shape: clauses(
        after("thick", either(word("full", "thick"), length("thick"))),
        after("wide", length("wide")),
        after("long", length("long")),
      ),
      facet: "tenon-size",
      meaning:
        "The tenon's thickness, width and length: lengths, or a part of the rail or post; `thick full` leaves no shoulder at the faces, and the width is the rail's less its shoulders unless given.",
      example: "tenon thick 1/3 of rail, long 28",
    },
    {
      owner,
      word: "tenon",
      shape: either(word("in-line", "line"), word("square", "line")),
      facet: "tenon-line",
      meaning: "Whether the tenon runs in line with the rail or square to the face it enters.",
      example: "tenon square",
      default: "tenon in-line",
    },
    {
      owner,
      word: "tenon",
      shape: seq(word("with", "with"), word("bow")),
      facet: "tenon-bow",
      meaning: "The tenon follows the curve of a bowed rail instead of the straight between its shoulders.",
      example: "tenon with bow",
    },
    {
      owner,
      word: "round",
      shape: clauses(
        seq(length("diameter"), maybe(word("to"), length("tip"))),
        after("long", length("long")),
      ),
      facet: "tenon-size",
      meaning:
        "A turned tenon: its diameter and length. With `to` it tapers, the first diameter at the shoulder and the second at its end; one that goes `through` needs no length.",
      example: "round 28 to 22, long 40",
    },
    {
      owner,
      word: "set",
      shape: either(word("centred", "centred"), seq(length("distance"), word("from"), word("outside"))),
      meaning: "Where the tenon lies in the rail's thickness: centred, or this far in from the outside face.",
      example: "set 6 from outside",
      default: "set centred",
    },
    {
      owner,
      word: "shoulders",
      shape: clauses(after("top", length("top")), after("bottom", length("bottom"))),
      meaning: "How much the tenon is narrower than the rail at its top and bottom edges.",
      example: "shoulders top 12, bottom 6",
      default: "shoulders top 0, bottom 0",
    },
    {
      owner,
      word: "haunch",
      shape: seq(
        word("long"),
        length("long"),
        maybe(word("wide"), length("wide")),
        maybe(word("sloped", "sloped")),
      ),
      meaning:
        "A short tongue that fills the top shoulder: its length, its width if not the whole shoulder, and `sloped` to run out at the shoulder.",
      example: "haunch long 10",
    },
  ];
}

function otherRows(owner: Kind): Row[] {
  return [
    {
      owner,
      word: "mitre",
      shape: maybe(word("gap"), length("gap")),
      meaning: "Tenons that meet in a post are mitred, with a gap between their ends.",
      example: "mitre gap 1",
    },
    {
      owner,
      word: "through",
      shape: maybe(word("wedged", "wedged")),
      meaning: "The tenon goes right through; `wedged` spreads its end.",
      example: "through wedged",
    },
    {
      owner,
      word: "peg",
      shape: seq(
        length("diameter"),
        maybe(word("draw"), length("draw")),
        maybe(word("count"), count("count")),
        maybe(word("setback"), length("setback")),
      ),
      meaning:
        "A peg through the joint: its diameter, how far its holes are offset to draw the shoulder up, how many, and how far from the shoulder.",
      example: "peg 8 draw 1.5",
    },
    {
      owner,
      word: "glue",
      shape: choice("glue", "pva", "hide", "urea", "epoxy", "none"),
      meaning: "The glue.",
      example: "glue pva",
    },
    {
      owner,
      word: "fit",
      shape: length("clearance"),
      meaning: "Clearance between tenon and mortise across the thickness; negative is tight.",
      example: "fit 0.1",
      default: "fit 0",
    },
  ];
}

function insteadRows(owner: Kind): Row[] {
  return [
    {
      owner,
      word: "dowels",
      shape: seq(count("count"), word("round"), length("diameter"), word("long"), length("long")),
      meaning:
        "Dowels instead of a tenon: how many, their diameter and their whole length, half of it in either part; spread evenly over the width that the shoulders leave.",
      example: "dowels 2 round 10 long 50",
    },
    {
      owner,
      word: "loose-tenon",
      shape: seq(
        maybe(word("count"), count("count")),
        clauses(
          after("thick", length("thick")),
          after("wide", length("wide")),
          after("long", length("long")),
        ),
      ),
      facet: "tenon-size",
      meaning:
        "A separate tongue instead of a tenon, square to the shoulder: both members are mortised half its length deep. Its thickness may be a part of the rail, its width is the rail's less its shoulders unless given; `count 2` makes two of it, as far apart as `twin` says.",
      example: "loose-tenon thick 1/3 of rail, wide 40, long 50",
    },
    {
      owner,
      word: "twin",
      shape: seq(word("gap"), length("gap")),
      meaning: "Two tenons one above the other, with this much wood between them, for wide rails.",
      example: "twin gap 20",
    },
    {
      owner,
      word: "bridle",
      shape: nothing,
      meaning:
        "The end is forked over the member it meets: `thick` is what is left out between its two tines, a third of the rail unless given.",
      example: "bridle",
    },
  ];
}

export const jointRows: Row[] = jointRowsOf("joint");

export const endRows: Row[] = [
  {
    owner: "end",
    word: "joined",
    shape: ref("joint", "joint"),
    meaning: "The joint at this end.",
    example: "joined crest-tenon",
    default: "the rail's joint",
  },
  {
    owner: "end",
    word: "over",
    shape: nothing,
    meaning: "This end lies over its post's top instead of entering the post.",
    example: "over",
  },
  {
    owner: "end",
    word: "overhang",
    shape: length("length"),
    meaning: "How far this end runs past the centre line of the post it lies over.",
    example: "overhang 35",
    default: "overhang 0",
  },
  ...jointRowsOf("end"),
];
