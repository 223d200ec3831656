/**
 * A choice of the text as a figure that can be moved: a `let`, or any figure that stands by itself in a part's block.
 */
import type { Edit, Span } from "../../grammar/problem.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Design, LengthUnit, LetDesign, Quantity } from "../design/design.ts";
import { millimetresIn, printBareLength, units } from "../design/units.ts";
import { type Figure, figuresOf } from "../sensitivity/figures.ts";

/** The unit a choice is moved in: the file's for lengths, degrees, or none for a bare number. */
type ChoiceUnit = LengthUnit | "deg" | "";

export interface Choice {
  /** A `let`'s name, or where the figure stands: `back.height`, `front.foot.back`, `trim.back`. */
  name: string;
  /** The `let`, or the words of the line: `foot back`. */
  words: string;
  /** The part whose block it stands in. */
  part?: string;
  /** `let`, or the word of the line: `foot`, `kick`, `up`. */
  kind: string;
  /** What a new figure replaces. */
  at: Span;
  unit: ChoiceUnit;
  /** Whether the text writes the figure with its unit. */
  united: boolean;
  /** All in `unit`. */
  now: number;
  low: number;
  high: number;
  /** What a maker would move it by at least. */
  step: number;
  /** The range is the text's own (`within`). */
  bounded: boolean;
  /** One figure, not a sum that a new figure would lose. */
  plain: boolean;
}

/** The finest part of an inch a figure is moved by. */
export const INCH_PARTS = 16;

/** Every choice of this file's own text: its `let` values, then the plain figures of its parts, in the order of the text. */
export function choicesOf(tree: Tree, design: Design): Choice[] {
  const lets = [...design.lets.values()].flatMap((each) => letChoice(each, design.units) ?? []);
  const taken = new Set(lets.map(({ name }) => name));
  const figures = [...figuresOf(tree)].flatMap((figure) => {
    const choice = figure.kind === "let" ? undefined : figureChoice(figure, design.units);
    if (!choice) return [];
    const name = freeName(choice.name, taken);
    taken.add(name);
    return [{ ...choice, name }];
  });
  return [...lets, ...figures];
}

/** The choice of that name; nothing when the text has none. */
export const choiceNamed = (tree: Tree, design: Design, name: string): Choice | undefined =>
  choicesOf(tree, design).find((choice) => choice.name === name);

/** A `let` as a choice; its range is `within`, else half to twice what it is. */
function letChoice(each: LetDesign, unitsOfFile: LengthUnit): Choice | undefined {
  const { value, within, file, name, expression } = each;
  if (!value || file !== undefined) return undefined;
  const unit = unitOf(value.value, unitsOfFile);
  if (unit === undefined) return undefined;
  const size = sizeOf(unit);
  const now = neat(value.value.number / size);
  const range = within && { low: neat(within.value.low / size), high: neat(within.value.high / size) };
  const usable = range && range.high > range.low && Number.isFinite(range.high - range.low);
  const { low, high } = usable ? range : around(now, unit);
  return {
    name,
    words: name,
    kind: "let",
    at: expression,
    unit,
    united: writtenWithUnit(each),
    now,
    low,
    high,
    step: stepOf(unit, high - low),
    bounded: usable === true,
    plain: isPlainLet(each),
  };
}

function figureChoice(
  { fact, value, literal, what, of, kind }: Figure,
  file: LengthUnit,
): Choice | undefined {
  const negative = value.is === "negate" && value.of === literal;
  if (value !== literal && !negative) return undefined;
  const sign = negative ? -1 : 1;
  const read = amountOf(literal, fact.slot, file);
  if (!read) return undefined;
  const { unit } = read;
  const now = neat((sign * read.number) / sizeOf(unit));
  const part = of ?? (kind === "trim" ? undefined : kind);
  return {
    name: [part, ...what.split(/[ ,]+/)].filter(Boolean).join("."),
    words: what,
    ...(part !== undefined && { part }),
    kind: what.split(" ")[0] ?? kind,
    at: { start: value.start, end: value.end },
    unit,
    united: literal.is !== "number",
    now,
    ...around(now, unit),
    step: stepOf(unit, Math.abs(now)),
    bounded: false,
    plain: true,
  };
}

