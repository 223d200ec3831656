/**
 * The papers that workshops print on, lying on their long side.
 */
export type PaperName = "a4" | "letter";

export interface Paper {
  width: number;
  height: number;
}

/** mm: ISO 216 A4, and ANSI/ASME Y14.1 A (8½ × 11 in). */
export const papers: Record<PaperName, Paper> = {
  a4: { width: 297, height: 210 },
  letter: { width: 279.4, height: 215.9 },
};

/** Left free on every side: what office printers cannot reach is some 5 mm. */
export const MARGIN = 10;
