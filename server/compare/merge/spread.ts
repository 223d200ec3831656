/**
 * A text with every statement on lines of its own, so that it can be put together from lines.
 */
import { applyEdits } from "../../../grammar/format.ts";
import { eolOf, lineStart } from "../../../grammar/lines.ts";
import type { Edit } from "../../../grammar/problem.ts";
import type { Statement, Tree } from "../../../grammar/tree.ts";

/** The same text where each statement, and each closing brace, begins a line; as it was where they do already. */
export function spread({ text, statements }: Tree): string {
  const eol = eolOf(text);
  const edits: Edit[] = [];
  /** Puts what starts at a place on a line of its own, and takes the semicolon and the blanks before it away. */
  const breakBefore = (place: number, depth: number) => {
    const from = lineStart(text, place);
    const before = text.slice(from, place);
    if (before.replace("\uFEFF", "").trim() === "") return;
    const kept = before.replace(/[;\s]+$/, "");
    edits.push({ start: from + kept.length, end: place, text: eol + "  ".repeat(depth) });
  };
  const walk = (of: readonly Statement[], depth: number) => {
    for (const { start, block } of of) {
      breakBefore(start, depth);
      if (block === undefined) continue;
      walk(block.statements, depth + 1);
      if (block.closed && text[block.end - 1] === "}") breakBefore(block.end - 1, depth);
    }
  };
  walk(statements, 0);
  return applyEdits(text, edits);
}
