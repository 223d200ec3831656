import type { Context } from "./context.ts";
import type { Kind } from "./kind.ts";
import { isOnlyNearest, nearest } from "./nearest.ts";
import { startOf } from "./parts.ts";
import type { Item } from "./phrases.ts";
import type { Row } from "./row.ts";
import { fix, replaceFix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import { type Forced, firstWordOf, readsWhole } from "./statement.ts";
import { nameOfKind, orList } from "./wording.ts";

/** What the lines of a block tell of its header. */
interface Lines {
  /** The openers whose kinds of block they suit best, alike well. */
  openers(): readonly Row[];
  /** Whether any of them could stand in a kind of block. */
  suits(kind: Kind): boolean;
}

/**
 * A header whose first word opens no block where it stands, or one that none of the lines belong to: taken for the opener it is
 * most like, or for the one its lines belong to, and reported. Undefined when there is nothing to mend or to guess.
 */
export function guessHeader(
  items: readonly Item[],
  kind: Kind,
  lines: Lines,
  context: Context,
): Forced | undefined {
  const { table, problems } = context;
  const word = firstWordOf(items);
  const openers = table.openers(kind);
  if (word === undefined || openers.length === 0) return undefined;
  const known = table.rows(kind, word);
  const start = startOf(items[0]!);
  const at = { start, end: start + word.length };
  if (known.length > 0) {
    // All lines are read as those of every kind of block for this, so only where the header itself leaves a doubt.
    let suited: readonly Row[] | undefined;
    const best = () => {
      suited ??= lines.openers();
      return suited;
    };
    // A word may be both an opener and a choice of another, as `board` is: its own header would be whole, or its lines would suit it best.
    const meant = (row: Row) => readsWhole(items, row, table, false) || best().includes(row);
    // A property that lacks its value may be the name in a header that lost its word: `back {`.
    const stands = (row: Row) =>
      row.opens === undefined
        ? items.length > 1 || readsWhole(items, row, table, false) || best().length === 0
        : lines.suits(row.opens) && meant(row);
    if (known.some(stands)) return undefined;
    const [row] = best();
    return row !== undefined && readsWhole(items, row, table) ? headless([row]) : undefined;
  }
  const guesses = lines.openers();
  const nameless = guesses.filter((row) => readsWhole(items, row, table));
  const like = nearest(
    word,
    openers.map((row) => row.word),
  );
  const alike = openers.find((row) => row.word === like);
  if (alike !== undefined && nameless.length === 0 && (guesses.length === 0 || guesses.includes(alike))) {
    const message = sentence("unknown-word.opens-no-block-near", { word, near: alike.word });
    const words = openers.map((row) => row.word);
    problems.push(
      say("unknown-word", at, message, [
        replaceFix(at, alike.word, isOnlyNearest(word, alike.word, new Set(words))),
      ]),
    );
    return { row: alike, headless: false };
  }
  if (nameless.length > 0) return headless(nameless);
  const [guess] = guesses;
  if (guess === undefined) return undefined;
  const inside = { word, kind: nameOfKind(guess.opens!), guess: guess.word };
  problems.push(
    say("unknown-word", at, sentence("unknown-word.opens-no-block", inside), [replaceFix(at, guess.word)]),
  );
  return { row: guess, headless: false };

  /** The header lacks its word, and begins with the name. */
  function headless(rows: readonly Row[]): Forced {
    const words = orList(rows.map((row) => `\`${row.word}\``));
    const fixes = rows.map((row) =>
      fix(
        sentence("fix.put-in", { word: row.word }),
        [{ start, end: start, text: `${row.word} ` }],
        rows.length === 1,
      ),
    );
    problems.push(say("missing-word", at, sentence("missing-word.before", { words, word }), fixes));
    return { row: rows[0]!, headless: true };
  }
}
