/**
 * Marking-out sheets as files. Loaded only when they are asked for: what writes PDF is large.
 */
import type { Chair } from "../../chair/chair.ts";
import type { LetterFiles } from "../../drawing/markout/letters/files.ts";
import { type MarkoutOptions, markoutPages } from "../../drawing/markout/pages.ts";
import { type Made, type PageFormat, pageFiles, type Told } from "./page-files.ts";

export type { Made };
export type MarkoutFormat = PageFormat;

export const makeMarkout = (
  chair: Chair,
  options: MarkoutOptions & { format: MarkoutFormat; date: Date; letters?: LetterFiles },
  told?: Told,
): Promise<Made> =>
  pageFiles(
    markoutPages(chair, options),
    { ...options, title: chair.design.title?.value ?? "Chair", what: "marking out" },
    told,
  );
