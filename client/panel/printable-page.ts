/**
 * A drawing on a page of its own, to be printed by a browser to a scale that drawings use.
 */
import type { Sheet } from "../../server/drawing/sheet.ts";
import { sheetToSvg } from "../../server/drawing/svg.ts";
import { escaped } from "../../server/drawing/xml.ts";

export interface Paper {
  name: string;
  /** Upright, mm. */
  width: number;
  height: number;
}

/** Sizes: ISO 216 and ANSI/ASME Y14.1 (A and B), from memory. */
export const papers: readonly Paper[] = [
  { name: "A4", width: 210, height: 297 },
  { name: "A3", width: 297, height: 420 },
  { name: "Letter", width: 215.9, height: 279.4 },
  { name: "Tabloid", width: 279.4, height: 431.8 },
];

/** Scales of reduction: ISO 5455, from memory. */
const scales = [1, 2, 5, 10, 20, 50, 100];

/** What printers leave blank, mm. */
const MARGIN = 10;

interface Fit {
  /** One to this. */
  scale: number;
  /** The paper lies on its long side. */
  turned: boolean;
}

/** The largest usual scale at which the sheet goes on the paper, upright if it can. */
export function scaleOn({ width, height }: Paper, sheet: Pick<Sheet, "width" | "height">): Fit {
  const short = width - 2 * MARGIN;
  const long = height - 2 * MARGIN;
  for (const scale of scales) {
    const [wide, high] = [sheet.width / scale, sheet.height / scale];
    if (wide <= short && high <= long) return { scale, turned: false };
    if (wide <= long && high <= short) return { scale, turned: true };
  }
  return { scale: scales[scales.length - 1]!, turned: false };
}

/** The page's HTML. It fetches nothing, and asks to be printed as soon as it is open. */
export function printablePage(sheet: Sheet, paper: Paper): string {
  const { scale, turned } = scaleOn(paper, sheet);
  const [width, height] = turned ? [paper.height, paper.width] : [paper.width, paper.height];
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${PRINT_HASH}'">
<title>${escaped(sheet.title || "Chair")}</title>
<style>
@page { size: ${width}mm ${height}mm; margin: ${MARGIN}mm; }
body { margin: 0; font-family: sans-serif; }
svg { display: block; }
@media screen { body { margin: ${MARGIN}mm; } }
@media print { .hint { display: none; } svg { break-inside: avoid; } }
</style>
</head>
<body>
<p class="hint">Scale 1 : ${scale} on ${escaped(paper.name)}. Print at actual size (100 %), and measure the scale bar on the print.</p>
${sheetToSvg(sheet, { standalone: false, scale })}<script>${PRINT}</script>
</body>
</html>
`;
}

/** The page's only script, and its SHA-256 by which the page allows it and no other. */
const PRINT = "print()";
const PRINT_HASH = "Ul1RMxNBbPGH9E+ofhdT7m0RVSwiCXU33cMrTtNPpo8=";
