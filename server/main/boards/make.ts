/**
 * The stock list and the plan of the boards as files. Loaded only when they are asked for: what writes PDF is large.
 */
import { type BoardsAsked, boardsPages } from "../../drawing/boards/boards-pages.ts";
import type { LetterFiles } from "../../drawing/markout/letters/files.ts";
import { type Made, type PageFormat, pageFiles, type Told } from "../markout/page-files.ts";

export const makeBoards = (
  asked: BoardsAsked & { format: PageFormat; date: Date; letters?: LetterFiles },
  told?: Told,
): Promise<Made> => pageFiles(boardsPages(asked), { ...asked, what: "boards" }, told);
