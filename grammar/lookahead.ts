import type { Kind } from "./kind.ts";
import { startOf } from "./parts.ts";
import type { Phrase } from "./phrases.ts";
import type { Row } from "./row.ts";
import { firstWordOf, suitability } from "./statement.ts";
import type { Table } from "./table.ts";
import { T } from "./tokens.ts";

/** How many lines of a block are looked at to tell what kind it is. */
const farthest = 40;

/** What repair wants to know of the phrases further on; each answer costs the same however long the file. */
export function lookahead(text: string, phrases: readonly Phrase[], table: Table) {
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
    /** The openers whose kinds of block the lines from here to the next `}` suit best, alike well; none when no line suits any. */
    openersOf: (from: number, within: Kind): Row[] => {
      let best: Row[] = [];
      let most = 1;
      for (const row of table.openers(within)) {
        const score = scoreOf(from, row.opens!);
        if (score > most) best = [row];
        else if (score === most) best.push(row);
        most = Math.max(most, score);
      }
      return best;
    },
    /** Whether some line from here to the next `}` could stand in a kind of block. */
    suits: (from: number, kind: Kind): boolean =>
      linesFrom(from).some((at) => {
        const word = firstWordOf(phrases[at]!.items);
        return word !== undefined && table.rows(kind, word).length > 0;
      }),
    /** The phrase whose `}` ends the block around this one, when it is not far. */
    closeOf: (from: number): number | undefined => {
      let depth = 1;
      for (let at = from; at < Math.min(phrases.length, from + 4 * farthest); at++) {
        const type = phrases[at]!.end.tokenType;
        if (type === T.Open) depth++;
        if (type === T.Close && --depth === 0) return at;
      }
      return undefined;
    },
  };

  /** The phrases from here to the next `}` that stand in no block of their own. */
  function linesFrom(from: number): number[] {
    const lines: number[] = [];
    let depth = 1;
    for (let at = from; at < Math.min(phrases.length, from + farthest) && depth > 0; at++) {
      const { items, end } = phrases[at]!;
      if (depth === 1 && items.length > 0) lines.push(at);
      if (end.tokenType === T.Open) depth++;
      if (end.tokenType === T.Close) depth--;
    }
    return lines;
  }

  function scoreOf(from: number, kind: Kind): number {
    return linesFrom(from).reduce((sum, at) => sum + suitability(phrases[at]!.items, kind, table), 0);
  }
}
