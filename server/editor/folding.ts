/**
 * What can be folded away: blocks, and comments of several lines.
 */
import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver-types";
import type { Comment } from "../../grammar/tree.ts";
import { everyStatement } from "../../grammar/walk.ts";

import type { View } from "./view.ts";

/** Most folds of one file, the client's own limit apart. */
const MOST = 5000;

/** The folds of one file; a block's closing brace stays in sight. */
export function folding(view: View, limit = MOST): FoldingRange[] {
  const lineOf = (offset: number) => view.document.positionAt(offset).line;
  const folds: FoldingRange[] = [];
  for (const { block, start } of everyStatement(view.tree.statements)) {
    if (!block) continue;
    const startLine = lineOf(start);
    const endLine = lineOf(block.end) - (block.closed ? 1 : 0);
    if (endLine > startLine) folds.push({ startLine, endLine });
  }
  for (const [first, last] of runs(view)) {
    if (last > first) folds.push({ startLine: first, endLine: last, kind: FoldingRangeKind.Comment });
  }
  return folds.sort((a, b) => a.startLine - b.startLine).slice(0, limit);
}

/** Runs of lines that hold nothing but a comment. */
function runs({ document, tree }: View): [number, number][] {
  const alone = (comment: Comment) => {
    const { line, character } = document.positionAt(comment.start);
    const before = document.getText({ start: { line, character: 0 }, end: { line, character } });
    return before.trim() === "" ? line : undefined;
  };
  const found: [number, number][] = [];
  for (const comment of tree.comments) {
    const line = alone(comment);
    if (line === undefined) continue;
    const last = found.at(-1);
    if (last && last[1] === line - 1) last[1] = line;
    else found.push([line, line]);
  }
  return found;
}
