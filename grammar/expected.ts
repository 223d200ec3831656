import { facetOf } from "./blocks.ts";
import type { Kind } from "./kind.ts";
import { lineStart } from "./lines.ts";
import { readParts, type Setting } from "./parts.ts";
import { readPhrases } from "./phrases.ts";
import type { Span } from "./problem.ts";
import type { Row, Shape, Vocabulary } from "./row.ts";
import { matchRow } from "./shape.ts";
import { normalise } from "./spelling.ts";
import { markersOf, type Table, tableOf } from "./table.ts";
import { lex } from "./tokens.ts";
import type { Fact, Part, Statement, Tree } from "./tree.ts";
import { blockAt, lineAt } from "./walk.ts";

/** What could stand at a place in the text; completion is made from it. */
export interface Expectation {
  /**
   * - `first`: a word that begins a line; see `rows`.
   * - `part`: what goes on with a line; see `shapes`.
   * - `value`: an operand inside an expression, after a sign or a parenthesis; `shapes` has the slot it is for.
   * - `share`: what a share is of, after `1/3 of`.
   * - `unit`: a unit, right behind a number; `number` says of which slot.
   * - `text`: inside quotes; `shapes` has the slot. `comment`: inside a comment.
   */
  at: "first" | "part" | "value" | "share" | "unit" | "text" | "comment";
  /** The kind of block the place is in, and the statement whose block it is. */
  kind: Kind;
  block?: Statement;
  /** The statement whose line it is, when it has begun. */
  statement?: Statement;
  /** The row it seems to be. */
  row?: Row;
  /** Rows that can begin a line here: those whose question is not yet answered in this block. */
  rows: readonly Row[];
  /** Words and slots that could stand here. */
  shapes: readonly Shape[];
  /** The fact a number before the place became, when a unit may follow. */
  number?: Fact;
  /** The line could end here, and whether a block may then open. */
  complete: boolean;
  opens: boolean;
  /** What has been typed of the word so far, and the text that an accepted word would replace. */
  typed: string;
  span: Span;
}

const typing = /[\p{L}][\p{L}\p{M}\d_.-]*$/u;
const wordRest = /^[\p{L}\p{M}\d_-]*/u;

/** What could stand at a place, in whole and in broken text. */
export function expectedAt(tree: Tree, offset: number, vocabulary: Vocabulary): Expectation {
  const { text } = tree;
  const at = Math.max(0, Math.min(offset, text.length));
  const begin = lineStart(text, at);
  const scan = scanLine(text, begin, at);
  const typed =
    scan.quote === undefined && !scan.comment ? (typing.exec(text.slice(begin, at))?.[0] ?? "") : "";
  const from = at - typed.length;
  const block = blockAt(tree, from);
  const found: Expectation = {
    at: scan.comment ? "comment" : "part",
    kind: block?.block?.kind ?? "file",
    rows: [],
    shapes: [],
    complete: false,
    opens: false,
    typed,
    span: { start: from, end: at + (wordRest.exec(text.slice(at, at + 200))?.[0].length ?? 0) },
  };
  if (block !== undefined) found.block = block;
  if (scan.comment) return found;
  const head = text.slice(scan.phrase, scan.quote ?? from);
  const statement = lineAt(tree, scan.phrase + head.length - head.trimStart().length);
  if (head.trim() === "" && scan.quote === undefined) return expectFirst(found, tree, from, vocabulary);
  if (statement !== undefined) found.statement = statement;
  return expectRest(found, head, scan.quote !== undefined, tableOf(vocabulary));
}

/** Where the phrase at a place begins, and whether the place is in a comment or in quotes. */
function scanLine(
  text: string,
  begin: number,
  at: number,
): { phrase: number; comment: boolean; quote?: number } {
  let phrase = begin;
  let quote: number | undefined;
  for (let here = begin; here < at; here++) {
    const sign = text[here];
    if (quote !== undefined) {
      if (sign === "\\") here++;
      else if (sign === '"') quote = undefined;
    } else if (sign === '"') quote = here;
    else if (sign === "#") return { phrase, comment: true };
    else if (sign === ";" || sign === "{" || sign === "}") phrase = here + 1;
  }
  return quote === undefined ? { phrase, comment: false } : { phrase, comment: false, quote };
}

