/**
 * The papers that workshops print on, lying on their long side.
 */
export type PaperName = "a4" | "a3" | "letter" | "tabloid";

export interface Paper {
  width: number;
  height: number;
}

/** mm: ISO 216 A4 and A3; ANSI/ASME Y14.1 A (8½ × 11 in) and B (11 × 17 in). */
export const papers: Record<PaperName, Paper> = {
  a4: { width: 297, height: 210 },
  a3: { width: 420, height: 297 },
  letter: { width: 279.4, height: 215.9 },
  tabloid: { width: 431.8, height: 279.4 },
};

/** Where papers are ISO's, views stand in first-angle projection; where they are ANSI's, in third-angle (common practice of each). */
export const angleOn = (name: PaperName): "first" | "third" =>
  name === "a4" || name === "a3" ? "first" : "third";

/** The same paper standing on its short side. */
export const onShortSide = ({ width, height }: Paper): Paper => ({ width: height, height: width });

/** Left free on every side: what office printers cannot reach is some 5 mm. */
export const MARGIN = 10;
