import type { Row } from "../row.ts";
import {
  after,
  bound,
  calledAlso,
  choice,
  clauses,
  count,
  date,
  either,
  length,
  list,
  maybe,
  newName,
  nothing,
  ref,
  required,
  seq,
  text,
  value,
  wood,
  word,
} from "./shapes.ts";

const owner = "file";

/** What stands at the outermost of a file: what holds for the whole chair. */
const whole: Row[] = [
  {
    owner,
    word: "chair",
    shape: text("title"),
    meaning: "The chair's title, as the drawings and reports show it.",
    example: 'chair "Boathouse mess chair"',
  },
  {
    owner,
    word: "units",
    shape: choice("unit", "mm", "cm", "in"),
    meaning: "The unit that bare lengths take and that lengths are shown in.",
    example: "units mm",
    default: "units mm",
  },
  {
    owner,
    word: "sitter",
    shape: maybe(
      either(
        seq(word("adult", "adult"), maybe(either(word("women", "group"), word("men", "group")))),
        seq(word("child", "child"), count("from"), word("to"), count("to")),
        after("school-mark", count("mark")),
      ),
    ),
    opens: "sitter",
    blockOptional: true,
    meaning:
      "Whom the chair is for: adults, children of an age in years, a school size mark, or one person's own measures in a block.",
    example: "sitter adult",
    examples: ["sitter child 8 to 10", "sitter school-mark 5"],
    default: "sitter adult",
  },
  {
    owner,
    word: "stability",
    shape: clauses(choice("edition", "en-1022-2018", "iso-7174-1-1988"), after("child", count("age"))),
    meaning:
      "By which edition's loads it is judged whether the chair stays up, and the age in years of the child that kneels on it and leans over the back.",
    example: "stability en-1022-2018, child 8",
    default: "stability en-1022-2018, child 8; a chair for children: their own age",
  },
  {
    owner,
    word: "timber",
    shape: wood,
    meaning:
      "The species of every part that names none itself, with its moisture in percent and, if you have weighed it, its density as a bare number of kilograms a cubic metre.",
    example: "timber white-ash moisture 9%",
  },
  {
    owner,
    word: "trim",
    shape: seq(list(ref("post", "post")), length("length")),
    many: true,
    meaning:
      "Cuts this much off those feet, measured along each post's centre line; the chair comes down onto its new feet.",
    example: "trim back 10",
  },
];

const others: Row[] = [
  {
    owner,
    word: "use",
    shape: text("path"),
    many: true,
    meaning:
      "Brings in the joints, lets, limits, boards, yards, waste, loads and climate of another file; the path is from this file's folder.",
    example: 'use "joints.chair"',
  },
  {
    owner,
    word: "like",
    shape: text("path"),
    meaning: "Starts from another chair: what this file says replaces or adds to it, property by property.",
    example: 'like "boathouse-mess-chair.chair"',
  },
  {
    owner,
    word: "without",
    shape: list(ref("any", "name", "seat", "trim")),
    many: true,
    meaning: "Takes away something that the chair named by `like` has.",
    example: "without back-slat, crest",
  },
];

const values: Row[] = [
  {
    owner,
    word: "let",
    shape: seq(
      newName,
      word("="),
      value("value"),
      maybe(after("within", value("low"), word("to"), value("high"))),
    ),
    facet: "let",
    many: true,
    meaning: "Gives a value a name; `within` makes it adjustable and says how far.",
    example: "let seat-height = 440 within 420 to 470",
  },
  {
    owner,
    word: "require",
    shape: seq(value("subject"), required),
    many: true,
    meaning:
      "A worked-out value, as the chair stands, that must hold; if it does not, it is a finding. `=` means equal as printed, `within` how near.",
    example: "require seat.slope from 1deg to 4deg",
  },
  {
    owner,
    word: "limit",
    shape: seq(ref("rule", "rule"), either(after("to", value("figure")), bound)),
    many: true,
    meaning: "Changes the figure of a built-in rule for this file.",
    example: "limit rake-over-limit to 8deg",
  },
  {
    owner,
    word: "accept",
    shape: seq(
      ref("rule", "rule"),
      maybe(after("on", ref("target", "on"), maybe(after("to", ref("part", "to"))))),
      word("because"),
      text("because"),
    ),
    many: true,
    meaning:
      "Accepts what a rule finds, with the reason, which the reports show; `on` says on which part or joint.",
    example: 'accept tenon-too-thin on back-slat because "let in dry; they carry nothing"',
  },
  {
    owner,
    word: "note",
    shape: seq(date("date"), text("text")),
    many: true,
    meaning: "An entry in the design's notebook.",
    example: 'note 2026-04-02 "Seat too flat: 10 off the back feet."',
  },
];

