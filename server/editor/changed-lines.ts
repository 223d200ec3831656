/**
 * The edits that make one text of another, line by line.
 */
import type { Edit } from "../../grammar/problem.ts";

/** Lines compared with each other at most in search of those that stayed; beyond that all between is one edit. */
const MOST_COMPARED = 4_000_000;

/** Edits in order, none touching another; each as short as it can be at both ends. */
export function changedLines(before: string, after: string): Edit[] {
  const [old, fresh] = [linesOf(before), linesOf(after)];
  let top = 0;
  while (top < old.length && top < fresh.length && old[top] === fresh[top]) top++;
  let bottom = 0;
  while (
    bottom < old.length - top &&
    bottom < fresh.length - top &&
    old[old.length - 1 - bottom] === fresh[fresh.length - 1 - bottom]
  )
    bottom++;
  const stayed = longestCommon(old.slice(top, old.length - bottom), fresh.slice(top, fresh.length - bottom));
  const edits: Edit[] = [];
  let [at, taken] = [top, top];
  let start = old.slice(0, top).join("").length;
  for (const [oldLine, freshLine] of [
    ...stayed,
    [old.length - bottom - top, fresh.length - bottom - top],
  ] as const) {
    const gone = old.slice(at, oldLine + top).join("");
    const put = fresh.slice(taken, freshLine + top).join("");
    if (gone !== put) edits.push(shortened(start, gone, put));
    start += gone.length + (old[oldLine + top] ?? "").length;
    at = oldLine + top + 1;
    taken = freshLine + top + 1;
  }
  return edits;
}

/** Lines with their line ends. */
const linesOf = (text: string): string[] => text.match(/[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+$/g) ?? [];

/** Pairs of places where the same lines stand in both, as many as there can be. */
function longestCommon(old: readonly string[], fresh: readonly string[]): [number, number][] {
  if (old.length * fresh.length > MOST_COMPARED) return [];
  const width = fresh.length + 1;
  const longest = new Uint32Array((old.length + 1) * width);
  for (let a = old.length - 1; a >= 0; a--)
    for (let b = fresh.length - 1; b >= 0; b--)
      longest[a * width + b] =
        old[a] === fresh[b]
          ? longest[(a + 1) * width + b + 1]! + 1
          : Math.max(longest[(a + 1) * width + b]!, longest[a * width + b + 1]!);
  const pairs: [number, number][] = [];
  for (let a = 0, b = 0; a < old.length && b < fresh.length; ) {
    if (old[a] === fresh[b]) pairs.push([a++, b++]);
    else if (longest[(a + 1) * width + b]! >= longest[a * width + b + 1]!) a++;
    else b++;
  }
  return pairs;
}

/** Without what both have at the beginning and at the end. */
function shortened(start: number, gone: string, put: string): Edit {
  let from = 0;
  while (from < gone.length && from < put.length && gone[from] === put[from]) from++;
  let to = 0;
  while (
    to < gone.length - from &&
    to < put.length - from &&
    gone[gone.length - 1 - to] === put[put.length - 1 - to]
  )
    to++;
  return { start: start + from, end: start + gone.length - to, text: put.slice(from, put.length - to) };
}
