/**
 * Ranges as a picture: each choice along a rule, the free stretch a heavy line, below it one hatched bar for each finding with its name
 * and figure; below those the values that were asked for, as curves.
 */
import { escaped } from "../drawing/xml.ts";
import type { Band, Range } from "./bands.ts";
import type { RangeMap } from "./map.ts";
import { bandLabel, printBarePlace, printPlace } from "./words.ts";

const WIDTH = 800;
const LEFT = 24;
const RIGHT = 24;
const LINE = 18;
const BAR = 12;
const CURVE = 110;
const LETTER = 12;

/** How a value's figure is printed. */
type PrintValue = (name: string, number: number) => string;

/** The picture of some ranges, as an SVG 1.1 file; the same ranges always give the same text. */
export function rangesToSvg(title: string, ranges: readonly Range[], print: PrintValue): string {
  let y = 44;
  const parts: string[] = [];
  for (const range of ranges) {
    const drawn = rangeAt(range, y, print);
    parts.push(...drawn.lines);
    y = drawn.end + 28;
  }
  return file(title, y, [text(LEFT, 24, title, 'font-size="16" font-weight="bold"'), ...parts]);
}

function rangeAt(range: Range, top: number, print: PrintValue): { lines: string[]; end: number } {
  const { choice, low, high } = range;
  const x = (place: number) => LEFT + ((place - low) / (high - low || 1)) * (WIDTH - LEFT - RIGHT);
  const lines = [
    `<g><title>${escaped(choice.name)}</title>`,
    text(
      LEFT,
      top,
      `${choice.name}, ${printBarePlace(choice, low)} to ${printPlace(choice, high)}, now ${printPlace(choice, choice.now)}`,
      'font-weight="bold"',
    ),
  ];
  let y = top + 16;
  lines.push(rule(x(low), x(high), y, 1));
  for (const [from, to] of range.free) lines.push(rule(x(from), x(to), y, 5));
  if (choice.now >= low && choice.now <= high)
    lines.push(`<path d="M${n(x(choice.now))} ${n(y - 8)}v16" stroke="#000000" stroke-width="1.5"/>`);
  y += 14;
  for (const [from, to] of range.free.slice(0, 1)) {
    lines.push(text(x(from), y + 4, `free ${printBarePlace(choice, from)} to ${printPlace(choice, to)}`));
    y += LINE;
  }
  for (const band of range.bands) {
    lines.push(...barOf(band, range, x, y));
    y += BAR + LINE + 4;
  }
  for (const curve of range.values) {
    lines.push(...curveOf(curve, range, x, y, print));
    y += CURVE + LINE;
  }
  lines.push("</g>");
  return { lines, end: y };
}

function barOf(band: Band, { choice }: Range, x: (place: number) => number, y: number): string[] {
  const from = x(band.from);
  const wide = Math.max(2, x(band.to) - from);
  const label = `${band.severity}: ${bandLabel(choice, band)}`;
  const long = label.length * LETTER * 0.52;
  const at = Math.max(LEFT, Math.min(from, WIDTH - RIGHT - long));
  return [
    `<g><title>${escaped(band.message)}</title>`,
    `<rect x="${n(from)}" y="${n(y)}" width="${n(wide)}" height="${BAR}" fill="url(#${band.severity})" stroke="#000000" stroke-width="0.75"/>`,
    text(at, y + BAR + 13, label),
    "</g>",
  ];
}

