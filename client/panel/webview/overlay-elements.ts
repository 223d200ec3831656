/**
 * What is laid over a view, as SVG elements: bodies under its lines, marks and words over them.
 */
import { isClosed, type Overlay, type OverlayStroke } from "../../../server/drawing/sheet.ts";
import { element, pathThrough } from "./svg.ts";

const bodies = ["body", "arm"] as const;

/** A sitter lies behind the chair's lines. Shapes that overlap show as one: all their edges, and over these their fillings. */
export function bodyElements({ name, strokes }: Overlay): SVGElement[] {
  return bodies.flatMap((which) => {
    const d = strokes
      .filter(({ is }) => is === which)
      .map(outline)
      .join("");
    if (!d) return [];
    return [
      element(
        "g",
        { class: `overlay ${name} ${which}` },
        element("path", { class: "edge-of", d }),
        element("path", { class: "fill-of", d }),
      ),
    ];
  });
}

/** Marks of an overlay; its words are lettered with all others. */
export function markElements({ name, strokes }: Overlay): SVGElement[] {
  const marks = strokes.filter(({ is }) => is !== "body" && is !== "arm");
  if (marks.length === 0) return [];
  return [
    element(
      "g",
      { class: `overlay ${name}` },
      ...marks.map((stroke) => element("path", { class: stroke.is, d: outline(stroke) })),
    ),
  ];
}

const outline = (stroke: OverlayStroke): string => pathThrough(stroke.points, isClosed(stroke));
