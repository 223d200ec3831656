import { codes } from "./codes.ts";
import { eolOf } from "./lines.ts";
import { parse } from "./parser.ts";
import type { Edit } from "./problem.ts";
import type { Vocabulary } from "./row.ts";
import { normalise } from "./spelling.ts";
import { endOf, lex, T, type Token } from "./tokens.ts";
import type { Tree } from "./tree.ts";
import { everyValue } from "./walk.ts";

/** How a formatted text is laid out. */
interface Layout {
  /** What one step of indentation is; two spaces unless given. */
  indent?: string;
}

/**
 * The edits that lay a text out: they touch only the blanks between its words, so no word and no comment can be lost. None in a
 * text with errors of reading. Comments behind a line keep their column when two or more spaces stand before them.
 */
export function format(text: string, vocabulary: Vocabulary, layout: Layout = {}): Edit[] {
  return formatTree(parse(text, vocabulary), layout);
}

/** The text laid out. */
export function formatText(text: string, vocabulary: Vocabulary, layout: Layout = {}): string {
  return applyEdits(text, format(text, vocabulary, layout));
}

/** As `format`, of a text already read. */
export function formatTree(tree: Tree, { indent = "  " }: Layout = {}): Edit[] {
  if (tree.problems.some(({ code }) => isSyntax(code))) return [];
  const { text } = tree;
  const read = lex(text);
  const tokens = merge(normalise(text, read.tokens).tokens, read.comments);
  const roles = rolesOf(tree);
  const edits: Edit[] = [];
  const put = (start: number, end: number, wanted: string) => {
    if (text.slice(start, end) !== wanted) edits.push({ start, end, text: wanted });
  };
  let depth = 0;
  let before: Token | undefined;
  for (const token of tokens) {
    const start = before === undefined ? (text.startsWith("\uFEFF") ? 1 : 0) : endOf(before);
    if (token.tokenType === T.Close) depth--;
    const margin = indent.repeat(Math.max(0, depth));
    put(start, token.startOffset, before === undefined ? "" : between(text, before, token, margin, roles));
    if (token.tokenType === T.Number && /[ \t]/.test(token.image)) {
      put(token.startOffset, endOf(token), token.image.replace(/[ \t]+/, " "));
    }
    if (token.tokenType === T.Comment) {
      const kept = token.image.trimEnd();
      put(token.startOffset + kept.length, endOf(token), "");
    }
    if (token.tokenType === T.Open) depth++;
    before = token;
  }
  if (before !== undefined) put(endOf(before), text.length, eolOf(text));
  return edits;
}

/** Puts edits, in the order of the text and apart from each other, into it. */
export function applyEdits(text: string, edits: readonly Edit[]): string {
  let out = "";
  let at = 0;
  for (const edit of edits) {
    out += text.slice(at, edit.start) + edit.text;
    at = edit.end;
  }
  return out + text.slice(at);
}

/** Where tokens have a role that they do not show themselves. */
interface Roles {
  /** Minus signs that stand before one value, and do not subtract. */
  signs: ReadonlySet<number>;
  /** Words that are called. */
  functions: ReadonlySet<number>;
}

function rolesOf(tree: Tree): Roles {
  const signs = new Set<number>();
  const functions = new Set<number>();
  for (const value of everyValue(tree)) {
    if (value.is === "negate") signs.add(value.start);
    else if (value.is === "call") functions.add(value.fn.start);
  }
  return { signs, functions };
}

/** The blanks that should stand between two neighbours. */
function between(text: string, left: Token, right: Token, margin: string, roles: Roles): string {
  const blank = text.slice(endOf(left), right.startOffset);
  const ends = blank.match(/\r\n|\r|\n/g);
  if (ends !== null && !joins(left, right)) return ends.slice(0, 2).join("") + margin;
  if (right.tokenType === T.Comment) return /^ {2,}$/.test(blank) ? blank : "  ";
  return touches(left, right, roles) ? "" : " ";
}

/** A brace on a line of its own belongs behind its header. */
function joins(left: Token, right: Token): boolean {
  if (right.tokenType !== T.Open) return false;
  const type = left.tokenType;
  return type !== T.Comment && type !== T.Open && type !== T.Close && type !== T.Semicolon;
}

function touches(left: Token, right: Token, { signs, functions }: Roles): boolean {
  switch (right.tokenType) {
    case T.Comma:
    case T.Semicolon:
    case T.RightParen:
    case T.Unit:
      return true;
    case T.LeftParen:
      if (left.tokenType === T.Word && functions.has(left.startOffset)) return true;
  }
  return left.tokenType === T.LeftParen || (left.tokenType === T.Minus && signs.has(left.startOffset));
}

/** Tokens and comments in the order of the text, line ends left out. */
function merge(tokens: readonly Token[], comments: readonly Token[]): Token[] {
  const out: Token[] = [];
  let at = 0;
  for (const token of tokens) {
    while (at < comments.length && comments[at]!.startOffset < token.startOffset) out.push(comments[at++]!);
    if (token.tokenType !== T.Newline) out.push(token);
  }
  return out.concat(comments.slice(at));
}

const meaningCodes = new Set(codes.filter(({ syntax }) => syntax !== true).map(({ code }) => code));

/** Whether a problem is one of reading the text, so that its layout is in doubt. */
export function isSyntax(code: string): boolean {
  return !meaningCodes.has(code);
}