/** A curve in its frame: its figure at both ends, the ends of the range below, what it is now dashed. */
function curveOf(
  { name, at }: Range["values"][number],
  { choice, low, high, tried }: Range,
  x: (place: number) => number,
  top: number,
  print: PrintValue,
): string[] {
  const known = at.flatMap((number) => (number === undefined || !Number.isFinite(number) ? [] : [number]));
  if (known.length === 0) return [text(LEFT, top + 12, `${name} cannot be worked out here`)];
  const least = Math.min(...known);
  const most = Math.max(...known);
  const [ceiling, floor] = [top + 26, top + CURVE - 8];
  const flat = print(name, least) === print(name, most);
  const y = (number: number) =>
    flat ? (ceiling + floor) / 2 : floor - ((number - least) / (most - least)) * (floor - ceiling);
  let path = "";
  for (const [k, number] of at.entries()) {
    if (number === undefined || !Number.isFinite(number)) continue;
    const place = low + ((high - low) * k) / Math.max(1, tried - 1);
    path += `${path && at[k - 1] !== undefined ? "L" : "M"}${n(x(place))} ${n(y(number))}`;
  }
  const [first, last] = [x(low), x(high)];
  const grid = 'stroke="#767676" stroke-width="0.5" fill="none"';
  const isKnown = (number: number | undefined) => number !== undefined && Number.isFinite(number);
  /** The figure at an end of the curve, above it where there is room. */
  const endFigure = (number = Number.NaN, side: "start" | "end") => {
    const down = y(number) - 10 < ceiling + 4 ? y(number) + 18 : y(number) - 10;
    const place = side === "start" ? first + 6 : last - 6;
    return text(place, down, print(name, number), `text-anchor="${side}"`);
  };
  return [
    text(LEFT, top + 14, flat ? `${name}, ${print(name, least)} throughout` : name),
    `<path d="M${n(first)} ${n(ceiling)}V${n(floor)}H${n(last)}V${n(ceiling)}" ${grid}/>`,
    ...(choice.now > low && choice.now < high
      ? [`<path d="M${n(x(choice.now))} ${n(ceiling)}V${n(floor)}" ${grid} stroke-dasharray="4 3"/>`]
      : []),
    `<path d="${path}" fill="none" stroke="#000000" stroke-width="1.5"/>`,
    ...(flat
      ? []
      : [endFigure(at.find(isKnown), "start"), endFigure([...at].reverse().find(isKnown), "end")]),
    text(first, floor + 14, printBarePlace(choice, low)),
    text(last, floor + 14, printPlace(choice, high), 'text-anchor="end"'),
  ];
}

const MAP_LEFT = 90;
const MAP_TOP = 60;
/** Height of a cell, and the letters that stand in one line of it. */
const CELL = 36;
const IN_LINE = 4;

/** The map of two choices: places with an error crossed, with a warning hatched once, each with the letters of what is found there. */
export function mapToSvg(title: string, map: RangeMap): string {
  const { across, up, rows, findings } = map;
  const lines = [
    text(LEFT, 24, title, 'font-size="16" font-weight="bold"'),
    text(
      LEFT,
      44,
      `Across: ${across.choice.name}; up: ${up.choice.name}. Empty: nothing is found. Heavy frame: as it is now.`,
    ),
  ];
  const longest = Math.max(1, ...rows.flat().map((here) => Math.min(IN_LINE, here.length)));
  const wide = Math.max(CELL, longest * 9 + 10);
  const high = rows.length * CELL;
  const [nowAcross, nowUp] = [nearest(across), nearest(up)];
  const cellAt = (i: number, j: number) => ({ x: MAP_LEFT + i * wide, y: MAP_TOP + high - (j + 1) * CELL });
  for (const [j, row] of rows.entries()) {
    const { y } = cellAt(0, j);
    lines.push(
      text(MAP_LEFT - 8, y + CELL / 2 + 4, printPlace(up.choice, up.places[j] ?? 0), 'text-anchor="end"'),
    );
    for (const [i, here] of row.entries())
      lines.push(...cellOf(here, { ...cellAt(i, j), wide }, severeAmong(here, findings)));
  }
  if (nowAcross !== undefined && nowUp !== undefined) {
    const { x, y } = cellAt(nowAcross, nowUp);
    lines.push(
      `<rect x="${n(x)}" y="${n(y)}" width="${n(wide)}" height="${CELL}" fill="none" stroke="#000000" stroke-width="2.5"><title>As it is now</title></rect>`,
    );
  }
  const below = MAP_TOP + high + 16;
  for (const [i, place] of across.places.entries())
    if (i % 2 === 0)
      lines.push(
        text(
          MAP_LEFT + i * wide + wide / 2,
          below,
          printBarePlace(across.choice, place),
          'text-anchor="middle"',
        ),
      );
  const beside = MAP_LEFT + across.places.length * wide + RIGHT;
  const table = findings.map(
    ({ severity, code, subject }, k) =>
      `${letterOf(k)}  ${severity}: ${code}${subject ? ` of ${subject}` : ""}`,
  );
  for (const [k, row] of table.entries()) lines.push(text(beside, MAP_TOP + 14 + k * LINE, row));
  const width = beside + Math.max(0, ...table.map((row) => row.length * LETTER * 0.56)) + RIGHT;
  const height = Math.max(below + 14, MAP_TOP + 14 + table.length * LINE + 4);
  return file(title, height, lines, Math.max(WIDTH, width));
}

