/**
 * Keeps words on the drawing readable however large it is shown: they grow and shrink with it between two sizes on screen.
 */
import { WORDS } from "../../../server/drawing/label-room.ts";

/** Pixels. */
const LEAST_ON_SCREEN = 10;
const MOST_ON_SCREEN = 15;

/** Sets the size of words for a scale, in pixels to the millimetre. */
export function fitWords(svg: SVGSVGElement, scale: number): void {
  if (!(scale > 0)) return;
  const onScreen = Math.min(MOST_ON_SCREEN, Math.max(LEAST_ON_SCREEN, WORDS * scale));
  svg.style.fontSize = `${onScreen / scale}px`;
  const larger = onScreen / scale / WORDS;
  svg.classList.toggle("cramped", larger > 1.3);
  svg.classList.toggle("tight", larger > 2.6);
}
