/**
 * The files of Noto Sans that the sheets are written with: the Latin, Greek and Cyrillic scripts in two weights.
 */

/** Scripts by file, those that every sheet needs first. */
export const SCRIPTS = [
  "latin",
  "latin-ext",
  "vietnamese",
  "greek",
  "greek-ext",
  "cyrillic",
  "cyrillic-ext",
] as const;
const WEIGHTS = [400, 700] as const;

/** Names of the files, as the package of the font has them. */
export const LETTER_FILES: readonly string[] = SCRIPTS.flatMap((script) =>
  WEIGHTS.map((weight) => `noto-sans-${script}-${weight}-normal.woff`),
);

/** The bytes of those files by their names. */
export type LetterFiles = Readonly<Record<string, Uint8Array>>;