const headers: Row[] = [
  {
    owner,
    word: "joint",
    shape: newName,
    opens: "joint",
    many: true,
    meaning: "A way of joining an end, to be named by `joined`.",
    example: "joint rail-tenon {",
  },
  {
    owner,
    word: "post",
    shape: seq(newName, maybe(word("pair", "pair"))),
    opens: "post",
    many: true,
    meaning:
      "An upright from the floor, or standing on a rail; `pair` makes a left one and its mirrored right twin.",
    example: "post front pair {",
  },
  {
    owner,
    word: "rail",
    shape: seq(newName, maybe(word("pair", "pair"))),
    opens: "rail",
    many: true,
    meaning:
      "A member between two posts or two rails, or lying over posts: a seat rail, stretcher, crest or arm.",
    example: "rail seat-side pair {",
  },
  {
    owner,
    word: "slat",
    shape: newName,
    opens: "slat",
    many: true,
    meaning: "A row of like members between two rails.",
    example: "slat back-slat {",
  },
  {
    owner,
    word: "stick",
    shape: seq(newName, maybe(word("pair", "pair"))),
    opens: "stick",
    many: true,
    meaning:
      "A row of round members that stand in a solid seat and go up to a crest or a bow, or one of them; `pair` makes a row on each side.",
    example: "stick back-stick {",
  },
  {
    owner,
    word: "bow",
    shape: newName,
    opens: "bow",
    many: true,
    meaning:
      "A bent member in one plane, the same on both sides: a hoop that stands in the seat, or an arm bow that lies on sticks and posts.",
    example: "bow hoop {",
  },
  {
    owner,
    word: "block",
    shape: seq(newName, maybe(word("pair", "pair"))),
    opens: "block",
    many: true,
    meaning: "A corner block in the angle of two rails at a post.",
    example: "block corner-block {",
  },
  {
    owner,
    word: "seat",
    shape: choice("kind", "drop-in", "board", "woven", "upholstered"),
    opens: "seat",
    meaning:
      "The seat and its kind: a loose frame dropped in, a solid board, woven over the rails, or upholstered.",
    example: "seat drop-in {",
  },
  {
    owner,
    word: "seat",
    shape: word("solid", "kind"),
    opens: "solid-seat",
    facet: "seat",
    meaning:
      "A thick seat of wood that carries the chair: legs are let into it from below, posts, sticks and bows from above. Its outline is given by widths at stations, or it is round.",
    example: "seat solid {",
  },
  {
    owner,
    word: "angle",
    shape: newName,
    opens: "angle",
    many: true,
    meaning: "An angle you care about, worked out as the chair stands, under this name.",
    example: "angle back-rake {",
  },
];

const boards: Row[] = [
  {
    owner,
    word: "make",
    shape: count("count"),
    meaning: "How many chairs are made: it multiplies the stock, the plan of the boards and the price.",
    example: "make 8",
    default: "make 1",
  },
  {
    owner,
    word: "board",
    shape: newName,
    opens: "board",
    many: true,
    meaning: "A board to hand, that parts are sawn from before any is bought.",
    example: "board plank {",
  },
  {
    owner,
    word: "yard",
    shape: newName,
    opens: "yard",
    many: true,
    meaning:
      "What can be bought of one timber; of two yards with the same timber the cheaper that serves is taken.",
    example: "yard sawmill {",
  },
  {
    owner,
    word: "match",
    shape: seq(
      list(calledAlso("part", "part", "side", "end")),
      word("from"),
      calledAlso("board", "board", "side", "end"),
      maybe(
        either(
          seq(word("side", "laid"), word("by"), word("side")),
          seq(word("end", "laid"), word("to"), word("end")),
        ),
      ),
    ),
    many: true,
    meaning: "Parts that must come from one board, next to each other: side by side or end to end.",
    example: "match back-lower, crest from plank side by side",
  },
  {
    owner,
    word: "waste",
    shape: nothing,
    opens: "waste",
    meaning: "What saw, plane and ends take.",
    example: "waste {",
  },
];

export const fileRows: Row[] = [...whole, ...others, ...values, ...headers, ...boards];
