/**
 * Pieces of SVG text: numbers, paths, lettering.
 */
import type { Point } from "./sheet.ts";
import { escaped } from "./xml.ts";

export const INK = "#1c1c1c";
export const FINE = "#4a4f57";

interface Lettering {
  ink: string;
  size?: number;
  anchor?: "start" | "middle" | "end";
  upright?: boolean;
  /** Width of an edge in the same ink. */
  edge?: number;
}

export function words(
  at: Point,
  text: string,
  { ink, size, anchor = "middle", upright, edge }: Lettering,
): string {
  const [x, y] = at.map(number);
  const turn = upright ? ` transform="rotate(-90 ${x} ${y})"` : "";
  const big = size === undefined ? "" : ` font-size="${size}"`;
  return `<text x="${x}" y="${y}"${turn}${big} text-anchor="${anchor}" ${edge === undefined ? 'stroke="none"' : `stroke="${ink}" stroke-width="${edge}"`} fill="${ink}">${escaped(text)}</text>`;
}

export function path([first, ...rest]: readonly Point[]): string {
  if (!first) return "";
  return `M${pair(first)}${rest.map((point) => `L${pair(point)}`).join("")}`;
}

const pair = ([x, y]: Point): string => `${number(x)} ${number(y)}`;

/** To a hundredth, without a minus before zero. */
export function number(value: number): string {
  const hundredths = Math.round(value * 100);
  return String(Number.isFinite(hundredths) ? (hundredths === 0 ? 0 : hundredths / 100) : 0);
}
