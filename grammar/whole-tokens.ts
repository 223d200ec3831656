import { lineEnd, lineStart } from "./lines.ts";
import type { Edit } from "./problem.ts";
import { normalise } from "./spelling.ts";
import { endOf, lex, type Token } from "./tokens.ts";

/**
 * Whether edits leave every token alone that stands outside them: none is cut in two, and none grows together with what is put in
 * beside it. Edits that do not are not a mend, whatever they were meant to put right.
 */
export function keepsOtherTokens(text: string, edits: readonly Edit[]): boolean {
  if (edits.length === 0) return true;
  const sorted = [...edits].sort((one, other) => one.start - other.start);
  const from = sorted[0]!.start;
  const to = Math.max(...sorted.map(({ end }) => end));
  const first = lineStart(text, from);
  const last = lineEnd(text, to);
  const before = tokensOf(text.slice(first, last));
  const cut = (place: number) => before.some((token) => token.startOffset < place && endOf(token) > place);
  if (cut(from - first) || cut(to - first)) return false;
  let after = text.slice(first, last);
  for (const { start, end, text: put } of sorted.reverse())
    after = after.slice(0, start - first) + put + after.slice(end - first);
  const shift = after.length - (last - first);
  const kept = new Set(tokensOf(after).map((token) => named(token)));
  return before.every(
    (token) =>
      (endOf(token) <= from - first && kept.has(named(token))) ||
      (token.startOffset >= to - first && kept.has(named(token, shift))) ||
      (token.startOffset >= from - first && endOf(token) <= to - first),
  );
}

const named = (token: Token, shift = 0): string =>
  `${token.startOffset + shift} ${token.tokenType.name} ${token.image}`;

/** The tokens that the parser gets, and the comments. */
function tokensOf(text: string): Token[] {
  const { tokens, comments } = lex(text);
  return [...normalise(text, tokens).tokens.filter(({ image }) => image !== ""), ...comments];
}
