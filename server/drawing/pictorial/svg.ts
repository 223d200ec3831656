import { strokePaths, tenonPaths } from "../svg.ts";
import { INK, number, words } from "../svg-pieces.ts";
import { escaped } from "../xml.ts";
import type { Pictorial } from "./pictorial.ts";

/** Prints at one to this when nobody scales it. */
const SCALE = 5;
/** Room under the picture for its caption, and the height of the letters, mm on a full-size sheet. */
const FOOT = 50;
const LETTERS = 24;

/** A pictorial view as an SVG file; the same view always gives the same text. */
export function pictorialToSvg(picture: Pictorial): string {
  const { width, strokes, tenons } = picture;
  const height = picture.height + FOOT;
  const size = `width="${number(width / SCALE)}mm" height="${number(height / SCALE)}mm"`;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" ${size} viewBox="0 0 ${number(width)} ${number(height)}" font-family="Helvetica, Arial, sans-serif" font-size="${LETTERS}" fill="none" stroke-linecap="round" stroke-linejoin="round">`,
    `<title>${escaped(picture.title || "Chair")}</title>`,
    `<desc>${escaped(picture.caption)}</desc>`,
    `<rect width="${number(width)}" height="${number(height)}" fill="#ffffff"/>`,
    '<g id="pictorial">',
    ...strokePaths(strokes),
    ...tenonPaths(tenons),
    words([width / 2, height - FOOT / 2], picture.caption, { ink: INK }),
    "</g>",
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}
