/**
 * Tables of words and figures.
 */
import type { Block } from "./faces.ts";
import { linesOf, widthOf } from "./lettering.ts";
import { type Item, line, SMALL, words } from "./page.ts";

/** From one line to the next, mm: 1.7 times the height of capitals. */
export const LINE = 3;
const PAD = 2.2;

/** A table under a heading of its own; its last column takes what is left and breaks its lines. */
export function tableBlock(
  title: string,
  headings: readonly string[],
  rows: readonly (readonly string[])[],
  wide: number,
): Block {
  const last = headings.length - 1;
  const widths = headings.map((heading, k) => {
    const cells = rows.map((row) => widthOf(row[k] ?? "", SMALL));
    return Math.max(widthOf(heading, SMALL, true), ...cells) + PAD;
  });
  const before = widths.slice(0, last).reduce((sum, w) => sum + w, 0);
  widths[last] = Math.max(20, Math.min(widths[last]!, wide - before));
  const items: Item[] = [];
  let y = 3.2;
  if (title) {
    items.push(words([0, y], title, SMALL + 1, { bold: true }));
    y += LINE + 0.6;
  }
  const starts = widths.map((_, k) => widths.slice(0, k).reduce((sum, w) => sum + w, 0));
  if (headings.some(Boolean)) {
    headings.forEach((heading, k) => {
      items.push(words([starts[k]!, y], heading, SMALL, { bold: true }));
    });
    items.push(rule(y + 1, Math.min(wide, starts[last]! + widths[last]!)));
    y += LINE + 0.8;
  }
  for (const row of rows) {
    const tail = linesOf(row[last] ?? "", SMALL, widths[last]!);
    for (let k = 0; k < last; k++) if (row[k]) items.push(words([starts[k]!, y], row[k]!, SMALL));
    tail.forEach((text, k) => {
      items.push(words([starts[last]!, y + k * LINE], text, SMALL));
    });
    y += Math.max(1, tail.length) * LINE;
  }
  return { items, height: y - LINE + 1.5 };
}

const rule = (y: number, to: number): Item =>
  line(
    [
      [0, y],
      [to, y],
    ],
    "fine",
  );

/** Sentences under each other, each broken to the width. */
export function paragraphs(sentences: readonly string[], wide: number, size = SMALL): Block {
  const lines = sentences.flatMap((sentence) => linesOf(sentence, size, wide));
  return {
    items: lines.map((text, k) => words([0, 2.8 + k * LINE], text, size)),
    height: lines.length * LINE + (lines.length ? 0.6 : 0),
  };
}
