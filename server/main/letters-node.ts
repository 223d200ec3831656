import { readFileSync } from "node:fs";
import { LETTER_FILES, type LetterFiles } from "../drawing/markout/letters/files.ts";

/** The letters of the sheets from a folder; undefined where one of them cannot be read, so that sheets are written without. */
export function lettersIn(folder: URL): LetterFiles | undefined {
  try {
    return Object.fromEntries(
      LETTER_FILES.map((name) => [name, new Uint8Array(readFileSync(new URL(name, folder)))]),
    );
  } catch {
    return undefined;
  }
}
