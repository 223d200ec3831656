/**
 * Hovers are read at a glance: what is longer than a dozen lines is cut, with a way to the rest.
 */

/** Most lines of a hover, the way to the rest in. */
export const MOST_LINES = 12;

/** Markdown of at most so many lines; pictures and rules between parts are none. `more` is the way to the rest, where there is one. */
export function shortened(markdown: string, more?: string): string {
  const lines = markdown.split("\n");
  const counted = lines.filter(isWords).length;
  if (counted <= MOST_LINES) return markdown;
  const kept: string[] = [];
  let count = 0;
  let isCode = false;
  for (const line of lines) {
    if (isWords(line) && ++count === MOST_LINES) break;
    kept.push(line);
    if (line.startsWith("```")) isCode = !isCode;
  }
  if (isCode) kept.push("```");
  while (/^(---)?$/.test(kept.at(-1) ?? "x")) kept.pop();
  const left = counted - MOST_LINES + 1;
  return `${kept.join("\n")}\n\n${more ? `[${left} more lines](${more})` : `…and ${left} more lines`}`;
}

const isWords = (line: string): boolean => line.trim() !== "" && !/^(---|```|!\[)/.test(line.trim());
