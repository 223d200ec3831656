/**
 * The rooms of the house that the server and the command line put to work, but for what is loaded late.
 */
import { parseSteps } from "../../grammar/parser.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { sheetSteps } from "../drawing/draw-sheet.ts";
import { mendSteps } from "../mends/mends.ts";
import { rules } from "../rules/index.ts";
import { settle } from "../settle.ts";
import { deepenSteps, studySteps } from "../study.ts";
import type { Services } from "./put-to-work.ts";

export const rooms: Omit<Services, "late"> = {
  vocabulary,
  rules,
  parse: (text) => parseSteps(text, vocabulary),
  study: studySteps,
  settle,
  deepen: deepenSteps,
  mend: mendSteps,
  draw: sheetSteps,
};
