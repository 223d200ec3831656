/**
 * A text in which things are called by other names: what one side renamed is renamed in the other texts too before they are put together.
 */
import { applyEdits } from "../../../grammar/format.ts";
import type { Edit } from "../../../grammar/problem.ts";
import type { Tree } from "../../../grammar/tree.ts";
import { everyStatement, everyValue } from "../../../grammar/walk.ts";
import { dotted, isName } from "../spelled.ts";

/** The text with each of these names as it is called now. */
export function renamedText(tree: Tree, renamed: ReadonlyMap<string, string>): string {
  if (renamed.size === 0) return tree.text;
  const edits = new Map<number, Edit>();
  const put = (start: number, end: number) => {
    const written = tree.text.slice(start, end);
    const text = dotted(written, (name) => renamed.get(name) ?? name);
    if (text !== written) edits.set(start, { start, end, text });
  };
  for (const statement of everyStatement(tree.statements)) {
    for (const fact of statement.match?.facts ?? []) if (isName(fact)) put(fact.start, fact.end);
  }
  for (const value of everyValue(tree)) if (value.is === "name") put(value.start, value.end);
  return applyEdits(
    tree.text,
    [...edits.values()].sort((a, b) => a.start - b.start),
  );
}