const severeAmong = (here: readonly number[], findings: RangeMap["findings"]): boolean =>
  here.some((k) => findings[k]?.severity === "error");

/** Which place of an axis the choice is nearest to now; none when it is off the axis. */
function nearest({ choice, low, high, places }: RangeMap["across"]): number | undefined {
  if (choice.now < low || choice.now > high) return undefined;
  const away = places.map((place) => Math.abs(place - choice.now));
  return away.indexOf(Math.min(...away));
}

function cellOf(
  here: readonly number[],
  { x, y, wide }: { x: number; y: number; wide: number },
  severe: boolean,
): string[] {
  const fill = here.length === 0 ? "none" : `url(#${severe ? "error" : "warning"})`;
  const cell = `<rect x="${n(x)}" y="${n(y)}" width="${n(wide)}" height="${CELL}" fill="${fill}" stroke="#000000" stroke-width="0.5"/>`;
  const rows: string[] = [];
  for (let k = 0; k < here.length && rows.length < 2; k += IN_LINE) {
    const more = rows.length === 1 && here.length > 2 * IN_LINE;
    const letters = here.slice(k, k + IN_LINE).map(letterOf);
    rows.push(more ? `${letters.slice(0, -1).join("")}…` : letters.join(""));
  }
  const tall = 15;
  const first = y + CELL / 2 - (rows.length * tall) / 2;
  const written = rows.flatMap((letters, k) => {
    const ground = letters.length * 8.5 + 4;
    return [
      `<rect x="${n(x + wide / 2 - ground / 2)}" y="${n(first + k * tall)}" width="${n(ground)}" height="${tall}" fill="#ffffff"/>`,
      text(x + wide / 2, first + k * tall + 12, letters, 'text-anchor="middle"'),
    ];
  });
  return [cell, ...written];
}

/** A, B, … Z, AA, AB, … */
export function letterOf(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${letterOf(Math.floor(index / 26) - 1)}${letter}`;
}

function file(title: string, height: number, lines: readonly string[], width = WIDTH): string {
  return `${[
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="${n(width)}" height="${n(height)}" viewBox="0 0 ${n(width)} ${n(height)}" font-family="Helvetica, Arial, sans-serif" font-size="${LETTER}">`,
    `<title>${escaped(title)}</title>`,
    '<defs><pattern id="warning" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M-1 1L1 -1M0 6L6 0M5 7L7 5" stroke="#000000" stroke-width="0.75"/></pattern>',
    '<pattern id="error" width="6" height="6" patternUnits="userSpaceOnUse"><path d="M-1 1L1 -1M0 6L6 0M5 7L7 5M0 0L6 6" stroke="#000000" stroke-width="0.9"/></pattern></defs>',
    `<rect width="${n(width)}" height="${n(height)}" fill="#ffffff"/>`,
    ...lines,
    "</svg>",
  ].join("\n")}\n`;
}

const rule = (from: number, to: number, y: number, width: number): string =>
  `<path d="M${n(from)} ${n(y)}H${n(to)}" stroke="#000000" stroke-width="${width}" fill="none"/>`;

const text = (x: number, y: number, words: string, more = ""): string =>
  `<text x="${n(x)}" y="${n(y)}"${more ? ` ${more}` : ""}>${escaped(words)}</text>`;

const n = (value: number): string => String(Number(value.toFixed(2)));
