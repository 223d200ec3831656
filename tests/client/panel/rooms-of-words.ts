/**
 * How large the panels are that lettering is looked at in, and the room that words take at least, with the widths that Helvetica's letters
 * have in its published metrics (the file Helvetica.afm, as the PDF library carries it).
 */
import type { Placed } from "../../../client/panel/webview/lettering/search.ts";
import type { Point } from "../../../server/drawing/sheet.ts";

/** A narrow panel, a low one, half of a screen, a whole one. */
export const panelSizes = [
  [360, 700],
  [1000, 400],
  [680, 720],
  [1280, 800],
] as const;

/** Widths of figures and of the widest small letters in thousandths of the height: digits 556, capitals 722 or less, m 833. */
export function leastWidth(words: string, size: number): number {
  let sum = 0;
  for (const letter of words)
    sum += /[0-9]/.test(letter)
      ? 556
      : /[.,:' iljtfr|]/.test(letter)
        ? 222
        : /[mwMW]/.test(letter)
          ? 722
          : 500;
  return (sum / 1000) * size;
}

/** The corners of the room that words take at least, from their place and their size. */
export function corners({ lines, at: [x, y], anchor, upright, label }: Placed): Point[] {
  if (label.kind.startsWith("flag")) {
    return [
      [x - 9, y - 8],
      [x + 9, y + 8],
    ];
  }
  const wide = Math.max(...lines.map((line) => leastWidth(line, label.size)));
  const from = anchor === "start" ? 0 : anchor === "middle" ? -wide / 2 : -wide;
  const [top, foot] = [-0.7 * label.size, (lines.length - 1) * 1.25 * label.size];
  return upright
    ? [
        [x + top, y - from - wide],
        [x + foot, y - from],
      ]
    : [
        [x + from, y + top],
        [x + from + wide, y + foot],
      ];
}

export function overlap(a: readonly Point[], b: readonly Point[]): boolean {
  const span = (points: readonly Point[], axis: 0 | 1) => {
    const values = points.map((point) => point[axis]);
    return [Math.min(...values), Math.max(...values)] as const;
  };
  return ([0, 1] as const).every((axis) => {
    const [one, other] = [span(a, axis), span(b, axis)];
    return one[0] < other[1] && other[0] < one[1];
  });
}
