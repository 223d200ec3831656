/**
 * Selections that grow: from the word to its expression, its phrase, the line, the block, the file.
 */
import type { SelectionRange } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import { commentAt, factsAt, headEnd, partAt, pathAt, valueAt, valuesAt, within } from "./names/place.ts";
import { rangeOf, type View } from "./view.ts";

/** The nested selections at each place, the narrowest first. */
export function selectionRanges(view: View, offsets: readonly number[]): SelectionRange[] {
  return offsets.map((offset) => {
    const spans = spansAt(view, offset);
    let selection: SelectionRange | undefined;
    for (const span of spans)
      selection = { range: rangeOf(view.document, span), ...(selection && { parent: selection }) };
    return selection ?? { range: rangeOf(view.document, { start: offset, end: offset }) };
  });
}

/** Every span that holds the place, each inside the one before it. */
function spansAt(view: View, offset: number): Span[] {
  const spans: Span[] = [{ start: 0, end: view.document.getText().length }];
  for (const statement of pathAt(view.tree, offset)) {
    spans.push(statement);
    if (statement.block && offset >= statement.block.start) {
      spans.push(statement.block, insideOf(statement.block));
      continue;
    }
    spans.push({ start: statement.start, end: statement.parts.at(-1)?.end ?? headEnd(statement) });
    if (statement.word) spans.push(statement.word);
    const [first] = statement.parts;
    const last = statement.parts.at(-1);
    if (first && last) spans.push({ start: first.start, end: last.end });
    spans.push(...factsAt(statement, offset));
    const part = partAt(statement, offset);
    if (part) spans.push(part);
    const value = valueAt(statement, offset);
    if (value) spans.push(...valuesAt(value, offset));
    if (part?.is === "text") spans.push({ start: part.start + 1, end: part.end - 1 });
  }
  const comment = commentAt(view.tree, offset);
  if (comment) spans.push(comment);
  return nested(spans.filter((span) => span.start <= span.end && within(span, offset)));
}

function insideOf({ start, end }: Span): Span {
  return { start: start + 1, end: Math.max(start + 1, end - 1) };
}

/** Widest first; of spans that overlap without one holding the other, and of equal ones, only the wider stays. */
function nested(spans: Span[]): Span[] {
  spans.sort((a, b) => b.end - b.start - (a.end - a.start));
  const kept: Span[] = [];
  for (const span of spans) {
    const last = kept.at(-1);
    if (
      !last ||
      (span.start >= last.start && span.end <= last.end && span.end - span.start < last.end - last.start)
    )
      kept.push(span);
  }
  return kept;
}
