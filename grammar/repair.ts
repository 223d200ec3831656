import { eolOf, lineCounter, lineEnd } from "./lines.ts";
import { nearest } from "./nearest.ts";
import { startOf } from "./parts.ts";
import type { Phrase } from "./phrases.ts";
import type { Fix, Problem, Span } from "./problem.ts";
import type { Row } from "./row.ts";
import { fix, replaceFix, say } from "./say.ts";
import { type Context, type Forced, firstWordOf, isOnlyWaste, readStatements } from "./statement.ts";
import { endOf, spanOf, T, type Token } from "./tokens.ts";
import type { Kind, Statement } from "./tree.ts";
import { exampleOf, nameOfKind } from "./wording.ts";

/** How deep blocks may stand in one another; the language needs two. */
const deepest = 20;
/** How many lines of a block are looked at to tell what kind it is. */
const farthest = 40;

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
 * header whose word is unknown are each told of once and cost no other line its meaning.
 */
export function assemble(text: string, phrases: readonly Phrase[], context: Context): Statement[] {
  const { table, problems } = context;
  const file: Frame = { kind: "file", statements: [], indent: -1, childIndent: 0 };
  const frames: Frame[] = [file];
  const ahead = lookahead(text, phrases);
  const lineOf = lineCounter(text);
  let ignored = 0;
  let waiting: { statement: Statement; indent: number } | undefined;

  for (let at = 0; at < phrases.length; at++) {
    const { items, end } = phrases[at]!;
    const indent = ahead.indent(at);
    let last: Statement | undefined;
    if (items.length > 0) {
      waiting = undefined;
      if (indent >= 0) closeForgotten(at, indent);
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
    const forced = end.tokenType === T.Open ? guessHeader(at, top.kind) : undefined;
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
      const guess = ahead.kindOf(
        at,
        table.openers(top.kind),
        (one, word) => table.rows(one, word).length > 0,
      );
      kind = guess?.opens ?? "unknown";
      if (header === undefined) {
        if (guess !== undefined) statement.row = guess;
        const what =
          guess === undefined ? "" : ` Its lines belong to ${nameOfKind(kind)}: \`${exampleOf(guess)} {\`.`;
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

  /** A header whose word is unknown: taken for the opener it is most like, or the one its lines belong to. */
  function guessHeader(at: number, kind: Kind): Forced | undefined {
    const { items } = phrases[at]!;
    const word = firstWordOf(items);
    const openers = table.openers(kind);
    if (openers.length === 0 || (word !== undefined && table.rows(kind, word).length > 0)) return undefined;
    const byLines = ahead.kindOf(at, openers, (one, inner) => table.rows(one, inner).length > 0);
    const like =
      word === undefined
        ? undefined
        : nearest(
            word,
            openers.map((row) => row.word),
          );
    const only = word !== undefined && items.length === 1;
    const alike = openers.find((row) => row.word === like);
    const span = { start: startOf(items[0]!), end: startOf(items[0]!) + (word?.length ?? 0) };
    if (alike !== undefined && (byLines === undefined || byLines.opens === alike.opens) && !only) {
      problems.push(
        say("unknown-word", span, `\`${word}\` opens no block here; did you mean \`${alike.word}\`?`, [
          replaceFix(span, alike.word, true),
        ]),
      );
      return { row: alike, headless: false };
    }
    if (byLines === undefined || word === undefined) return undefined;
    const whole = readsAsName(items.length, byLines);
    if (!whole) {
      problems.push(
        say(
          "unknown-word",
          span,
          `\`${word}\` opens no block here; the lines inside belong to ${nameOfKind(byLines.opens!)}: \`${byLines.word}\`.`,
          [replaceFix(span, byLines.word)],
        ),
      );
      return { row: byLines, headless: false };
    }
    problems.push(
      say("missing-word", span, `\`${byLines.word}\` is missing before \`${word}\`.`, [
        fix(
          `Put \`${byLines.word}\` in`,
          [{ start: span.start, end: span.start, text: `${byLines.word} ` }],
          true,
        ),
      ]),
    );
    return { row: byLines, headless: true };
  }

  /** Whether a header of so many items reads as a name without its opening word. */
  function readsAsName(items: number, row: Row): boolean {
    return items === 1 || (items === 2 && row.shape.is === "seq");
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
          `${capital(nameOfKind(row.opens))} needs a block: \`${exampleOf(row)} { … }\`.`,
        ),
      );
    }
    return undefined;
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
    const eol = eolOf(text);
    const where = before >= text.length ? "" : ` before line ${lineOf(before)}`;
    const insert = lineEnd(text, block.end);
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
    if (own >= 0) closeInner(at, own);
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
    return closedLater && (column > top.indent || column < 0 || top.childIndent <= top.indent);
  }

  function stray(brace: Token, message: string): void {
    const fixes: Fix[] = [fix("Take the brace out", [{ ...spanOf(brace), text: "" }], true)];
    problems.push(say("stray-brace", spanOf(brace), message, fixes) satisfies Problem);
  }
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

/** What repair wants to know of the phrases further on; each answer costs the same however long the file. */
function lookahead(text: string, phrases: readonly Phrase[]) {
  const braces: (number | undefined)[] = new Array(phrases.length);
  const filled: (number | undefined)[] = new Array(phrases.length);
  let brace: number | undefined;
  let full: number | undefined;
  for (let at = phrases.length - 1; at >= 0; at--) {
    const { items, end } = phrases[at]!;
    filled[at] = full;
    if (end.tokenType === T.Open || end.tokenType === T.Close) brace = at;
    if (items.length > 0) full = at;
    braces[at] = brace;
  }
  const column = (offset: number): number => {
    let width = 0;
    for (let at = offset - 1; at >= 0; at--) {
      const sign = text.charCodeAt(at);
      if (sign === 10 || sign === 13) break;
      if (sign === 9) width += 4;
      else if (sign === 32 || sign === 0xa0) width += 1;
      else if (sign !== 0xfeff) return -1;
    }
    return width;
  };
  return {
    /** How far in a phrase stands; -1 when it does not begin its line. */
    indent: (at: number): number =>
      phrases[at]!.items.length > 0 ? column(startOf(phrases[at]!.items[0]!)) : -1,
    braceIndent: (at: number): number => column(phrases[at]!.end.startOffset),
    /** The first phrase from here on that ends with a brace. */
    nextBrace: (at: number): number | undefined => braces[at],
    /** The next phrase that is not empty. */
    next: (at: number): number | undefined => filled[at],
    /** Whether only line ends stand between this phrase and a `{`. */
    nextIsBrace: (at: number): boolean => {
      const type = phrases[at]!.end.tokenType;
      if (type !== T.Newline) return false;
      const next = at + 1 < phrases.length ? braces[at + 1] : undefined;
      if (next === undefined || phrases[next]!.items.length > 0 || phrases[next]!.end.tokenType !== T.Open)
        return false;
      const between = filled[at];
      return between === undefined || between > next;
    },
    /** The opener whose kind of block the lines after a `{` belong to most, or undefined when to none. */
    kindOf: (
      at: number,
      openers: readonly Row[],
      has: (kind: Kind, word: string) => boolean,
    ): Row | undefined => {
      let best: Row | undefined;
      let most = 0;
      for (const row of openers) {
        const score = scoreOf(at, (word) => has(row.opens!, word));
        if (score > most) {
          best = row;
          most = score;
        }
      }
      return best;
    },
  };

  function scoreOf(at: number, has: (word: string) => boolean): number {
    let depth = 1;
    let score = 0;
    for (let next = at + 1; next < Math.min(phrases.length, at + farthest) && depth > 0; next++) {
      const { items, end } = phrases[next]!;
      const word = firstWordOf(items);
      if (depth === 1 && word !== undefined && has(word)) score++;
      if (end.tokenType === T.Open) depth++;
      if (end.tokenType === T.Close) depth--;
    }
    return score;
  }
}
