import type { Row } from "../row.ts";
import {
  after,
  choice,
  clauses,
  count,
  either,
  length,
  list,
  maybe,
  newName,
  ref,
  seq,
  value,
  word,
} from "./shapes.ts";

const owner = "file";

/** What the chair is to bear, and the air that it lives in. */
export const useRows: Row[] = [
  {
    owner,
    word: "strength",
    shape: choice("level", "domestic", "public", "severe"),
    meaning:
      "How hard the chair will be used: which loads `seatwright strength` asks it to bear, as the data file gives them with standard and edition.",
    example: "strength public",
    default: "strength domestic",
  },
  {
    owner,
    word: "load",
    shape: newName,
    opens: "load",
    many: true,
    meaning: "A load case of your own, beside those of the standards.",
    example: "load two-on-the-arm {",
  },
  {
    owner,
    word: "climate",
    shape: either(
      seq(word("humidity", "humidity"), value("low"), word("to"), value("high")),
      seq(word("moisture", "moisture"), value("low"), word("to"), value("high")),
    ),
    meaning:
      "Between what the chair lives: relative humidity of the air at 21°C, or moisture of its wood. Wood swells and shrinks across the grain from the moisture that it was made at (`timber … moisture`) to each end.",
    example: "climate humidity 30% to 70%",
    default: "climate humidity 35% to 65%",
  },
];

/** A word that may be a name elsewhere in the line: posts are often called `back`. */
const said = (marker: string) => choice(marker, marker);

export const loadRows: Row[] = [
  {
    owner: "load",
    word: "push",
    shape: seq(
      value("force"),
      choice("way", "down", "up", "forward", "back", "out", "in", "left", "right"),
      word("on"),
      ref("member", "target", "seat"),
      maybe(
        after(
          "at",
          either(
            clauses(seq(said("out"), length("across")), seq(said("back"), length("behind"))),
            length("along"),
          ),
        ),
      ),
    ),
    many: true,
    required: true,
    meaning:
      "A force, which way and on what. `at` is on the seat `out D, back D` (else its middle), along a rail or slat a distance from its first shoulder or a part such as `1/2` (else the middle), up a post a plumb height (else its top). The name of a pair pushes both, each with the whole force; `out` and `in` are of a pair's own side. Down on the seat it spreads over a disc 200mm across.",
    example: "push 500N down on seat at out 120, back 150",
    default: "at the middle of a seat, rail or slat; at the top of a post",
  },
  {
    owner: "load",
    word: "stops",
    shape: list(choice("side", "front", "back", "left", "right")),
    meaning: "On which sides the feet are kept from sliding.",
    example: "stops back",
    default: "the sides that the pushes go towards",
  },
  {
    owner: "load",
    word: "times",
    shape: count("times"),
    meaning: "How often it comes: wood and glue bear less of what comes often.",
    example: "times 2000",
    default: "times 1",
  },
];
