/**
 * How values moved, in small multiples: one strip a value, the versions side by side from the oldest.
 */

import type { Point } from "./sheet.ts";
import { FINE, INK, number, path, words } from "./svg-pieces.ts";
import { escaped } from "./xml.ts";

interface Strip {
  name: string;
  /** One a version, null where there is none; in one unit. */
  values: readonly (number | null)[];
  /** A value in words. */
  print(value: number): string;
}

interface Plot {
  title: string;
  /** What each version is called, such as its date. */
  versions: readonly string[];
  strips: readonly Strip[];
}

const WIDTH = 900;
const LEFT = 150;
const RIGHT = 130;
const TOP = 70;
const HIGH = 70;
const GAP = 34;

/** The plot as an SVG file; the same values always give the same text. */
export function plotToSvg({ title, versions, strips }: Plot): string {
  const height = TOP + strips.length * (HIGH + GAP) + 50;
  const x = (at: number) => LEFT + ((WIDTH - LEFT - RIGHT) * (at + 0.5)) / Math.max(1, versions.length);
  const foot = TOP + strips.length * (HIGH + GAP) + 4;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" font-family="Helvetica, Arial, sans-serif" font-size="13" fill="none" stroke-linejoin="round">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(strips.map(inWords).join(" "))}</desc>`,
    `<rect width="${WIDTH}" height="${height}" fill="#ffffff"/>`,
    words([20, 36], title, { ink: INK, size: 20, anchor: "start" }),
    ...strips.flatMap((strip, k) => stripLines(strip, TOP + k * (HIGH + GAP), x)),
    ...ends(versions).map(([at, anchor]) =>
      words([x(at), foot + 14], versions[at]!, { ink: FINE, size: 12, anchor }),
    ),
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}

type Anchor = "start" | "middle" | "end";

function ends({ length }: readonly string[]): [number, Anchor][] {
  if (length === 0) return [];
  return length === 1
    ? [[0, "middle"]]
    : [
        [0, "start"],
        [length - 1, "end"],
      ];
}

function inWords({ name, values, print }: Strip): string {
  const there = values.filter((value) => value !== null);
  if (there.length === 0) return `${name}: not known.`;
  return `${name}: ${print(there[0]!)} first, ${print(there.at(-1)!)} last, from ${print(Math.min(...there))} to ${print(Math.max(...there))}.`;
}

function stripLines({ name, values, print }: Strip, top: number, x: (at: number) => number): string[] {
  const there = values.filter((value) => value !== null);
  const low = Math.min(...there);
  const high = Math.max(...there);
  // What prints the same is level: arithmetic leaves a little in every figure.
  const moves = there.length > 0 && print(high) !== print(low);
  const y = (value: number) => (moves ? top + HIGH - (HIGH * (value - low)) / (high - low) : top + HIGH / 2);
  const head = words([20, top + HIGH / 2 + 4], name, { ink: INK, anchor: "start" });
  if (there.length === 0)
    return [head, words([LEFT, top + HIGH / 2 + 4], "not known", { ink: FINE, anchor: "start" })];
  const limits = moves ? [high, low] : [high];
  const last = there.at(-1)!;
  return [
    "<g>",
    head,
    ...limits.map(
      (value) =>
        `<path stroke="#c9ccd1" d="${path([
          [LEFT, y(value)],
          [WIDTH - RIGHT, y(value)],
        ])}"/>`,
    ),
    ...limits.map((value) =>
      words([LEFT - 8, y(value) + 4], print(value), { ink: FINE, size: 11, anchor: "end" }),
    ),
    ...runsOf(values).map(
      (run) => `<path stroke="${INK}" stroke-width="1.6" d="${path(stairs(run, x, y))}"/>`,
    ),
    ...(values.length <= 80
      ? values.flatMap((value, at) =>
          value === null
            ? []
            : [`<circle cx="${number(x(at))}" cy="${number(y(value))}" r="2.6" fill="${INK}"/>`],
        )
      : []),
    words([WIDTH - RIGHT + 10, y(last) + 4], print(last), { ink: INK, anchor: "start" }),
    "</g>",
  ];
}

type Run = { at: number; value: number }[];

/** Stretches of versions that have the value: a gap stays a gap. */
function runsOf(values: readonly (number | null)[]): Run[] {
  const runs: Run[] = [];
  values.forEach((value, at) => {
    if (value === null) return;
    const last = runs.at(-1);
    if (last?.at(-1)?.at === at - 1) last.push({ at, value });
    else runs.push([{ at, value }]);
  });
  return runs;
}

/** A value holds until the next version. */
function stairs(run: Run, x: (at: number) => number, y: (value: number) => number): Point[] {
  return run.flatMap(({ at, value }, k): Point[] => {
    const next = run[k + 1];
    return next === undefined
      ? [[x(at), y(value)]]
      : [
          [x(at), y(value)],
          [x(next.at), y(value)],
        ];
  });
}
