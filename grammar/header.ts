import { nearest } from "./nearest.ts";
import { startOf } from "./parts.ts";
import type { Item } from "./phrases.ts";
import type { Row } from "./row.ts";
import { fix, replaceFix, say } from "./say.ts";
import { type Context, type Forced, firstWordOf, readsWhole } from "./statement.ts";
import type { Kind } from "./tree.ts";
import { nameOfKind } from "./wording.ts";

/**
 * A header whose first word is unknown where it stands: taken for the opener it is most like, or for the one its lines belong
 * to (`byLines`), and told of. Undefined when the word is known, or nothing can be said.
 */
export function guessHeader(
  items: readonly Item[],
  kind: Kind,
  byLines: () => Row | undefined,
  { table, problems }: Context,
): Forced | undefined {
  const word = firstWordOf(items);
  const openers = table.openers(kind);
  if (word === undefined || openers.length === 0 || table.rows(kind, word).length > 0) return undefined;
  const guess = byLines();
  const start = startOf(items[0]!);
  const at = { start, end: start + word.length };
  const headless = guess !== undefined && readsWhole(items, guess, table);
  const like = nearest(
    word,
    openers.map((row) => row.word),
  );
  const alike = openers.find((row) => row.word === like);
  if (alike !== undefined && (guess === undefined || guess.opens === alike.opens) && !headless) {
    const message = `\`${word}\` opens no block here; did you mean \`${alike.word}\`?`;
    problems.push(say("unknown-word", at, message, [replaceFix(at, alike.word, true)]));
    return { row: alike, headless: false };
  }
  if (guess === undefined) return undefined;
  if (headless) {
    const insert = { start, end: start, text: `${guess.word} ` };
    problems.push(
      say("missing-word", at, `\`${guess.word}\` is missing before \`${word}\`.`, [
        fix(`Put \`${guess.word}\` in`, [insert], true),
      ]),
    );
    return { row: guess, headless: true };
  }
  const lines = `the lines inside belong to ${nameOfKind(guess.opens!)}: \`${guess.word}\``;
  problems.push(
    say("unknown-word", at, `\`${word}\` opens no block here; ${lines}.`, [replaceFix(at, guess.word)]),
  );
  return { row: guess, headless: false };
}
