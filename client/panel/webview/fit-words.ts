/**
 * Keeps words on the drawing readable when the panel is small: their size is in the sheet's millimetres, but never under a
 * readable size on screen.
 */
const ON_SHEET = 22;
const LEAST_ON_SCREEN = 10;

/** Sets the size of words for the panel's present width. */
export function fitWords(container: HTMLElement): void {
  const svg = container.querySelector("svg");
  const scale = svg?.getScreenCTM()?.a;
  if (!svg || !scale) return;
  svg.style.fontSize = `${Math.max(ON_SHEET, LEAST_ON_SCREEN / scale)}px`;
}
