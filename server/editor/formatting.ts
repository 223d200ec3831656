/**
 * Laying the text out: the whole file, a stretch of it, or the line just ended. No edits while the text has errors of reading.
 */
import type { FormattingOptions, Range, TextEdit } from "vscode-languageserver-types";
import { formatTree } from "../../grammar/format.ts";
import type { Edit } from "../../grammar/problem.ts";
import { textEdit, type View } from "./view.ts";

type Indent = Pick<FormattingOptions, "insertSpaces" | "tabSize">;

/** Edits for the whole file. */
export function formatting(view: View, options: Indent): TextEdit[] {
  return edits(view, options).map((edit) => textEdit(view, edit));
}

/** Edits that lie in the lines from `first` to `last`, both counted. */
export function rangeFormatting(view: View, first: number, last: number, options: Indent): TextEdit[] {
  const { document } = view;
  const start = document.offsetAt({ line: first, character: 0 });
  const end = document.offsetAt({ line: last + 1, character: 0 });
  const inside = edits(view, options).filter(
    (edit) => edit.start >= start - lineEndBefore(view, start) && edit.end <= end,
  );
  return inside.map((edit) => textEdit(view, edit));
}

/** The same for several stretches; an edit that lies in two is given once. */
export function rangesFormatting(view: View, ranges: readonly Range[], options: Indent): TextEdit[] {
  const found = ranges.flatMap(({ start, end }) => rangeFormatting(view, start.line, end.line, options));
  const key = ({ range: { start, end } }: TextEdit) =>
    [start.line, start.character, end.line, end.character].join(" ");
  return [...new Map(found.map((edit) => [key(edit), edit])).values()];
}

/** Edits after a character typed: the line just ended by Enter, or the line a closing brace stands on. */
export function onTypeFormatting(view: View, line: number, typed: string, options: Indent): TextEdit[] {
  const at = typed === "\n" ? line - 1 : line;
  if (at < 0) return [];
  const inLine = rangeFormatting(view, at, at, options);
  return inLine.filter(({ range }) => range.start.line >= at - 1 && range.end.line === at);
}

function edits(view: View, { insertSpaces, tabSize }: Indent): Edit[] {
  return formatTree(view.tree, { indent: insertSpaces ? " ".repeat(tabSize) : "\t" });
}

/** The indentation of a line is in one edit with the line end before it. */
function lineEndBefore({ document }: View, start: number): number {
  const text = document.getText();
  let blank = 0;
  while (blank < start && /[\s]/.test(text[start - blank - 1] ?? "")) blank++;
  return blank;
}
