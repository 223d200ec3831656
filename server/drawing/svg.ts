/**
 * A sheet as an SVG 1.1 file. Nothing is fetched and nothing runs; words are the maker's own, so they are escaped.
 */
import { LINE_STEP, WORDS } from "./label-room.ts";
import { overlayOver, overlayUnder } from "./overlay-svg.ts";
import type { DimensionLine, Picture, ScaleBar, Sheet, Stroke, View } from "./sheet.ts";
import { FINE, INK, number, path, words } from "./svg-pieces.ts";
import { tickLines } from "./ticks.ts";
import { escaped, wrapped } from "./xml.ts";

interface SvgOptions {
  /** With the XML declaration, as a file has it; without, to be put into a page. */
  standalone?: boolean;
  /** The sheet prints at one to this when nobody scales it. */
  scale?: number;
}

const SCALE = 5;
/** Widths of lines, mm on a full-size sheet; a fifth of it on paper. */
const WIDTHS = {
  outline: 2.5,
  edge: 1.5,
  floor: 1.5,
  centre: 1,
  seat: 1.5,
  before: 1.2,
  hidden: 1,
  dimension: 0.9,
  tenon: 1,
};
/** How much heavier a part is drawn that differs from the chair behind. */
const HEAVY = 2.4;
const TITLE = 40;

