import { facetOf } from "./blocks.ts";
import { exampleOf } from "./example.ts";
import { guessHeader } from "./header.ts";
import { eolOf, lineCounter, lineEnd } from "./lines.ts";
import { lookahead } from "./lookahead.ts";
import { startOf } from "./parts.ts";
import type { Phrase } from "./phrases.ts";
import type { Fix, Problem, Span } from "./problem.ts";
import { fix, say } from "./say.ts";
import { type Context, firstWordOf, isOnlyWaste, readStatements } from "./statement.ts";
import type { Steps } from "./steps.ts";
import { endOf, spanOf, T, type Token } from "./tokens.ts";
import type { Kind, Statement } from "./tree.ts";
import { nameOfKind } from "./wording.ts";

/** How deep blocks may stand in one another; the language needs two. */
const deepest = 20;

/** Lines read between two rests. */
const BATCH = 100;

/** A block that is being read. */
interface Frame {
  kind: Kind;
  statements: Statement[];
  header?: Statement;
  /** How far in its header stands, and its first line; -1 when unknown. */
  indent: number;
  childIndent: number;
}

/**
 * Builds the statements and blocks of a file from its phrases, mending braces: a missing `{`, a missing `}`, a stray `}` and a
 * header whose word is unknown are each reported once and cost no other line its meaning.
 */
