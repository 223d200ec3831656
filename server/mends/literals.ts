/**
 * Numbers of the text moved a little and written again as the file writes them.
 */
import type { LengthUnit } from "../design/design.ts";
import { millimetresIn, printBareLength, units } from "../design/units.ts";
import type { Figure } from "../sensitivity/figures.ts";

/** A number that can be moved: how it stands in the text now, and how another is written. */
export interface Movable {
  number: number;
  /** The least movement worth making, in the number's own unit. */
  step: number;
  /** The first movement to try. */
  first: number;
  /** The furthest that is still the same design. */
  most: number;
  write(number: number): string;
}

/** Parts to the inch that a changed length is written to. */
const PARTS = 32;
/** The share of itself that a number may move by and still be the same design. */
const FURTHEST = 0.75;

/** How many times itself the run of a slope may grow by: a lean goes to nothing as it does. */
const LONGEST_RUN = 3;

/** The number of a figure as something to move; nothing for a fraction such as `1/3`, whose halves mean nothing by themselves. */
export function movableOf({ value, literal, fact, kind }: Figure, unit: LengthUnit): Movable | undefined {
  if (literal.is === "slope") return runOf(literal);
  if (value.is === "binary" && value.op === "/") return undefined;
  const { number } = literal;
  const own = literal.is === "quantity" ? literal.unit : undefined;
  const tail = own ?? "";
  if (own === "deg" || own === "%") return movable(number, 0.1, 0.5, (n) => `${plain(n, 1)}${tail}`);
  const isLength =
    own === undefined ? fact.slot === "length" || kind === "let" : units[own]?.dimension === "length";
  if (!isLength) {
    if (fact.slot === "count") return movable(number, 1, 1, (n) => `${Math.round(n)}${tail}`);
    return movable(number, 0.01, Math.max(0.05, Math.abs(number) / 20), (n) => `${plain(n, 2)}${tail}`);
  }
  const written = (own ?? unit) as LengthUnit | "m" | "ft";
  if (written === "in")
    return movable(
      number,
      1 / PARTS,
      1 / 16,
      (n) => `${printBareLength(n * millimetresIn("in"), "in", PARTS)}${tail}`,
    );
  const size = units[written]?.size ?? 1;
  return movable(number, 0.1 / size, 0.5 / size, (n) => `${plain(n, size > 1 ? 3 : 1)}${tail}`);
}

/** `1:8` by its second number. */
function runOf({ rise, run }: Extract<Figure["literal"], { is: "slope" }>): Movable {
  const write = (n: number) => `${rise}:${plain(Math.max(0.5, n), 1)}`;
  return { number: run, step: 0.5, first: Math.max(0.5, run / 20), most: LONGEST_RUN * run, write };
}

function movable(number: number, step: number, least: number, write: (n: number) => string): Movable {
  const most = Math.max(Math.abs(number) * FURTHEST, least * 20);
  return { number, step, first: Math.max(least, Math.abs(number) / 20), most, write };
}

const plain = (number: number, places: number): string => String(Number(number.toFixed(places)));