function amountOf(
  literal: Figure["literal"],
  slot: string,
  file: LengthUnit,
): { number: number; unit: ChoiceUnit } | undefined {
  if (literal.is === "slope") return { number: Math.atan(literal.rise / literal.run), unit: "deg" };
  if (literal.is === "number") {
    if (slot === "length") return { number: literal.number * millimetresIn(file), unit: file };
    return slot === "count" ? undefined : { number: literal.number, unit: "" };
  }
  const unit = units[literal.unit];
  if (unit?.dimension === "length") return { number: literal.number * unit.size, unit: file };
  if (unit?.dimension === "angle") return { number: literal.number * unit.size, unit: "deg" };
  return undefined;
}

/** The unit a quantity of the file is moved in; nothing for one that is neither length, angle nor plain. */
function unitOf({ dimension }: Quantity, file: LengthUnit): ChoiceUnit | undefined {
  if (dimension === "length") return file;
  if (dimension === "angle") return "deg";
  return dimension === "number" ? "" : undefined;
}

/** Millimetres, radians or ones in a unit. */
export function sizeOf(unit: ChoiceUnit): number {
  if (unit === "") return 1;
  return unit === "deg" ? Math.PI / 180 : millimetresIn(unit);
}

/** What a maker would move a figure by at least; a bare number by a hundredth of its range. */
export function stepOf(unit: ChoiceUnit, range: number): number {
  if (unit === "mm") return 1;
  if (unit === "cm" || unit === "deg") return 0.1;
  if (unit === "in") return 1 / INCH_PARTS;
  return range >= 10 || range === 0 ? 1 : range / 100;
}

/** Half to twice the figure; about zero a stretch that a maker might try. */
function around(now: number, unit: ChoiceUnit): { low: number; high: number } {
  if (now === 0) {
    const far = unit === "deg" ? 5 : unit === "" ? 1 : neat(20 / millimetresIn(unit));
    return { low: -far, high: far };
  }
  const ends = [now / 2, now * 2].sort((a, b) => a - b);
  return { low: neat(ends[0] ?? now), high: neat(ends[1] ?? now) };
}

const neat = (n: number): number => Number(n.toFixed(6));

function freeName(name: string, taken: ReadonlySet<string>): string {
  for (let k = 1; ; k++) {
    const tried = k === 1 ? name : `${name}.${k}`;
    if (!taken.has(tried)) return tried;
  }
}

/** Whether a `let` is one figure, so that a new one loses no sum. */
export function isPlainLet({ statement }: LetDesign): boolean {
  const value = statement.match?.facts.find((fact) => fact.label === "value")?.value;
  const inner = value?.is === "negate" ? value.of : value;
  return inner?.is === "number" || inner?.is === "quantity" || inner?.is === "slope";
}

function writtenWithUnit({ statement }: LetDesign): boolean {
  const value = statement.match?.facts.find((fact) => fact.label === "value")?.value;
  const inner = value?.is === "negate" ? value.of : value;
  return inner?.is !== "number";
}

/** A figure as a maker would write it, to a whole number of `step`: `445`, `17 1/2`, `6.5deg`. */
export function stepped(
  { unit, united }: Pick<Choice, "unit" | "united">,
  value: number,
  step: number,
): string {
  const whole = Math.round(value / step) * step;
  if (unit === "in")
    return `${printBareLength(whole * 25.4, "in", Math.max(INCH_PARTS, Math.round(1 / step)))}${united ? "in" : ""}`;
  return `${Number(whole.toFixed(4))}${suffix(unit, united)}`;
}

/** A figure exactly, for trying places between the steps. */
export const exactly = ({ unit, united }: Pick<Choice, "unit" | "united">, value: number): string =>
  `${plainDecimal(value)}${suffix(unit, united)}`;

const plainDecimal = (value: number): string => {
  const text = value.toFixed(9).replace(/\.?0+$/, "");
  return text === "-0" ? "0" : text;
};

/** What a figure of a choice is written with. */
export function suffix(unit: ChoiceUnit, united: boolean): string {
  if (unit === "deg") return "deg";
  return united ? unit : "";
}

/** The edit that gives a choice another figure. */
export const rewrite = ({ at }: Choice, written: string): Edit => ({
  start: at.start,
  end: at.end,
  text: written,
});

/** The text with some edits made; they do not overlap. */
export function edited(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((done, { start, end, text: by }) => done.slice(0, start) + by + done.slice(end), text);
}
