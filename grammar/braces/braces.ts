import type { Context } from "../context.ts";
import { guessHeader } from "../header.ts";
import type { Phrase } from "../phrases.ts";
import { isOnlyErrors, readStatements } from "../statement.ts";
import type { Steps } from "../steps.ts";
import { T } from "../tokens.ts";
import type { Statement } from "../tree.ts";
import { closeAll, closeAt, closeForgotten } from "./closing.ts";
import { expectBlock, openAt, openForgotten, type Waiting } from "./opening.ts";
import { addTo, beginReading, type Reading, topOf } from "./reading.ts";

/** Lines read between two rests. */
const BATCH = 100;

/**
 * Builds the statements and blocks of a file from its phrases, mending braces: a missing `{`, a missing `}`, a stray `}` and a
 * header whose word is unknown are each reported once and cost no other line its meaning.
 */
export function* blocksOf(text: string, phrases: readonly Phrase[], context: Context): Steps<Statement[]> {
  const reading = beginReading(text, phrases, context);
  let waiting: Waiting | undefined;
  for (const [at, { items, end }] of phrases.entries()) {
    if (at % BATCH === BATCH - 1) yield;
    const line = items.length > 0 ? addLine(reading, at) : undefined;
    if (end.tokenType === T.Open) openAt(reading, at, line ?? waiting, end);
    if (end.tokenType === T.Close) closeAt(reading, at, end);
    if (end.tokenType === T.Open || end.tokenType === T.Close) waiting = undefined;
    else if (line !== undefined) waiting = expectBlock(reading, at, line);
  }
  closeAll(reading);
  return reading.file.statements;
}

/** Adds the statements of one phrase to the block they belong to; gives the last, which may have a block of its own. */
function addLine(reading: Reading, at: number): Waiting | undefined {
  const { ahead, balanced } = reading;
  const indent = ahead.indent(at);
  if (indent >= 0 && !balanced) {
    closeForgotten(reading, at, indent);
    openForgotten(reading, at, indent);
  }
  const statement = add(reading, at, indent).at(-1);
  return statement && { statement, indent };
}

function add(reading: Reading, at: number, indent: number): Statement[] {
  const { ahead, context, phrases } = reading;
  const { items, end } = phrases[at]!;
  const top = topOf(reading);
  if (top.childIndent < 0) top.childIndent = indent;
  const isHeader = end.tokenType === T.Open;
  const followed = {
    openers: () => ahead.openersOf(at + 1, top.kind),
    suits: (kind: Parameters<typeof ahead.suits>[1]) => ahead.suits(at + 1, kind),
  };
  const forced = isHeader ? guessHeader(items, top.kind, followed, context) : undefined;
  const kind = isOnlyErrors(items) ? "unknown" : top.kind;
  const read = readStatements(items, kind, isHeader || ahead.nextIsBrace(at), context, forced);
  return read.map((statement) => addTo(top, statement));
}