export function* assemble(text: string, phrases: readonly Phrase[], context: Context): Steps<Statement[]> {
  const { table, problems } = context;
  const file: Frame = { kind: "file", statements: [], indent: -1, childIndent: 0 };
  const frames: Frame[] = [file];
  const ahead = lookahead(text, phrases, table);
  const lineOf = lineCounter(text);
  let ignored = 0;
  // Braces that balance are believed, however the lines are indented.
  const balanced = bracesBalance(phrases);
  let waiting: { statement: Statement; indent: number } | undefined;

  for (let at = 0; at < phrases.length; at++) {
    if (at % BATCH === BATCH - 1) yield;
    const { items, end } = phrases[at]!;
    const indent = ahead.indent(at);
    let last: Statement | undefined;
    if (items.length > 0) {
      waiting = undefined;
      if (indent >= 0 && !balanced) {
        closeForgotten(at, indent);
        openForgotten(at, indent);
      }
      last = add(at, indent);
    }
    if (end.tokenType === T.Open) {
      const header = last ?? waiting?.statement;
      open(at, header, last !== undefined ? indent : (waiting?.indent ?? indent), end);
      waiting = undefined;
    } else if (end.tokenType === T.Close) {
      waiting = undefined;
      close(at, end);
    } else if (last !== undefined) waiting = expectBlock(at, last, indent);
  }
  while (frames.length > 1) closeVirtually(text.length, frames.at(-1)!);
  return file.statements;

  function add(at: number, indent: number): Statement {
    const { items, end } = phrases[at]!;
    const top = frames.at(-1)!;
    const opens = end.tokenType === T.Open || ahead.nextIsBrace(at);
    if (top.childIndent < 0) top.childIndent = indent;
    const forced =
      end.tokenType === T.Open
        ? guessHeader(
            items,
            top.kind,
            { openers: () => ahead.openersOf(at + 1, top.kind), suits: (kind) => ahead.suits(at + 1, kind) },
            context,
          )
        : undefined;
    const kind = isOnlyWaste(items) ? "unknown" : top.kind;
    const read = readStatements(items, kind, opens, context, forced);
    for (const statement of read) {
      statement.within = top.kind;
      if (top.header !== undefined) statement.owner = top.header;
      top.statements.push(statement);
    }
    return read.at(-1)!;
  }

  function open(at: number, header: Statement | undefined, indent: number, brace: Token): void {
    if (frames.length > deepest) {
      if (ignored === 0)
        problems.push(say("too-deep", spanOf(brace), "Blocks stand too deep in one another here."));
      ignored++;
      return;
    }
    const top = frames.at(-1)!;
    const statement = header ?? headless(brace, top);
    let kind = statement.row?.opens;
    if (kind === undefined) {
      const [guess] = ahead.openersOf(at + 1, top.kind);
      kind = guess?.opens ?? "unknown";
      if (header === undefined) {
        if (guess !== undefined) statement.row = guess;
        const what =
          guess === undefined
            ? ""
            : ` Its lines belong to ${nameOfKind(kind)}: \`${exampleOf(guess, context.fileUnit)} {\`.`;
        problems.push(say("missing-name", spanOf(brace), `Nothing says what this block is.${what}`));
      } else if (statement.row !== undefined) {
        problems.push(say("stray-brace", spanOf(brace), `\`${statement.row.word}\` takes no block.`));
      }
    }
    begin(statement, kind, indent, spanOf(brace));
  }

  function begin(statement: Statement, kind: Kind, indent: number, brace: Span): void {
    statement.block = { kind, statements: [], closed: true, start: brace.start, end: brace.end };
    frames.push({ kind, statements: statement.block.statements, header: statement, indent, childIndent: -1 });
  }

  /** A statement for a block that has no header at all. */
  function headless(brace: Token, top: Frame): Statement {
    const statement: Statement = { within: top.kind, parts: [], start: brace.startOffset, end: endOf(brace) };
    if (top.header !== undefined) statement.owner = top.header;
    top.statements.push(statement);
    return statement;
  }

  /** Rule 1: a header with no `{` whose lines follow all the same. */
  function expectBlock(at: number, statement: Statement, indent: number): typeof waiting {
    const row = statement.row;
    if (row?.opens === undefined) return undefined;
    if (ahead.nextIsBrace(at)) return { statement, indent };
    const next = ahead.next(at);
    const word = next === undefined ? undefined : firstWordOf(phrases[next]!.items);
    const top = frames.at(-1)!;
    const belongs = word !== undefined && table.rows(row.opens, word).length > 0;
    const further = next !== undefined && ahead.indent(next) > indent;
    const unknownOutside = word !== undefined && table.rows(top.kind, word).length === 0;
    const end = statement.end;
    if (belongs && (further || unknownOutside)) {
      const last = statement.parts.at(-1) ?? statement.word ?? statement;
      problems.push(
        say("missing-brace", { start: last.start, end }, `\`{\` is missing at the end of this line.`, [
          fix("Put `{` in", [{ start: end, end, text: " {" }], true),
        ]),
      );
      begin(statement, row.opens, indent, { start: end, end });
    } else if (row.blockOptional !== true) {
      problems.push(
        say(
          "missing-brace",
          statement.word ?? statement,
          `${capital(nameOfKind(row.opens))} needs a block: \`${exampleOf(row, context.fileUnit)} { … }\`.`,
        ),
      );
    }
    return undefined;
  }

  /** Lines that stand further in and belong to some block, but whose header is gone: the block is read without one. */
  function openForgotten(at: number, indent: number): void {
    const top = frames.at(-1)!;
    const word = firstWordOf(phrases[at]!.items);
    if (indent <= Math.max(top.indent, 0) || top.childIndent === indent || word === undefined) return;
    if (top.kind === "unknown" || table.rows(top.kind, word).length > 0 || table.kindsOf(word).length === 0)
      return;
    const brace = ahead.closeOf(at);
    if (brace === undefined) return;
    const column = ahead.braceIndent(brace);
    if (column >= indent || (top.indent >= 0 && column <= top.indent)) return;
    const [guess] = ahead.openersOf(at, top.kind);
    if (guess === undefined) return;
    const start = startOf(phrases[at]!.items[0]!);
    const statement: Statement = { within: top.kind, row: guess, parts: [], start, end: start };
    if (top.header !== undefined) statement.owner = top.header;
    top.statements.push(statement);
    problems.push(
      say(
        "missing-name",
        { start, end: start + word.length },
        `The lines from here to the brace belong to ${nameOfKind(guess.opens!)}, but no \`${guess.word}\` line opens it, such as \`${exampleOf(guess, context.fileUnit)} {\`.`,
      ),
    );
    begin(statement, guess.opens!, Math.max(column, 0), { start, end: start });
  }

  /** Rule 2: a line no further in than the block's header, whose word belongs outside it. */
  function closeForgotten(at: number, indent: number): void {
    const word = firstWordOf(phrases[at]!.items);
    while (word !== undefined && frames.length > 1) {
      const top = frames.at(-1)!;
      if (indent > top.indent || top.indent < 0) return;
      const outside = frames.slice(0, -1).some(({ kind }) => table.rows(kind, word).length > 0);
      if (!outside) return;
      const inside = table.rows(top.kind, word).length > 0;
      if (inside && top.childIndent <= top.indent) return;
      if (goesOn(at, top)) return;
      closeVirtually(phrases[at]!.items.length > 0 ? startOf(phrases[at]!.items[0]!) : 0, top);
    }
  }

  /** Whether the block is closed further on, so that this line is only misplaced. */
  function goesOn(at: number, top: Frame): boolean {
    const brace = ahead.nextBrace(at);
    if (brace === undefined) return false;
    const { end, items } = phrases[brace]!;
    if (end.tokenType === T.Close) {
      const column = items.length === 0 ? ahead.braceIndent(brace) : -1;
      return column < 0 || column === top.indent;
    }
    const word = firstWordOf(items);
    return word !== undefined && brace !== at && table.rows(top.kind, word).length > 0;
  }

  function closeVirtually(before: number, frame: Frame): void {
    const header = frame.header!;
    const block = header.block!;
    const last = frame.statements.at(-1);
    block.closed = false;
    block.end = Math.max(block.end, last?.end ?? 0);
    header.end = Math.max(header.end, block.end);
    frames.pop();
    const at =
      block.end > block.start && text[block.start] === "{"
        ? { start: block.start, end: block.start + 1 }
        : (header.word ?? header);
    const pad = " ".repeat(Math.max(0, frame.indent));
    const where = before >= text.length ? "" : ` before line ${lineOf(before)}`;
    const insert = lineEnd(text, block.end);
    const eol = eolOf(text, insert);
    problems.push(
      say("missing-brace", at, `The block of ${titleOf(header)} is not closed: \`}\` is missing${where}.`, [
        fix("Close the block", [{ start: insert, end: insert, text: `${eol}${pad}}` }], true),
      ]),
    );
  }

  function titleOf(header: Statement): string {
    const name = header.match?.facts.find(({ slot }) => slot === "name" || slot === "ref")?.name;
    const word = header.word?.text ?? header.row?.word ?? "this line";
    return name === undefined ? `\`${word}\`` : `\`${word} ${name}\``;
  }

  function close(at: number, brace: Token): void {
    if (ignored > 0) {
      ignored--;
      return;
    }
    if (frames.length === 1) {
      stray(brace, "This brace closes nothing.");
      return;
    }
    const own = phrases[at]!.items.length === 0 ? ahead.braceIndent(at) : -1;
    if (own >= 0 && !balanced) closeInner(at, own);
    const top = frames.at(-1)!;
    if (blockGoesOn(at, top)) {
      stray(brace, `This brace ends the block of ${titleOf(top.header!)}, but its lines go on below.`);
      return;
    }
    const header = top.header!;
    header.block!.end = endOf(brace);
    header.end = Math.max(header.end, endOf(brace));
    frames.pop();
  }

  /** A brace that stands under an outer header: the blocks inside it were not closed. */
  function closeInner(at: number, column: number): void {
    const outer = frames.findIndex((frame, index) => index > 0 && frame.indent === column);
    if (outer < 0 || outer === frames.length - 1 || frames.at(-1)!.indent <= column) return;
    const next = ahead.next(at);
    const word = next === undefined ? undefined : firstWordOf(phrases[next]!.items);
    if (word !== undefined) {
      const inside = table.rows(frames[outer]!.kind, word).length > 0;
      const beyond = table.rows(frames[outer - 1]!.kind, word).length > 0;
      if (inside && !beyond) return;
    }
    while (frames.length - 1 > outer) closeVirtually(startOfLine(at), frames.at(-1)!);
  }

  function startOfLine(at: number): number {
    return phrases[at]!.end.startOffset;
  }

  /** Rule 3: the next line belongs to this block and to nothing outside it. */
  function blockGoesOn(at: number, top: Frame): boolean {
    const next = ahead.next(at);
    const word = next === undefined ? undefined : firstWordOf(phrases[next]!.items);
    if (next === undefined || word === undefined || top.kind === "unknown") return false;
    const outer = frames.at(-2)!;
    if (table.rows(top.kind, word).length === 0 || table.rows(outer.kind, word).length > 0) return false;
    const brace = ahead.nextBrace(next);
    const closedLater = brace !== undefined && phrases[brace]!.end.tokenType === T.Close;
    const column = ahead.indent(next);
    const best = ahead.openersOf(next, outer.kind);
    if (repeats(top, word) || !best.some(({ opens }) => opens === top.kind)) return false;
    return closedLater && (column > top.indent || column < 0 || top.childIndent <= top.indent);
  }

  /** Whether the block already has a line that answers the same question. */
  function repeats(top: Frame, word: string): boolean {
    const facets = table
      .rows(top.kind, word)
      .filter(({ many }) => many !== true)
      .map(facetOf);
    return top.statements.some(({ row }) => row !== undefined && facets.includes(facetOf(row)));
  }

  function stray(brace: Token, message: string): void {
    const fixes: Fix[] = [fix("Take the brace out", [{ ...spanOf(brace), text: "" }], true)];
    problems.push(say("stray-brace", spanOf(brace), message, fixes) satisfies Problem);
  }
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** Whether every brace that opens is closed and none closes what is not open. */
function bracesBalance(phrases: readonly Phrase[]): boolean {
  let depth = 0;
  for (const { end } of phrases) {
    if (end.tokenType === T.Open) depth++;
    else if (end.tokenType === T.Close && --depth < 0) return false;
  }
  return depth === 0;
}
