/**
 * SVG elements made one by one, so that nothing a maker wrote is ever read as markup.
 */
import type { Point } from "../../../server/drawing/sheet.ts";

const SVG = "http://www.w3.org/2000/svg";

type Attributes = Record<string, string | number>;

/** An element with its attributes and children; text goes in as text. */
export function element<Name extends keyof SVGElementTagNameMap>(
  name: Name,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): SVGElementTagNameMap[Name] {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  made.append(...children);
  return made;
}

/** Path data through these points, to a hundredth of a millimetre. */
export function pathThrough(points: readonly Point[], closed = false): string {
  const [first, ...rest] = points;
  if (!first) return "";
  return `M${at(first)}${rest.map((point) => `L${at(point)}`).join("")}${closed ? "Z" : ""}`;
}

function at([x, y]: Point): string {
  return `${Math.round(x * 100) / 100} ${Math.round(y * 100) / 100}`;
}
