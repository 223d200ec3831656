/**
 * A sheet as SVG elements: the hatching of faulty parts, over it the lines of all parts, over them the areas that take a click, over
 * those the words, and the flags on top.
 */
import { WORDS } from "../../../server/drawing/label-room.ts";
import type { DimensionLine, Point, ScaleBar, Sheet, Stroke, View } from "../../../server/drawing/sheet.ts";
import { tickLines } from "../../../server/drawing/ticks.ts";
import { wrapped } from "../../../server/drawing/xml.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import type { Laid } from "./arrange.ts";
import { flagElements, type Gravity, gravityOf, hatchedAreas, hatchings } from "./flag-elements.ts";
import { summaryOf } from "./in-words.ts";
import { bodyElements, markElements } from "./overlay-elements.ts";
import { element, pathThrough } from "./svg.ts";

/** Everything drawn for one part, in all views: what is marked when the part is pointed at. */
export type PartElements = Map<string, SVGElement[]>;

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
    hatchings(),
    ...sheet.views.map((view) => placed(sheet, view, viewElement(view, parts, grave))),
    titleElement(sheet),
    scaleBarElement(sheet.scaleBar),
    ...sheet.views.map((view) => {
      const flags = flagElements(view, faults);
      flags.classList.add("of-view", view.name);
      return placed(sheet, view, flags);
    }),
  );
  return { svg, parts };
}

/** A view's element where the view is laid. */
function placed({ moved }: Laid, { name }: View, made: SVGGElement): SVGGElement {
  const by = moved[name];
  if (by) made.setAttribute("transform", `translate(${by.join(" ")})`);
  return made;
}

function viewElement(view: View, parts: PartElements, grave: ReadonlyMap<string, Gravity>): SVGGElement {
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
    ...view.dimensions.map(dimensionElement),
    ...(view.overlays ?? []).flatMap((overlay) => markElements(overlay, words)),
    words("caption", view.captionAt, view.caption),
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

function dimensionElement(dimension: DimensionLine): SVGGElement {
  const { name, label, labelAt, line, extensions, arc, upright, lines } = dimension;
  const measured = pathThrough(line) + (arc ? pathThrough(arc) : "");
  const ticks = arc ? [] : tickLines(line);
  return element(
    "g",
    { class: "dimension" },
    element("title", {}, `${name}: ${label}`),
    element("path", { d: extensions.map((ends) => pathThrough(ends)).join("") + measured }),
    element("path", { class: "ticks", d: ticks.map((ends) => pathThrough(ends)).join("") }),
    lines
      ? linesOfWords(labelAt, lines)
      : words("label", labelAt, label, upright ? { transform: `rotate(-90 ${labelAt.join(" ")})` } : {}),
  );
}

/** The title on at most two lines, and under it what a reader should know. */
function titleElement({ title, titleAt, notes = [] }: Sheet): SVGGElement {
  const group = element("g", { class: "title" });
  if (!titleAt) return group;
  const { x, y, width } = titleAt;
  const lines = wrapped(title, Math.max(8, Math.floor(width / (TITLE * LETTER))), 2);
  const start = { "text-anchor": "start" };
  group.append(
    ...lines.map((line, index) => words("name", [x, y + index * TITLE * 1.15], line, start)),
    ...notes.map((note, index) =>
      words("note", [x, y + lines.length * TITLE * 1.15 + index * WORDS * 1.35], note, start),
    ),
  );
  return group;
}

/** Height of the title, mm on the sheet, and about how wide its letters are for their height. */
const TITLE = 40;
const LETTER = 0.56;

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
  const lettered = words("label", [x + length + WORDS / 2, y + BAR], label, { "text-anchor": "start" });
  return element("g", { class: "scale-bar" }, ...bars, lettered);
}

/** Thickness of the scale bar, mm on the sheet. */
const BAR = 8;

/** Words on lines under each other, to the right of a place; the step goes with their size, which has a least. */
function linesOfWords([x, y]: Point, lines: readonly string[]): SVGTextElement {
  const text = element("text", { class: "label", x, y, "text-anchor": "start" });
  for (const [k, each] of lines.entries())
    text.append(element("tspan", { x, dy: k === 0 ? 0 : "1.15em" }, each));
  return text;
}

function words(
  className: string,
  [x, y]: Point,
  text: string,
  attributes: Record<string, string> = {},
): SVGTextElement {
  return element("text", { class: className, x, y, "text-anchor": "middle", ...attributes }, text);
}
