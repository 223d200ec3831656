import { strokePaths } from "../svg.ts";
import { FINE, INK, number, path, words } from "../svg-pieces.ts";
import { escaped } from "../xml.ts";
import type { Pictorial } from "./pictorial.ts";

/** Prints at one to this when nobody scales it. */
const SCALE = 5;
/** Room under the picture for its caption, and the height of the letters, mm on a full-size sheet. */
const FOOT = 50;
const LETTERS = 24;
/** Width of a hidden tenon's dashed lines: finer than what is seen. */
const HIDDEN = 1;

/** A pictorial view as an SVG file; the same view always gives the same text. */
export function pictorialToSvg(picture: Pictorial): string {
  const { width, strokes, tenons } = picture;
  const height = picture.height + FOOT;
  const size = `width="${number(width / SCALE)}mm" height="${number(height / SCALE)}mm"`;
  const dashed = new Map<string, string>();
  for (const { part, points } of tenons) dashed.set(part, (dashed.get(part) ?? "") + path(points));
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" ${size} viewBox="0 0 ${number(width)} ${number(height)}" font-family="Helvetica, Arial, sans-serif" font-size="${LETTERS}" fill="none" stroke-linecap="round" stroke-linejoin="round">`,
    `<title>${escaped(picture.title || "Chair")}</title>`,
    `<desc>${escaped(picture.caption)}</desc>`,
    `<rect width="${number(width)}" height="${number(height)}" fill="#ffffff"/>`,
    '<g id="pictorial">',
    ...strokePaths(strokes),
    ...[...dashed].map(
      ([part, d]) =>
        `<path class="tenon" data-part="${escaped(part)}" stroke="${FINE}" stroke-width="${HIDDEN}" stroke-dasharray="5 4" d="${d}"/>`,
    ),
    words([width / 2, height - FOOT / 2], picture.caption, { ink: INK }),
    "</g>",
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}
