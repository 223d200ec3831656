import { sentence } from "../../grammar/sentences/sentence.ts";

/**
 * How far a chair may reach into other files. The figures are far beyond what makers need, and small enough that a file which somebody
 * sends cannot take the machine's memory or time.
 */

/** Files read for one chair beside its own. */
const MOST_FILES = 500;

/** How long a row of files may be that each name the next. */
const DEEPEST = 64;

/** Characters in all of them. */
const MOST_TEXT = 8 * 1024 * 1024;

/** Words, numbers, signs, comments and line ends in all of them, about 150 chairs' worth: what memory and time grow with. */
const MOST_PIECES = 100_000;

/** Statements looked at in putting the files together, each as often as it is taken over by another file. */
const MOST_MERGED = 300_000;

export interface Reach {
  /** Whether one more file may be followed from one that stands so deep; 1 is the file at hand. */
  follows(depth: number): boolean;
  /** Whether one more file with this text may be read. */
  reads(text: string): boolean;
  /** Whether so many more statements may be put together. */
  merges(count: number): boolean;
  /** The sentence that says what was too much, once; nothing when it has been said. */
  beyond(): string | undefined;
}

/** Nothing read yet. */
export function reachOf(): Reach {
  let files = 0;
  let characters = 0;
  let pieces = 0;
  let merged = 0;
  let over: string | undefined;
  let said = false;

  const within = (fits: boolean, what: string): boolean => {
    if (!fits) over ??= what;
    return fits;
  };

  return {
    follows: (depth) =>
      within(depth <= DEEPEST, sentence("too-many-files.deep", { most: DEEPEST })) &&
      within(files < MOST_FILES, sentence("too-many-files.number", { most: MOST_FILES })),
    reads(text) {
      if (!within(characters + text.length <= MOST_TEXT, sentence("too-many-files.long"))) return false;
      const more = piecesIn(text, MOST_PIECES - pieces);
      if (
        !within(
          pieces + more <= MOST_PIECES,
          sentence("too-many-files.words", { most: MOST_PIECES.toLocaleString("en") }),
        )
      )
        return false;
      files++;
      characters += text.length;
      pieces += more;
      return true;
    },
    merges(count) {
      if (!within(merged + count <= MOST_MERGED, sentence("too-many-files.often"))) return false;
      merged += count;
      return true;
    },
    beyond() {
      if (said || over === undefined) return undefined;
      said = true;
      return over;
    },
  };
}

/** How many words, numbers, signs, comments and line ends a text has; counted no further than just over `most`. */
function piecesIn(text: string, most: number): number {
  const piece = /#[^\r\n]*|"[^"\r\n]*"|[\w.-]+|[^\w \t]/g;
  let count = 0;
  while (count <= most && piece.test(text)) count++;
  return count;
}
