/**
 * Answers put into files, or out.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { type Bench, ENDED, misuse, type Options } from "./command.ts";
import { PIPED } from "./read-input.ts";
import { harmless } from "./terminal.ts";

/** Does what writes to a place on disk; gives the ending, after a line on standard error where it cannot be written. */
export function stored(bench: Bench, target: string, write: () => void): number {
  try {
    write();
    return ENDED.well;
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code ?? "unknown reason";
    return misuse(bench, `"${target}" cannot be written (${why}).`);
  }
}

/** Puts an answer into the file named by `-o`, or out; gives the ending. */
export function written(bench: Bench, answer: string, out: Options[string]): number {
  if (typeof out === "string") return stored(bench, out, () => writeFileSync(out, answer));
  bench.terminal.out(answer);
  return ENDED.well;
}

interface NamedBytes {
  name: string;
  bytes: Uint8Array;
}

/** Puts one file, or a folder of files, at a place on disk; gives the ending. */
export const storedFiles = (
  bench: Bench,
  target: string,
  files: readonly NamedBytes[],
  folder: boolean,
): number =>
  stored(bench, target, () => {
    if (!folder) return writeFileSync(target, files[0]!.bytes);
    mkdirSync(target, { recursive: true });
    for (const { name, bytes } of files) writeFileSync(join(target, name), bytes);
  });

/** The name of a chair's file without its folder and ending, for files made of it. */
export const stemOf = (file: string): string =>
  file === PIPED ? "chair" : basename(file).replace(/\.chair$/, "");

interface Pages {
  files: readonly NamedBytes[];
  pages: number;
  fullSize: number;
}

/** One PDF, or a folder of SVGs, beside where the command is run unless `out` names a place; says how many pages. */
export function writtenPages(
  bench: Bench,
  { files, pages, fullSize }: Pages,
  { stem, format, out }: { stem: string; format: "pdf" | "svg"; out: Options[string] },
): number {
  const target = typeof out === "string" ? out : format === "pdf" ? `${stem}.pdf` : stem;
  const ending = storedFiles(bench, target, files, format !== "pdf");
  if (ending !== ENDED.well) return ending;
  const full = fullSize
    ? `, ${fullSize} of them at full size: print at 100 % and check the 100 mm square first`
    : "";
  bench.terminal.out(`${harmless(target)}: ${pages} ${pages === 1 ? "page" : "pages"}${full}.\n`);
  return ENDED.well;
}
