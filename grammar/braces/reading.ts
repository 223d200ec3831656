/**
 * What is known while a file's braces are read: the blocks that are open, and what stands further on.
 */

import type { Context } from "../context.ts";
import type { Kind } from "../kind.ts";
import { lineCounter } from "../lines.ts";
import { lookahead } from "../lookahead.ts";
import type { Phrase } from "../phrases.ts";
import type { Span } from "../problem.ts";
import { firstWordOf } from "../statement.ts";
import { T } from "../tokens.ts";
import type { Statement } from "../tree.ts";

/** A block that is being read. */
export interface Frame {
  kind: Kind;
  statements: Statement[];
  /** The file itself has none. */
  header?: Statement;
  /** How far in its header stands; -1 when unknown. */
  indent: number;
  /** How far in its first line stands; -1 before there is one. */
  childIndent: number;
}

/** A block in another: it has a header. */
export type Inner = Frame & { header: Statement };

export interface Reading {
  text: string;
  phrases: readonly Phrase[];
  context: Context;
  ahead: ReturnType<typeof lookahead>;
  /** Braces that balance are believed, however the lines are indented. */
  balanced: boolean;
  file: Frame;
  /** The blocks that are open in the file, the innermost last. */
  inner: Inner[];
  /** Braces that opened too deep, and so wait to be closed without a block. */
  ignored: number;
  lineOf(offset: number): number;
}

/** Nothing read yet. */
export function beginReading(text: string, phrases: readonly Phrase[], context: Context): Reading {
  return {
    text,
    phrases,
    context,
    ahead: lookahead(text, phrases, context.table),
    balanced: bracesBalance(phrases),
    file: { kind: "file", statements: [], indent: -1, childIndent: 0 },
    inner: [],
    ignored: 0,
    lineOf: lineCounter(text),
  };
}

/** The block that lines are being added to: the file when none is open. */
export const topOf = ({ inner, file }: Reading): Frame => inner.at(-1) ?? file;

/** The block around the innermost, or the file. */
export const outerOf = ({ inner, file }: Reading): Frame => inner.at(-2) ?? file;

/** Begins the block of a statement. */
export function beginBlock(
  { inner }: Reading,
  header: Statement,
  { kind, indent, brace }: { kind: Kind; indent: number; brace: Span },
): void {
  header.block = { kind, statements: [], closed: true, start: brace.start, end: brace.end };
  inner.push({ kind, statements: header.block.statements, header, indent, childIndent: -1 });
}

/** Adds a statement to the innermost block. */
export function addTo(top: Frame, statement: Statement): Statement {
  statement.within = top.kind;
  if (top.header !== undefined) statement.owner = top.header;
  top.statements.push(statement);
  return statement;
}

/** The first word of a phrase; nothing when there is no such phrase. */
export const wordAt = ({ phrases }: Reading, at: number | undefined): string | undefined =>
  at === undefined ? undefined : firstWordOf(phrases[at]!.items);

/** Whether a word begins a line of such a block. */
export const belongsTo = ({ context }: Reading, kind: Kind, word: string | undefined): boolean =>
  word !== undefined && context.table.rows(kind, word).length > 0;

/** Whether every brace that opens is closed and none closes what is not open. */
function bracesBalance(phrases: readonly Phrase[]): boolean {
  let depth = 0;
  for (const { end } of phrases) {
    if (end.tokenType === T.Open) depth++;
    else if (end.tokenType === T.Close && --depth < 0) return false;
  }
  return depth === 0;
}
