/**
 * A file's facts, one a line, in an order that does not depend on how the text is written: what a line-by-line comparison should see.
 */

import type { Tree } from "../../grammar/tree.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { printWorked } from "../chair/values/print.ts";
import type { Study } from "../study.ts";
import { spacedOnce } from "./spelled.ts";
import { ownThings } from "./things.ts";

const words = [...new Set(vocabulary.rows.filter(({ owner }) => owner === "file").map(({ word }) => word))];

/**
 * Every fact of the file itself as `PART PROPERTY: VALUE`, those of the whole file first; lines that could not be read as they stand;
 * then the values of the whole chair as comments. Values are left out where the file starts from others, which may not be beside it.
 */
export function factLines({ tree, design, chair }: Study): string[] {
  const things = ownThings(tree);
  const rank = (word: string) => (word === "file" ? -1 : words.indexOf(word));
  const ordered = [...things].sort((a, b) => rank(a.word) - rank(b.word) || alphabetical(a.name, b.name));
  const facts = ordered.flatMap(({ name, facts: of }) =>
    of
      .map(({ property, shown }) => `${[name, property].filter(Boolean).join(" ")}: ${spacedOnce(shown)}`)
      .sort(alphabetical),
  );
  const unread = unreadLines(tree);
  const lines = [...facts, ...(unread.length > 0 ? ["# These lines cannot be read:", ...unread] : [])];
  if (design.links.length > 0)
    return [...lines, "# Values are left out: they depend on the files that this one names."];
  const whole = [...chair.values.values()].filter(({ part }) => part === undefined);
  return [...lines, ...whole.map((worked) => `# ${worked.name}: ${printWorked(worked, design.units)}`)];
}

const alphabetical = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Statements of no known word, wherever they stand. */
function unreadLines({ text, statements }: Tree): string[] {
  const found: string[] = [];
  const walk = (of: Tree["statements"]) => {
    for (const statement of of) {
      if (statement.row === undefined)
        found.push(spacedOnce(text.slice(statement.start, statement.block?.start ?? statement.end)));
      walk(statement.block?.statements ?? []);
    }
  };
  walk(statements);
  return found.filter(Boolean).sort(alphabetical);
}
