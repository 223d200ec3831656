import type { Row } from "../row.ts";
import { hiddenRow, sawnRow } from "./board.ts";
import { seatRestRows } from "./rests.ts";
import { after, clauses, length, list, ref, wood } from "./shapes.ts";

export const seatRows: Row[] = [
  {
    owner: "seat",
    word: "on",
    shape: list(ref("rail", "rail")),
    required: true,
    meaning: "The rails that carry the seat.",
    example: "on seat-front, seat-side, seat-back",
  },
  {
    owner: "seat",
    word: "thick",
    shape: length("length"),
    meaning: "The seat's thickness.",
    example: "thick 40",
  },
  {
    owner: "seat",
    word: "proud",
    shape: length("length"),
    meaning: "How far the sitting surface lies above the rails' tops.",
    example: "proud 12",
    default:
      "0; a board or woven seat as much as it is thick; on strips, in rebates and grooves what those give",
  },
  ...seatRestRows,
  {
    owner: "seat",
    word: "sag",
    shape: length("length"),
    meaning: "How far the seat gives under a sitter.",
    example: "sag 15",
    default: "sag 0",
  },
  {
    owner: "seat",
    word: "overhang",
    shape: clauses(
      after("out", length("out")),
      after("front", length("front")),
      after("back", length("back")),
    ),
    meaning: "How far the seat runs past its rails at the sides, the front and the back.",
    example: "overhang out 10, front 15",
    default: "no overhang",
  },
  {
    owner: "seat",
    word: "timber",
    shape: wood,
    meaning: "The seat's own species, moisture and density.",
    example: "timber white-oak moisture 10%",
    default: "the file's timber",
  },
  sawnRow("seat", "the seat is"),
  hiddenRow("seat", ["below"], "hidden below"),
];
