/**
 * Blocks that end: at a brace, or where the brace was forgotten; and braces that end nothing.
 */

import { facetOf } from "../blocks.ts";
import { eolOf, lineEnd } from "../lines.ts";
import { startOf } from "../parts.ts";
import { fix, say } from "../say.ts";
import { sentence } from "../sentences/sentence.ts";
import { endOf, spanOf, T, type Token } from "../tokens.ts";
import type { Statement } from "../tree.ts";
import { belongsTo, type Frame, type Inner, outerOf, type Reading, topOf, wordAt } from "./reading.ts";

/** Ends the innermost block at the brace that ends the phrase `at`, and before it those inside it that were not closed. */
export function closeAt(reading: Reading, at: number, brace: Token): void {
  if (reading.ignored > 0) {
    reading.ignored--;
    return;
  }
  if (reading.inner.length === 0) {
    stray(reading, brace, sentence("stray-brace"));
    return;
  }
  const { ahead, balanced, phrases, inner } = reading;
  const own = phrases[at]!.items.length === 0 ? ahead.braceIndent(at) : -1;
  if (own >= 0 && !balanced) closeInside(reading, at, own);
  const top = inner.at(-1);
  if (top === undefined) return;
  if (linesGoOn(reading, at, top)) {
    stray(reading, brace, sentence("stray-brace.goes-on", { block: titleOf(top.header) }));
    return;
  }
  if (top.header.block !== undefined) top.header.block.end = endOf(brace);
  top.header.end = Math.max(top.header.end, endOf(brace));
  inner.pop();
}

/** Ends every block that is still open at the end of the file. */
export function closeAll(reading: Reading): void {
  for (let top = reading.inner.at(-1); top !== undefined; top = reading.inner.at(-1))
    closeUnclosed(reading, reading.text.length, top);
}

/** A line no further in than the block's header, whose word belongs outside it: the block ended before it. */
export function closeForgotten(reading: Reading, at: number, indent: number): void {
  const { inner, file, phrases } = reading;
  const word = wordAt(reading, at);
  if (word === undefined) return;
  for (let top = inner.at(-1); top !== undefined; top = inner.at(-1)) {
    if (indent > top.indent || top.indent < 0) return;
    const around: Frame[] = [file, ...inner.slice(0, -1)];
    if (!around.some(({ kind }) => belongsTo(reading, kind, word))) return;
    if (belongsTo(reading, top.kind, word) && top.childIndent <= top.indent) return;
    if (closedFurtherOn(reading, at, top)) return;
    const [first] = phrases[at]!.items;
    closeUnclosed(reading, first === undefined ? 0 : startOf(first), top);
  }
}

/** Whether the block is closed further on, so that this line is only misplaced. */
function closedFurtherOn(reading: Reading, at: number, top: Frame): boolean {
  const { ahead, phrases } = reading;
  const brace = ahead.nextBrace(at);
  if (brace === undefined) return false;
  const { end, items } = phrases[brace]!;
  if (end.tokenType === T.Close) {
    const column = items.length === 0 ? ahead.braceIndent(brace) : -1;
    return column < 0 || column === top.indent;
  }
  return brace !== at && belongsTo(reading, top.kind, wordAt(reading, brace));
}

/** A brace that stands under an outer header: the blocks inside it were not closed. */
function closeInside(reading: Reading, at: number, column: number): void {
  const { ahead, inner, file, phrases } = reading;
  const outer = inner.findIndex(({ indent }) => indent === column);
  if (outer < 0 || outer === inner.length - 1 || topOf(reading).indent <= column) return;
  const word = wordAt(reading, ahead.next(at));
  if (word !== undefined) {
    const beyond = inner[outer - 1] ?? file;
    if (belongsTo(reading, inner[outer]!.kind, word) && !belongsTo(reading, beyond.kind, word)) return;
  }
  for (const unclosed of inner.slice(outer + 1).reverse())
    closeUnclosed(reading, phrases[at]!.end.startOffset, unclosed);
}

/** Ends the innermost block where its brace is missing, `before` an offset at the latest. */
function closeUnclosed(reading: Reading, before: number, { header, indent, statements }: Inner): void {
  const { text, context, inner, lineOf } = reading;
  inner.pop();
  const { block } = header;
  if (block === undefined) return;
  block.closed = false;
  block.end = Math.max(block.end, statements.at(-1)?.end ?? 0);
  header.end = Math.max(header.end, block.end);
  const at =
    block.end > block.start && text[block.start] === "{"
      ? { start: block.start, end: block.start + 1 }
      : (header.word ?? header);
  const pad = " ".repeat(Math.max(0, indent));
  const message =
    before >= text.length
      ? sentence("missing-brace.close", { block: titleOf(header) })
      : sentence("missing-brace.close-before", { block: titleOf(header), line: lineOf(before) });
  const insert = lineEnd(text, block.end);
  const eol = eolOf(text, insert);
  context.problems.push(
    say("missing-brace", at, message, [
      fix(sentence("fix.close-block"), [{ start: insert, end: insert, text: `${eol}${pad}}` }], true),
    ]),
  );
}

/** Whether the next line belongs to this block and to nothing outside it, so that the brace came too early. */
function linesGoOn(reading: Reading, at: number, top: Inner): boolean {
  const { ahead, phrases } = reading;
  const next = ahead.next(at);
  const word = wordAt(reading, next);
  if (next === undefined || word === undefined || top.kind === "unknown") return false;
  const outer = outerOf(reading);
  if (!belongsTo(reading, top.kind, word) || belongsTo(reading, outer.kind, word)) return false;
  const best = ahead.openersOf(next, outer.kind);
  if (repeats(reading, top, word) || !best.some(({ opens }) => opens === top.kind)) return false;
  const brace = ahead.nextBrace(next);
  const closedLater = brace !== undefined && phrases[brace]!.end.tokenType === T.Close;
  const column = ahead.indent(next);
  return closedLater && (column > top.indent || column < 0 || top.childIndent <= top.indent);
}

/** Whether the block already has a line that answers the same question. */
function repeats({ context }: Reading, top: Frame, word: string): boolean {
  const facets = context.table
    .rows(top.kind, word)
    .filter(({ many }) => many !== true)
    .map(facetOf);
  return top.statements.some(({ row }) => row !== undefined && facets.includes(facetOf(row)));
}

function stray({ context }: Reading, brace: Token, message: string): void {
  const takenOut = fix(sentence("fix.take-brace-out"), [{ ...spanOf(brace), text: "" }], true);
  context.problems.push(say("stray-brace", spanOf(brace), message, [takenOut]));
}

/** A block's header as a message names it. */
function titleOf(header: Statement): string {
  const name = header.match?.facts.find(({ slot }) => slot === "name" || slot === "ref")?.name;
  const word = header.word?.text ?? header.row?.word ?? sentence("block.this-line");
  return name === undefined ? `\`${word}\`` : `\`${word} ${name}\``;
}
