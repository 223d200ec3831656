import { createToken, type IToken, Lexer, type TokenType } from "chevrotain";
import type { Span } from "./problem.ts";
import { finish, type Steps } from "./steps.ts";

/**
 * The tokens of the language. There are no keywords: every word is a `Word`, and the vocabulary table says what it means.
 * Any character at all is some token, so reading never fails here.
 */
export type Token = IToken;

/** Letters of any script; digits and hyphens may follow. */
const letter =
  "A-Za-z\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u1FFF\\u2C00-\\u2DFF\\u3040-\\uD7FF\\uF900-\\uFDFF";
const segment = `[${letter}\\d_]+(?:-[${letter}\\d_]+)*`;

/** One character, whatever it is; both halves of those beyond the first plane. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: any character at all may stand in a text
const anything = /[\uD800-\uDBFF][\uDC00-\uDFFF]|[\u0000-\uFFFF]/;

/** Every kind of token, in the order they are tried. */
export const T = {
  Newline: createToken({ name: "Newline", pattern: /\r\n|\r|\n/ }),
  Blank: createToken({
    name: "Blank",
    pattern: /[ \t\f\v\u00A0\u1680\u2000-\u200B\u2028\u2029\u202F\u205F\u3000\uFEFF]+/,
    group: Lexer.SKIPPED,
  }),
  Comment: createToken({ name: "Comment", pattern: /#[^\r\n]*/, group: "comments" }),
  Text: createToken({ name: "Text", pattern: /"(?:\\[^\r\n]|[^"\\\r\n])*"/ }),
  CurlyText: createToken({
    name: "CurlyText",
    pattern: /[\u201C\u201D\u201E][^\u201C\u201D\u201E"\r\n]*[\u201C\u201D"]/,
  }),
  Conflict: createToken({
    name: "Conflict",
    pattern: /<{7}[^\r\n]*|>{7}[^\r\n]*|={7}[^\r\n]*|\|{7}[^\r\n]*/,
  }),
  Day: createToken({ name: "Day", pattern: /\d{4}-\d{1,2}-\d{1,2}/ }),
  /** `1/4"` and its curly and prime forms, which the language writes `1/4in`. */
  InchMark: createToken({
    name: "InchMark",
    pattern: /(?:\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)["\u2033\u201D'\u2032\u2019]/,
  }),
  /** `½`, `1½`. */
  Vulgar: createToken({ name: "Vulgar", pattern: /(?:\d+[ \t]*)?[\u00BC-\u00BE\u2150-\u215E]/ }),
  Slope: createToken({ name: "Slope", pattern: /\d+(?:\.\d+)?:\d+(?:\.\d+)?/ }),
  Number: createToken({ name: "Number", pattern: /\d+[ \t]+\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?/ }),
  Word: createToken({
    name: "Word",
    pattern: new RegExp(`[${letter}][${letter}\\d_]*(?:-[${letter}\\d_]+)*(?:\\.${segment})*`),
  }),
  Compare: createToken({ name: "Compare", pattern: /<=|>=|[<>\u2264\u2265]/ }),
  Equals: createToken({ name: "Equals", pattern: /=/ }),
  Open: createToken({ name: "Open", pattern: /\{/ }),
  Close: createToken({ name: "Close", pattern: /\}/ }),
  LeftParen: createToken({ name: "LeftParen", pattern: /\(/ }),
  RightParen: createToken({ name: "RightParen", pattern: /\)/ }),
  Comma: createToken({ name: "Comma", pattern: /,/ }),
  Semicolon: createToken({ name: "Semicolon", pattern: /;/ }),
  Plus: createToken({ name: "Plus", pattern: /\+/ }),
  Minus: createToken({ name: "Minus", pattern: /[-\u2010-\u2015\u2212]/ }),
  Star: createToken({ name: "Star", pattern: /[*\u00B7\u22C5]/ }),
  Slash: createToken({ name: "Slash", pattern: /[/\u00F7\u2044]/ }),
  Percent: createToken({ name: "Percent", pattern: /%/ }),
  Degree: createToken({ name: "Degree", pattern: /[\u00B0\u00BA]/ }),
  Times: createToken({ name: "Times", pattern: /\u00D7/ }),
  Error: createToken({ name: "Error", pattern: anything }),
  /** A word that stands right after a number and is a unit; told apart after lexing. */
  Unit: createToken({ name: "Unit", pattern: Lexer.NA }),
  /** The `of` of `1/3 of rail`; told apart after lexing. */
  Of: createToken({ name: "Of", pattern: Lexer.NA }),
} satisfies Record<string, TokenType>;

let lexer: Lexer | undefined;

export interface Lexed {
  tokens: Token[];
  /** Apart from the others. */
  comments: Token[];
}

/** The tokens of a text. */
export const lex = (text: string): Lexed => finish(lexSteps(text));

/** Read at one go, in characters; no token but the line's own end reaches over a line. */
const AT_ONCE = 16_000;

/** The same, resting after some lines. */
export function* lexSteps(text: string): Steps<Lexed> {
  const all: Lexed = { tokens: [], comments: [] };
  for (let from = 0; from < text.length; ) {
    const newLine = text.length - from > AT_ONCE ? text.indexOf("\n", from + AT_ONCE) : -1;
    const to = newLine < 0 ? text.length : newLine + 1;
    lexPiece(text.slice(from, to), from, all);
    from = to;
    if (from < text.length) yield;
  }
  return all;
}

function lexPiece(text: string, from: number, { tokens, comments }: Lexed): void {
  lexer ??= new Lexer(Object.values(T), {
    positionTracking: "onlyOffset",
    skipValidations: true,
    ensureOptimizations: true,
  });
  const read = lexer.tokenize(text);
  for (const token of read.tokens) {
    token.startOffset += from;
    tokens.push(token);
  }
  for (const token of read.groups.comments ?? []) {
    token.startOffset += from;
    comments.push(token);
  }
}

/** Where a token ends; only its start is kept by the lexer. */
export function endOf(token: Token): number {
  return token.startOffset + token.image.length;
}

export function spanOf(token: Token): Span {
  return { start: token.startOffset, end: endOf(token) };
}

/** Makes a token of another kind, at its place. */
export function makeToken(type: TokenType, image: string, startOffset: number): Token {
  return { image, startOffset, tokenType: type, tokenTypeIdx: type.tokenTypeIdx as number } as Token;
}

/** Changes what kind of token this is. */
export function retag(token: Token, type: TokenType): Token {
  token.tokenType = type;
  token.tokenTypeIdx = type.tokenTypeIdx as number;
  return token;
}
