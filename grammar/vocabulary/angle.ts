import type { Row } from "../row.ts";
import { after, angle, choice, either, length, list, maybe, ref, seq, word } from "./shapes.ts";

export const angleRows: Row[] = [
  {
    owner: "angle",
    word: "between",
    shape: seq(
      list(
        seq(
          ref("part", "term", "seat", "floor"),
          maybe(either(after("above", length("above")), after("below", length("below")))),
        ),
      ),
      maybe(word("seen"), word("from"), choice("seen", "side", "front", "above")),
    ),
    required: true,
    meaning:
      "The two things measured: a post stands for its centre line (`back above 500mm`: that part of it), a rail for its length, `seat` for the sitting surface, `floor` for the floor.",
    example: "between seat, back above 530",
  },
  {
    owner: "angle",
    word: "limit",
    shape: either(
      seq(angle("low"), word("to"), angle("high")),
      after("at", either(after("most", angle("high")), after("least", angle("low")))),
    ),
    meaning: "What the angle must keep to.",
    example: "limit 5deg to 7deg",
  },
];
