import type { Row } from "../row.ts";
import { sawnRow } from "./board.ts";
import { length, nothing, ref, wood } from "./shapes.ts";

export const blockRows: Row[] = [
  {
    owner: "block",
    word: "in",
    shape: ref("post", "post"),
    required: true,
    meaning: "The post whose corner the block fills; a pair has a block in each.",
    example: "in front",
  },
  {
    owner: "block",
    word: "along",
    shape: length("length"),
    required: true,
    meaning: "How far the block reaches along each rail from the corner.",
    example: "along 60",
  },
  {
    owner: "block",
    word: "thick",
    shape: length("length"),
    required: true,
    meaning: "The block's thickness, up and down.",
    example: "thick 30",
  },
  {
    owner: "block",
    word: "up",
    shape: length("height"),
    meaning: "Height of the block's top.",
    example: "up 420",
    default: "level with the lower of the two rails' tops",
  },
  {
    owner: "block",
    word: "screwed",
    shape: nothing,
    facet: "fixing",
    meaning: "The block is screwed to the rails.",
    example: "screwed",
  },
  {
    owner: "block",
    word: "glued",
    shape: nothing,
    facet: "fixing",
    meaning: "The block is glued to the rails.",
    example: "glued",
  },
  {
    owner: "block",
    word: "timber",
    shape: wood,
    meaning: "The block's own species, moisture and density.",
    example: "timber white-oak moisture 10%",
    default: "the file's timber",
  },
  sawnRow("block", "the block is"),
];
