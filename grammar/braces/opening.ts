/**
 * Blocks that begin: at a brace, or where the brace or the header was forgotten.
 */

import { exampleOf } from "../example.ts";
import type { Kind } from "../kind.ts";
import { startOf } from "../parts.ts";
import { fix, say } from "../say.ts";
import { sentence } from "../sentences/sentence.ts";
import { endOf, spanOf, type Token } from "../tokens.ts";
import type { Statement } from "../tree.ts";
import { capital, nameOfKind } from "../wording.ts";
import { addTo, beginBlock, belongsTo, type Frame, type Reading, topOf, wordAt } from "./reading.ts";

/** How deep blocks may stand in one another; the language needs two. */
const DEEPEST = 20;

/** A line that may still be given a block: its brace stands on a line of its own. */
export interface Waiting {
  statement: Statement;
  indent: number;
}

/** Begins a block at its brace, the one that ends the phrase `at`; `header` is the line it belongs to, if there is any. */
export function openAt(reading: Reading, at: number, header: Waiting | undefined, brace: Token): void {
  const { ahead, context, inner } = reading;
  const { problems } = context;
  if (inner.length >= DEEPEST) {
    if (reading.ignored === 0) problems.push(say("too-deep", spanOf(brace), sentence("too-deep.blocks")));
    reading.ignored++;
    return;
  }
  const top = topOf(reading);
  const statement = header?.statement ?? headless(brace, top);
  let kind = statement.row?.opens;
  if (kind === undefined) {
    const [guess] = ahead.openersOf(at + 1, top.kind);
    kind = guess?.opens ?? "unknown";
    if (header === undefined) {
      if (guess !== undefined) statement.row = guess;
      const message =
        guess === undefined
          ? sentence("missing-name.block")
          : sentence("missing-name.block-guess", {
              kind: nameOfKind(kind),
              example: exampleOf(guess, context.fileUnit),
            });
      problems.push(say("missing-name", spanOf(brace), message));
    } else if (statement.row !== undefined) {
      problems.push(
        say("stray-brace", spanOf(brace), sentence("stray-brace.no-block", { word: statement.row.word })),
      );
    }
  }
  const indent = header?.indent ?? ahead.indent(at);
  beginBlock(reading, statement, { kind, indent, brace: spanOf(brace) });
}

/** A statement for a block that has no header at all. */
const headless = (brace: Token, top: Frame): Statement =>
  addTo(top, { within: top.kind, parts: [], start: brace.startOffset, end: endOf(brace) });

/**
 * A header with no `{`: begins its block when its lines follow all the same. Gives the line back when its brace stands on a line of
 * its own further on.
 */
export function expectBlock(reading: Reading, at: number, line: Waiting): Waiting | undefined {
  const { ahead, context } = reading;
  const { statement, indent } = line;
  const { row, end } = statement;
  if (row?.opens === undefined) return undefined;
  if (ahead.nextIsBrace(at)) return line;
  if (linesFollow(reading, at, row.opens, indent)) {
    const last = statement.parts.at(-1) ?? statement.word ?? statement;
    context.problems.push(
      say("missing-brace", { start: last.start, end }, sentence("missing-brace.open"), [
        fix(sentence("fix.put-brace-in"), [{ start: end, end, text: " {" }], true),
      ]),
    );
    beginBlock(reading, statement, { kind: row.opens, indent, brace: { start: end, end } });
  } else if (row.blockOptional !== true) {
    context.problems.push(
      say(
        "missing-brace",
        statement.word ?? statement,
        sentence("missing-brace.block", {
          Kind: capital(nameOfKind(row.opens)),
          example: exampleOf(row, context.fileUnit),
        }),
      ),
    );
  }
  return undefined;
}

/** Whether the next line belongs to such a block, and stands further in or belongs to nothing else that is open. */
function linesFollow(reading: Reading, at: number, kind: Kind, indent: number): boolean {
  const next = reading.ahead.next(at);
  const word = wordAt(reading, next);
  if (next === undefined || !belongsTo(reading, kind, word)) return false;
  return reading.ahead.indent(next) > indent || !belongsTo(reading, topOf(reading).kind, word);
}

/** Lines that stand further in and belong to some block, but whose header is gone: the block is read without one. */
export function openForgotten(reading: Reading, at: number, indent: number): void {
  const { ahead, context, phrases } = reading;
  const { table } = context;
  const top = topOf(reading);
  const word = wordAt(reading, at);
  if (indent <= Math.max(top.indent, 0) || top.childIndent === indent || word === undefined) return;
  if (top.kind === "unknown" || belongsTo(reading, top.kind, word) || table.kindsOf(word).length === 0)
    return;
  const brace = ahead.closeOf(at);
  if (brace === undefined) return;
  const column = ahead.braceIndent(brace);
  if (column >= indent || (top.indent >= 0 && column <= top.indent)) return;
  const [guess] = ahead.openersOf(at, top.kind);
  if (guess?.opens === undefined) return;
  const start = startOf(phrases[at]!.items[0]!);
  const statement = addTo(top, { within: top.kind, row: guess, parts: [], start, end: start });
  context.problems.push(
    say(
      "missing-name",
      { start, end: start + word.length },
      sentence("missing-word.opens", {
        kind: nameOfKind(guess.opens),
        word: guess.word,
        example: exampleOf(guess, context.fileUnit),
      }),
    ),
  );
  beginBlock(reading, statement, {
    kind: guess.opens,
    indent: Math.max(column, 0),
    brace: { start, end: start },
  });
}
