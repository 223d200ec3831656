import { POINT } from "./page.ts";

/** Widths of Helvetica's signs from the space on, thousandths of its height: Adobe's metrics of the fourteen standard fonts of PDF. */
const PLAIN = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
const BOLD = [
  278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278,
  556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584,
  556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611, 611, 611, 389, 556,
  333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
];
const OTHERS: Record<string, number> = { "°": 400, "×": 584, "–": 556, Ø: 778, "…": 1000 };
/** Any other sign: wide enough for most. */
const OTHER = 667;

/** How wide a line of words is, mm, in type of so many points. */
export function widthOf(text: string, size: number, bold = false): number {
  const widths = bold ? BOLD : PLAIN;
  let sum = 0;
  for (const sign of text) sum += OTHERS[sign] ?? widths[sign.codePointAt(0)! - 32] ?? OTHER;
  return (sum / 1000) * size * POINT;
}

/** A text in lines no wider than so many mm, broken at spaces. */
export function linesOf(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of text.split(" ")) {
    const longer = current ? `${current} ${word}` : word;
    if (current && widthOf(longer, size) > width) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  if (current) lines.push(current);
  return lines;
}

/** A text cut off with an ellipsis where it is wider than so many mm. */
export function shortened(text: string, size: number, width: number, bold = false): string {
  if (widthOf(text, size, bold) <= width) return text;
  const signs = [...text];
  while (signs.length > 1 && widthOf(`${signs.join("")}…`, size, bold) > width) signs.pop();
  return `${signs.join("")}…`;
}
