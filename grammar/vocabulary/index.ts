import type { Vocabulary } from "../row.ts";
import { angleRows } from "./angle.ts";
import { blockRows } from "./block.ts";
import { boardRows, wasteRows, yardRows } from "./board.ts";
import { bowRows } from "./bow.ts";
import { fileRows } from "./file.ts";
import { endRows, jointRows } from "./joint.ts";
import { loadRows, useRows } from "./load.ts";
import { postRows } from "./post.ts";
import { railRows } from "./rail.ts";
import { seatRows } from "./seat.ts";
import { sitterRows } from "./sitter.ts";
import { slatRows } from "./slat.ts";
import { solidSeatRows } from "./solid-seat.ts";
import { stickRows } from "./stick.ts";
import { words } from "./words.ts";

/** The one table that parser checks, completion, hover, highlighting and the reference are all made from. */
export const vocabulary: Vocabulary = {
  rows: [
    ...fileRows,
    ...useRows,
    ...postRows,
    ...railRows,
    ...slatRows,
    ...stickRows,
    ...bowRows,
    ...blockRows,
    ...jointRows,
    ...endRows,
    ...seatRows,
    ...solidSeatRows,
    ...angleRows,
    ...sitterRows,
    ...boardRows,
    ...yardRows,
    ...wasteRows,
    ...loadRows,
  ],
  words,
};
