import { endOf, type Token } from "./tokens.ts";
import type { Comment, Statement } from "./tree.ts";

/** Comments as the tree holds them: without the `#` and one space. */
export function readComments(tokens: readonly Token[]): Comment[] {
  return tokens.map((token) => ({
    text: token.image.replace(/^# ?/, "").trimEnd(),
    start: token.startOffset,
    end: endOf(token),
  }));
}

/**
 * Gives each statement the comment lines directly above it as its description. A blank line between detaches them, and a
 * comment behind something else on its line belongs to that line.
 */
export function attachDescriptions(
  text: string,
  statements: readonly Statement[],
  comments: readonly Comment[],
): void {
  if (comments.length === 0) return;
  const byEnd = new Map(comments.filter(({ start }) => isAlone(text, start)).map((one) => [one.end, one]));
  const walk = (block: readonly Statement[]) => {
    for (const statement of block) {
      const description = above(text, statement.start, byEnd);
      if (description !== undefined) statement.description = description;
      if (statement.block !== undefined) walk(statement.block.statements);
    }
  };
  walk(statements);
}

function above(text: string, start: number, byEnd: ReadonlyMap<number, Comment>): string | undefined {
  const lines: string[] = [];
  let at = aloneFrom(text, start);
  if (at === undefined) return undefined;
  for (;;) {
    const end = previousEnd(text, at);
    const comment = end === undefined ? undefined : byEnd.get(end);
    if (comment === undefined) break;
    lines.unshift(comment.text);
    const start = aloneFrom(text, comment.start);
    if (start === undefined) break;
    at = start;
  }
  return lines.length === 0 ? undefined : lines.join("\n");
}

/** Where the line of a place begins, when only blanks stand before it there. */
function aloneFrom(text: string, place: number): number | undefined {
  let at = place;
  while (at > 0 && (text[at - 1] === " " || text[at - 1] === "\t" || text[at - 1] === "\uFEFF")) at--;
  return at === 0 || text[at - 1] === "\n" || text[at - 1] === "\r" ? at : undefined;
}

/** Where the line before ends, its line end and trailing blanks not counted. */
function previousEnd(text: string, start: number): number | undefined {
  if (start === 0) return undefined;
  return text[start - 1] === "\n" && text[start - 2] === "\r" ? start - 2 : start - 1;
}

function isAlone(text: string, start: number): boolean {
  return aloneFrom(text, start) !== undefined;
}
