/**
 * A sheet as SVG elements: the lines of all parts, over them the areas that take a click, over those the words.
 */
import type { DimensionLine, Point, ScaleBar, Sheet, Stroke, View } from "../../../server/drawing/sheet.ts";
import { element, pathThrough } from "./svg.ts";

/** Everything drawn for one part, in all views: what is marked when the part is pointed at. */
export type PartElements = Map<string, SVGElement[]>;

/** The sheet's elements; `parts` gathers those of each part, and areas carry the part's name as `data-part`. */
export function sheetElements(sheet: Sheet): { svg: SVGSVGElement; parts: PartElements } {
  const parts: PartElements = new Map();
  const svg = element(
    "svg",
    { viewBox: `0 0 ${sheet.width} ${sheet.height}`, role: "img", "aria-label": `Drawing of ${sheet.title}` },
    ...sheet.views.map((view) => viewElement(view, parts)),
    scaleBarElement(sheet.scaleBar),
  );
  return { svg, parts };
}

function viewElement(view: View, parts: PartElements): SVGGElement {
  const own = (part: string | undefined, made: SVGElement) => {
    if (part) parts.set(part, [...(parts.get(part) ?? []), made]);
    return made;
  };
  return element(
    "g",
    { class: `view ${view.name}` },
    ...groupStrokes(view.strokes).map(({ is, part, d }) => own(part, element("path", { class: is, d }))),
    ...view.areas.map(({ part, points }) =>
      own(part, element("path", { class: "area", "data-part": part, d: pathThrough(points, true) })),
    ),
    ...view.dimensions.map(dimensionElement),
    words("caption", view.captionAt, view.caption),
  );
}

/** Strokes of one kind and part as one path each: a tenth of the elements. */
function groupStrokes(strokes: readonly Stroke[]) {
  const groups = new Map<string, { is: string; part?: string; d: string }>();
  for (const { is, part, points } of strokes) {
    const key = `${is} ${part ?? ""}`;
    const group = groups.get(key) ?? { is, part, d: "" };
    group.d += pathThrough(points);
    groups.set(key, group);
  }
  return [...groups.values()];
}

function dimensionElement(dimension: DimensionLine): SVGGElement {
  const { name, label, labelAt, upright, line, extensions, arc } = dimension;
  return element(
    "g",
    { class: "dimension" },
    element("title", {}, `${name}: ${label}`),
    element("path", { class: "extension", d: extensions.map((ends) => pathThrough(ends)).join("") }),
    element("path", { class: "measured", d: pathThrough(line) + (arc ? pathThrough(arc) : ticks(line)) }),
    words("label", labelAt, label, upright),
  );
}

/** Short strokes across both ends of a measured line, leaning as a draughtsman's do. */
function ticks([a, b]: [Point, Point]): string {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const lean: Point = [TICK * (along[0] - along[1]), TICK * (along[1] + along[0])];
  return [a, b]
    .map(([x, y]) =>
      pathThrough([
        [x - lean[0], y - lean[1]],
        [x + lean[0], y + lean[1]],
      ]),
    )
    .join("");
}

/** Half a tick's length along each axis, mm on the sheet. */
const TICK = 5;

function scaleBarElement({ at: [x, y], length, label, divisions }: ScaleBar): SVGGElement {
  const step = length / divisions;
  const bars = Array.from({ length: divisions }, (_, index) =>
    element("rect", {
      class: index % 2 ? "open" : "filled",
      x: x + index * step,
      y,
      width: step,
      height: BAR,
    }),
  );
  return element("g", { class: "scale-bar" }, ...bars, words("label", [x + length / 2, y - BAR], label));
}

/** Thickness of the scale bar, mm on the sheet. */
const BAR = 8;

function words(className: string, [x, y]: Point, text: string, upright?: boolean): SVGTextElement {
  const turn: Record<string, string> = upright ? { transform: `rotate(-90 ${x} ${y})` } : {};
  return element("text", { class: className, x, y, "text-anchor": "middle", ...turn }, text);
}
