import type { Row } from "../row.ts";
import { across, after, choice, either, length, maybe, seq, word } from "./shapes.ts";

/** What a loose seat rests in or on: cut in its rails, or fixed to them. */
export const railRestRows: Row[] = [
  {
    owner: "rail",
    word: "rebate",
    shape: seq(
      across("wide", "deep"),
      maybe(choice("face", "inside", "outside")),
      maybe(choice("edge", "top", "bottom")),
      maybe(after("from", length("from"), word("to"), length("to"))),
    ),
    many: true,
    meaning:
      "A step cut along an edge of the rail: its width off the face named, by its depth off the edge. It follows the rail's curve and taper; along an arched edge the depth is from the straight. `from` and `to` are distances from the first shoulder.",
    example: "rebate 10 x 28 inside top",
    default: "inside, top, from shoulder to shoulder",
  },
  {
    owner: "rail",
    word: "groove",
    shape: seq(
      across("wide", "deep"),
      maybe(choice("face", "inside", "outside", "top", "bottom")),
      after("at", length("at")),
    ),
    many: true,
    meaning:
      "A groove along the rail, so wide and so deep. `at` is the distance from the top edge to its nearer side; of a groove in an edge, from the outside face.",
    example: "groove 8 x 7 inside at 18",
    default: "inside, from shoulder to shoulder",
  },
  {
    owner: "rail",
    word: "strip",
    shape: seq(
      across("wide", "thick"),
      maybe(choice("face", "inside", "outside")),
      after("at", length("at")),
    ),
    many: true,
    meaning:
      "A strip of the rail's timber screwed to its face: its width up and down by its thickness, with its top so far below the rail's top edge.",
    example: "strip 20 x 15 at 28",
    default: "inside, between the posts",
  },
];

export const seatRestRows: Row[] = [
  {
    owner: "seat",
    word: "rests",
    shape: either(
      seq(word("on"), choice("rests", "rails", "strips")),
      seq(word("in"), choice("rests", "rebates", "grooves")),
    ),
    meaning:
      "What a loose seat rests on: the tops of its rails, strips fixed to them, or rebates or grooves cut in them. On strips and in rebates its frame lies within the rails, and where it rests says how high its top is.",
    example: "rests on strips",
    default: "rests on rails",
  },
  {
    owner: "seat",
    word: "gap",
    shape: length("length"),
    meaning:
      "How far the frame of a loose seat keeps from each rail, and from each post that it is cut round.",
    example: "gap 1.5",
    default: "gap 1mm",
  },
  {
    owner: "seat",
    word: "cover",
    shape: length("length"),
    meaning: "How thick the covering is that goes round the edges of a loose seat's frame and under it.",
    example: "cover 2",
    default: "cover 0",
  },
];
