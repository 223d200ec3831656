/**
 * A page as an SVG 1.1 file at its true size. Nothing is fetched and nothing runs; words are the maker's own, so they are escaped.
 */
import { escaped } from "../xml.ts";
import { type Item, type Page, POINT, pens } from "./page.ts";

/** The file's text; the same page always gives the same text. Numbers are to a thousandth of a millimetre. */
export function pageToSvg(page: Page, title: string): string {
  const { width, height } = page;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}" font-family="Helvetica, Arial, sans-serif" fill="none" stroke-linecap="round" stroke-linejoin="round">`,
    `<title>${escaped(`${title}: ${page.name}`)}</title>`,
    `<rect width="${number(width)}" height="${number(height)}" fill="#ffffff"/>`,
    ...page.items.map(itemOf),
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}

function itemOf(item: Item): string {
  if (item.is === "words") {
    const [x, y] = item.at.map(number);
    const turn = item.upright ? ` transform="rotate(-90 ${x} ${y})"` : "";
    const anchor = item.anchor ? ` text-anchor="${item.anchor}"` : "";
    const weight = item.bold ? ' font-weight="bold"' : "";
    return `<text x="${x}" y="${y}"${turn}${anchor}${weight} font-size="${number(item.size * POINT)}" fill="#000000">${escaped(item.text)}</text>`;
  }
  const { width, grey: ink, dash } = pens[item.pen];
  const d = item.points.map(([x, y], k) => `${k ? "L" : "M"}${number(x)} ${number(y)}`).join("");
  const fill = item.fill === undefined ? "" : ` fill="${grey(item.fill)}"`;
  const dashes = dash ? ` stroke-dasharray="${dash.join(" ")}"` : "";
  if (item.pen === "none") return `<path${fill} d="${d}Z"/>`;
  return `<path stroke="${grey(ink)}" stroke-width="${width}"${dashes}${fill} d="${d}${item.closed ? "Z" : ""}"/>`;
}

function grey(share: number): string {
  const two = Math.round(share * 255)
    .toString(16)
    .padStart(2, "0");
  return `#${two}${two}${two}`;
}

function number(value: number): string {
  const thousandths = Math.round(value * 1000);
  return String(Number.isFinite(thousandths) ? (thousandths === 0 ? 0 : thousandths / 1000) : 0);
}
