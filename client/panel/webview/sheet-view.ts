/**
 * A sheet as SVG elements. Line widths are set by the style sheet, in pixels of the screen. In each view lie the lines of all parts, over
 * them the areas that take a click; what is lettered lies over all views and is made anew for each scale.
 */

import type { DimensionLine, Stroke, View } from "../../../server/drawing/sheet.ts";
import { tickLines } from "../../../server/drawing/ticks.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import type { Laid } from "./arrange.ts";
import { type Gravity, gravityOf, hatchedAreas, hatchings } from "./flag-elements.ts";
import { summaryOf } from "./in-words.ts";
import { barAt } from "./lettering/labels.ts";
import { BAR, TICK } from "./lettering/type-scale.ts";
import { bodyElements, markElements } from "./overlay-elements.ts";
import type { PartElements } from "./part-elements.ts";
import { element, pathThrough } from "./svg.ts";

/** The sheet's elements; `parts` gathers those of each part, and areas carry the part's name as `data-part`. */
export function sheetElements(
  sheet: Laid,
  faults: readonly Fault[],
): { svg: SVGSVGElement; parts: PartElements } {
  const parts: PartElements = new Map();
  const grave = gravityOf(faults);
  const svg = element(
    "svg",
    { viewBox: `0 0 ${sheet.width} ${sheet.height}`, role: "img", "aria-label": summaryOf(sheet, faults) },
    hatchings(sheet.scale),
    ...sheet.views.map((view) => placed(sheet, view, viewElement(sheet, view, parts, grave))),
    ...(sheet.block ? [scaleBarElement(sheet)] : []),
  );
  return { svg, parts };
}

/** A view's element where the view is laid. */
function placed({ moved }: Laid, { name }: View, made: SVGGElement): SVGGElement {
  const by = moved[name];
  if (by) made.setAttribute("transform", `translate(${by.join(" ")})`);
  return made;
}

function viewElement(
  { scale }: Laid,
  view: View,
  parts: PartElements,
  grave: ReadonlyMap<string, Gravity>,
): SVGGElement {
  const own = (part: string | undefined, made: SVGElement) => {
    if (part) parts.set(part, [...(parts.get(part) ?? []), made]);
    return made;
  };
  return element(
    "g",
    { class: `view ${view.name}` },
    ...(view.overlays ?? []).flatMap(bodyElements),
    hatchedAreas(view, grave),
    ...groupStrokes(view.strokes).map(({ is, part, d }) => {
      const gravity = part === undefined ? undefined : grave.get(part);
      return own(part, element("path", { class: gravity ? `${is} faulty ${gravity}` : is, d }));
    }),
    ...view.areas.map(({ part, points }) =>
      own(part, element("path", { class: "area", "data-part": part, d: pathThrough(points, true) })),
    ),
    ...view.dimensions.map((dimension) => dimensionElement(dimension, scale)),
    ...(view.overlays ?? []).flatMap(markElements),
  );
}

/** Strokes of one kind and part as one path each: a tenth of the elements. */
function groupStrokes(strokes: readonly Stroke[]) {
  const groups = new Map<string, { is: string; part?: string; d: string }>();
  const kindOf = ({ is, changed }: Stroke) => (changed ? `${is} changed` : is);
  for (const stroke of strokes) {
    const { part, points } = stroke;
    const is = kindOf(stroke);
    const key = `${is} ${part ?? ""}`;
    const group = groups.get(key) ?? { is, part, d: "" };
    group.d += pathThrough(points);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** The lines of a dimension; its figure is lettered elsewhere, and told here to whoever points at them. */
function dimensionElement({ name, label, line, extensions, arc }: DimensionLine, scale: number): SVGGElement {
  const measured = pathThrough(line) + (arc ? pathThrough(arc) : "");
  const ticks = arc ? [] : tickLines(line, TICK / scale);
  return element(
    "g",
    { class: "dimension" },
    element("title", {}, `${name}: ${label}`),
    element("path", { d: extensions.map((ends) => pathThrough(ends)).join("") + measured }),
    element("path", { class: "ticks", d: ticks.map((ends) => pathThrough(ends)).join("") }),
  );
}

function scaleBarElement(sheet: Laid): SVGGElement {
  const { scaleBar, block, scale } = sheet;
  const step = scaleBar.length / scaleBar.divisions;
  const bars = Array.from({ length: scaleBar.divisions }, (_, index) =>
    element("rect", {
      class: index % 2 ? "open" : "filled",
      x: (block?.x ?? 0) + index * step,
      y: barAt(sheet, scale) / scale,
      width: step,
      height: BAR / scale,
    }),
  );
  return element("g", { class: "scale-bar" }, ...bars);
}
