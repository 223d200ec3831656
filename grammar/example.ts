/**
 * Example lines as a maker of this file would write them: bare lengths in the file's unit.
 */
import { type BareLength, bareLengthsOf } from "./bare-lengths.ts";
import { readParts } from "./parts.ts";
import { readPhrases } from "./phrases.ts";
import type { Row } from "./row.ts";
import { matchRow } from "./shape.ts";
import { normalise } from "./spelling.ts";
import { markersOf } from "./table.ts";
import { lex } from "./tokens.ts";

/** The example line of a row in a file's unit, without the brace that opens its block; of several the first with all these words. */
export function exampleOf(row: Row, unit: string, said: readonly string[] = []): string {
  const lines = [row.example, ...(row.examples ?? [])];
  const example = lines.find((line) => said.every((word) => line.split(/[ ,]+/).includes(word)));
  const like = example === undefined || example === row.example ? row : { ...row, example };
  return exampleIn(like, unit).replace(/\s*\{$/, "");
}

const kept = new WeakMap<Row, Map<string, string>>();

/** The example line of a row in a file's unit (`mm`, `cm` or `in`): `section 1 5/8 x 1 5/8` for `section 40 x 40`. */
export function exampleIn(row: Row, unit: string): string {
  if (unit === "mm") return row.example;
  const lines = kept.get(row) ?? new Map<string, string>();
  kept.set(row, lines);
  const line = lines.get(unit) ?? inUnit(row, unit);
  lines.set(unit, line);
  return line;
}

function inUnit(row: Row, unit: string): string {
  const { example } = row;
  const [phrase] = readPhrases(normalise(example, lex(example).tokens).tokens);
  if (!phrase) return example;
  const markers = markersOf(row.shape);
  const { parts } = readParts(phrase.items, {
    isMarker: (word) => markers.has(word),
    isFunction: () => false,
    nearFunction: () => undefined,
    told: () => true,
  });
  const lengths = bareLengthsOf({ row, match: matchRow(row, parts) });
  const line = replaced(example, lengths, (mm) => lengthIn(mm, unit));
  return unit === "in" ? line.replace(/\b(\d+)N\b/g, (_, newtons) => `${inPoundForce(newtons)}lbf`) : line;
}

/** Newtons in a pound of force. */
const POUND_FORCE = 4.448;

/** Pounds of force as a maker would choose them: fives. */
const inPoundForce = (newtons: string): number =>
  5 * Math.max(1, Math.round(Number(newtons) / POUND_FORCE / 5));

/** A length as a maker of a file in this unit (`mm`, `cm` or `in`) would choose it, without the unit. */
export const lengthIn = (mm: number, unit: string): string =>
  unit === "in" ? inInches(mm) : plain(unit === "cm" ? mm / 10 : mm);

/** A text with each bare length written anew from its millimetres. */
function replaced(text: string, lengths: readonly BareLength[], write: (mm: number) => string): string {
  return [...lengths]
    .sort((a, b) => b.start - a.start)
    .reduce((line, { start, end, number }) => line.slice(0, start) + write(number) + line.slice(end), text);
}

const INCH = 25.4;

/** Inches as a maker would choose them: the longer, the coarser; what is finer than a rule reads keeps its millimetres. */
function inInches(mm: number): string {
  if (mm === 0) return "0";
  const parts = mm >= 100 ? 4 : mm >= 16 ? 8 : mm >= 5 ? 16 : 32;
  const count = Math.round((mm / INCH) * parts);
  if (count === 0) return `${plain(mm)}mm`;
  const whole = Math.floor(count / parts);
  let [above, below] = [count % parts, parts];
  while (above > 0 && above % 2 === 0) [above, below] = [above / 2, below / 2];
  const fraction = above > 0 ? `${above}/${below}` : "";
  return [whole > 0 ? String(whole) : "", fraction].filter(Boolean).join(" ");
}

const plain = (number: number): string => String(Number(number.toFixed(3)));
