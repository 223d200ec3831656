/**
 * What is laid over a view, as SVG text: bodies under its lines, marks and words over them.
 */
import { isClosed, type Overlay, type OverlayStroke, type OverlayWords } from "./sheet.ts";
import { INK, path, words } from "./svg-pieces.ts";

/** A sitter lies behind the chair's lines, so that these stay sharp. */
export function overlayUnder({ name, strokes }: Overlay): string[] {
  return [...figure(name, strokes, "body", "#dcdcdc"), ...figure(name, strokes, "arm", "#ececec")];
}

/** Shapes that overlap, as one: all their edges, and over these all their fillings. */
function figure(
  name: string,
  strokes: readonly OverlayStroke[],
  which: OverlayStroke["is"],
  fill: string,
): string[] {
  const shapes = strokes.filter(({ is }) => is === which).map(outline);
  if (shapes.length === 0) return [];
  const d = shapes.join("");
  return [
    `<g class="${name}">`,
    ...shapes.map((shape) => `<path stroke="#8a8a8a" stroke-width="2.4" d="${shape}"/>`),
    `<path fill="${fill}" stroke="none" fill-rule="nonzero" d="${d}"/>`,
    "</g>",
  ];
}

/** Marks and words of an overlay. */
export function overlayOver({ name, strokes, words: lettering }: Overlay): string[] {
  const marks = strokes.flatMap((stroke) =>
    stroke.is in looks ? [`<path ${looks[stroke.is as keyof typeof looks]} d="${outline(stroke)}"/>`] : [],
  );
  return marks.length === 0
    ? []
    : [`<g class="${name}" stroke="${INK}">`, ...marks, ...lettering.flatMap(lettered), "</g>"];
}

const looks = {
  foot: `stroke-width="1.5" fill="${INK}" fill-opacity="0.35"`,
  support: 'stroke-width="1.2" stroke-dasharray="8 6"',
  tipping: 'stroke-width="4"',
  load: 'stroke-width="3"',
  centre: 'stroke-width="2" fill="#ffffff"',
  quarter: `stroke-width="1" fill="${INK}"`,
};

/** Over lines, so with an edge of paper around the letters. */
function lettered({ at, text, anchor, upright }: OverlayWords): string[] {
  const how = { anchor, ...(upright && { upright }) };
  return [words(at, text, { ink: "#ffffff", edge: 6, ...how }), words(at, text, { ink: INK, ...how })];
}

const outline = (stroke: OverlayStroke): string => `${path(stroke.points)}${isClosed(stroke) ? "Z" : ""}`;