/** The file's text; the same sheet always gives the same text. Numbers are to a hundredth of a millimetre. */
export function sheetToSvg(sheet: Sheet, { standalone = true, scale = SCALE }: SvgOptions = {}): string {
  const { width, height } = sheet;
  const size = `width="${number(width / scale)}mm" height="${number(height / scale)}mm"`;
  const lines = [
    ...(standalone ? ['<?xml version="1.0" encoding="UTF-8"?>'] : []),
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" ${size} viewBox="0 0 ${number(width)} ${number(height)}" font-family="Helvetica, Arial, sans-serif" font-size="${WORDS}" fill="none" stroke-linecap="round" stroke-linejoin="round">`,
    `<title>${escaped(sheet.title || "Chair")}</title>`,
    `<desc>${escaped(description(sheet))}</desc>`,
    `<rect width="${number(width)}" height="${number(height)}" fill="#ffffff"/>`,
    ...sheet.views.flatMap(viewLines),
    ...(sheet.picture ? pictureLines(sheet.picture) : []),
    ...titleLines(sheet, scale),
    ...scaleBarLines(sheet.scaleBar),
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}

function description({ views, notes = [], picture }: Sheet): string {
  const captions = [...views, ...(picture ? [picture] : [])]
    .map(({ caption }) => caption.replace(/\.$/, ""))
    .join(", ");
  const figures = views.flatMap(({ dimensions }) => dimensions.map(({ name, label }) => `${name} ${label}`));
  return [`${captions}.`, ...notes, figures.length ? `${figures.join(", ")}.` : ""].join(" ").trim();
}

function viewLines({ name, caption, captionAt, strokes, dimensions, overlays = [] }: View): string[] {
  return [
    `<g id="${name}">`,
    `<title>${escaped(caption)}</title>`,
    ...overlays.flatMap(overlayUnder),
    ...strokePaths(strokes),
    ...dimensions.flatMap(dimensionLines),
    ...overlays.flatMap(overlayOver),
    words(captionAt, caption, { size: 26, ink: INK }),
    "</g>",
  ];
}

function pictureLines({ caption, captionAt, note, noteAt, strokes, tenons }: Picture): string[] {
  return [
    '<g id="pictorial">',
    `<title>${escaped(caption)}</title>`,
    ...strokePaths(strokes),
    ...tenonPaths(tenons),
    words(captionAt, caption, { size: 26, ink: INK }),
    ...(note && noteAt ? [words(noteAt, note, { ink: FINE })] : []),
    "</g>",
  ];
}

/** Hidden tenons: finer than what is seen, dashed, those of one part together. */
export function tenonPaths(tenons: Picture["tenons"]): string[] {
  const dashed = new Map<string, string>();
  for (const { part, points } of tenons) dashed.set(part, (dashed.get(part) ?? "") + path(points));
  return [...dashed].map(
    ([part, d]) =>
      `<path class="tenon" data-part="${escaped(part)}" stroke="${FINE}" stroke-width="${WIDTHS.tenon}" stroke-dasharray="5 4" d="${d}"/>`,
  );
}

/** Strokes as paths, those of one kind and part together. */
export const strokePaths = (strokes: readonly Stroke[]): string[] => groups(strokes).map(pathOf);

type Group = Pick<Stroke, "is" | "part" | "changed"> & { d: string };

/** Strokes of one kind and part together, fine lines first so that outlines lie over them. */
function groups(strokes: readonly Stroke[]): Group[] {
  const found = new Map<string, Group>();
  const weight = ({ is, changed }: Stroke) =>
    is === "before" || is === "hidden" ? 0 : WIDTHS[is] * (changed ? HEAVY : 1);
  const heaviestLast = [...strokes].sort((a, b) => weight(a) - weight(b));
  for (const { is, part, changed, points } of heaviestLast) {
    const key = `${is} ${part ?? ""}`;
    const of = { ...(part !== undefined && { part }), ...(changed && { changed }) };
    const group = found.get(key) ?? { is, ...of, d: "" };
    group.d += path(points);
    found.set(key, group);
  }
  return [...found.values()];
}

function pathOf({ is, part, changed, d }: Group): string {
  const of = part === undefined ? "" : ` data-part="${escaped(part)}"`;
  const dashes = is === "centre" ? "26 7 4 7" : is === "before" ? "9 6" : is === "hidden" ? "6 4" : undefined;
  const dash = dashes === undefined ? "" : ` stroke-dasharray="${dashes}"`;
  const ink = is === "centre" || is === "floor" || is === "before" || is === "hidden" ? FINE : INK;
  const width = number(WIDTHS[is] * (changed ? HEAVY : 1));
  return `<path class="${changed ? `${is} changed` : is}"${of} stroke="${ink}" stroke-width="${width}"${dash} d="${d}"/>`;
}

function dimensionLines(dimension: DimensionLine): string[] {
  const { name, label, labelAt, line, extensions, arc, upright, lines } = dimension;
  const fine = extensions.map((ends) => path(ends)).join("") + path(line) + (arc ? path(arc) : "");
  const ticks = arc ? "" : tickLines(line).map(path).join("");
  return [
    `<g class="dimension" stroke="${FINE}">`,
    `<title>${escaped(`${name}: ${label}`)}</title>`,
    `<path stroke-width="${WIDTHS.dimension}" d="${fine}"/>`,
    ...(ticks ? [`<path stroke-width="${WIDTHS.outline}" d="${ticks}"/>`] : []),
    ...(lines
      ? lines.map((each, k) =>
          words([labelAt[0], labelAt[1] + k * WORDS * LINE_STEP], each, { ink: INK, anchor: "start" }),
        )
      : [words(labelAt, label, { ink: INK, upright: upright === true })]),
    "</g>",
  ];
}

function titleLines({ title, titleAt, notes = [] }: Sheet, scale: number): string[] {
  if (!titleAt) return [];
  const { x, width } = titleAt;
  const lines = wrapped(title, Math.max(8, Math.floor(width / (TITLE * 0.56))), 2);
  let y = titleAt.y;
  const made: string[] = [];
  for (const line of lines) {
    made.push(words([x, y], line, { size: TITLE, ink: INK, anchor: "start" }));
    y += TITLE * 1.15;
  }
  for (const note of [...notes, `Scale 1 : ${scale} on paper.`]) {
    made.push(words([x, y], note, { ink: FINE, anchor: "start" }));
    y += WORDS * 1.35;
  }
  return made;
}

/** Thickness of the scale bar. */
const BAR = 9;

function scaleBarLines({ at: [x, y], length, label, divisions }: ScaleBar): string[] {
  const step = length / divisions;
  const parts = Array.from({ length: divisions }, (_, k) => {
    const fill = k % 2 === 0 ? INK : "#ffffff";
    return `<rect x="${number(x + k * step)}" y="${number(y)}" width="${number(step)}" height="${BAR}" fill="${fill}"/>`;
  });
  return [
    `<g class="scale-bar" stroke="${INK}" stroke-width="${WIDTHS.dimension}">`,
    ...parts,
    words([x + length + WORDS / 2, y + BAR], label, { ink: INK, anchor: "start" }),
    "</g>",
  ];
}