function expectFirst(found: Expectation, tree: Tree, from: number, vocabulary: Vocabulary): Expectation {
  const level = found.block?.block?.statements ?? tree.statements;
  const before = level.filter(({ start }) => start < from).at(-1);
  if (
    before?.row?.opens !== undefined &&
    before.block === undefined &&
    isFurtherIn(tree.text, before, from)
  ) {
    const rows = vocabulary.rows.filter(({ owner }) => owner === before.row?.opens);
    return { ...found, at: "first", kind: before.row.opens, block: before, rows };
  }
  const given = new Set<string>();
  for (const { row, start } of level) {
    if (row !== undefined && row.many !== true && start !== from) given.add(facetOf(row));
  }
  const rows = vocabulary.rows.filter((row) => row.owner === found.kind && !given.has(facetOf(row)));
  return { ...found, at: "first", rows };
}

/** Whether a place stands on the line below a header and further in. */
function isFurtherIn(text: string, header: Statement, from: number): boolean {
  const between = text.slice(header.end, from);
  const margin = (place: number) =>
    /^[ \t]*/.exec(text.slice(lineStart(text, place), place))?.[0].length ?? 0;
  return /^[^\S\r\n]*(?:\r\n|\r|\n)[ \t]*$/.test(between) && margin(from) > margin(header.start);
}

function expectRest(found: Expectation, head: string, inQuotes: boolean, table: Table): Expectation {
  const { kept, inside } = outsideParentheses(head);
  const { word, parts, rows } = readHead(kept, found.kind, table);
  if (word === undefined) return found;
  const unfinished = /[-+*/]\s*$/.test(kept) && parts.length > 0;
  const operand = inside || unfinished;
  const used = unfinished ? parts.slice(0, -1) : parts;
  if (!operand && /\bof\s+$/.test(kept)) return { ...found, at: "share", shapes: shareWords };
  const shapes: Shape[] = [];
  for (const row of rows) {
    const match = matchRow(row, used);
    if (match.stopped < used.length) continue;
    for (const shape of match.expected) if (!shapes.includes(shape)) shapes.push(shape);
    found.row ??= row;
    found.complete ||= match.complete && !operand;
    found.opens ||= match.complete && row.opens !== undefined && !operand;
    const fact = match.facts.at(-1);
    const last = used.at(-1);
    if (last?.is === "value" && isBare(last) && fact?.end === last.end && !operand) found.number = fact;
  }
  if (inQuotes) return { ...found, at: "text", shapes: shapes.filter(({ is }) => is === "slot") };
  if (operand) return { ...found, at: "value", shapes: shapes.filter(isValueSlot) };
  if (found.number !== undefined && /\d$/.test(kept)) return { ...found, at: "unit", shapes: [] };
  return { ...found, shapes };
}

const shareWords: readonly Shape[] = [
  { is: "word", word: "rail" },
  { is: "word", word: "post" },
];

/** The head of a line up to an open parenthesis, with the function before it left out. */
function outsideParentheses(head: string): { kept: string; inside: boolean } {
  const open: number[] = [];
  let quoted = false;
  for (let at = 0; at < head.length; at++) {
    const sign = head[at];
    if (sign === '"') quoted = !quoted;
    if (quoted) continue;
    if (sign === "(") open.push(at);
    if (sign === ")") open.pop();
  }
  const first = open[0];
  if (first === undefined) return { kept: head, inside: false };
  return { kept: head.slice(0, first).replace(/[\p{L}][\p{L}\d-]*$/u, ""), inside: true };
}

function readHead(
  head: string,
  kind: Kind,
  table: Table,
): { word: string | undefined; parts: readonly Part[]; rows: readonly Row[] } {
  const items = readPhrases(normalise(head, lex(head).tokens).tokens)[0]?.items ?? [];
  const plain: Setting = {
    isMarker: () => false,
    isFunction: table.isFunction,
    nearFunction: () => undefined,
    told: () => true,
  };
  const word = readParts(items, plain).word?.text;
  const rows = word === undefined ? [] : table.rows(kind, word);
  const markers = rows.map(({ shape }) => markersOf(shape));
  const isMarker = (text: string) => markers.some((set) => set.has(text));
  return { word, rows, parts: readParts(items, { ...plain, isMarker }).parts };
}

function isBare(part: Part): boolean {
  if (part.is !== "value") return false;
  const value = part.value.is === "negate" ? part.value.of : part.value;
  return value.is === "number";
}

function isValueSlot(shape: Shape): boolean {
  return shape.is === "slot" && ["length", "angle", "count", "value"].includes(shape.slot);
}
