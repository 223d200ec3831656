/**
 * Arithmetic on quantities, with their dimensions checked.
 */

import { sentence } from "../../grammar/sentences/sentence.ts";
import { capital } from "../../grammar/wording.ts";
import type { Dimension, Quantity } from "./design.ts";

/**
 * A quantity on its way. `bare` is the size in millimetres that one of it stands for if it turns out to be a length: a number
 * written without a unit is a plain number until something takes it for a length of its file's unit.
 */
export interface Amount extends Quantity {
  bare?: number;
}

/** Why two quantities cannot be put together, as a sentence; `undefined` numbers are unreadable rather than of the wrong kind. */
interface Mismatch {
  mismatch: string;
  unreadable?: boolean;
}

export type Outcome = Amount | Mismatch;

export const isMismatch = (outcome: Outcome): outcome is Mismatch => "mismatch" in outcome;

/** What a dimension is called in a message, with its article. */
export const called = (dimension: Dimension): string => sentence(`dimension.${dimension}`);

/** The amount taken for that dimension, or nothing when it is of another. Bare numbers become lengths. */
export function as(amount: Amount, dimension: Dimension): number | undefined {
  if (amount.dimension === dimension) return amount.number;
  if (dimension === "length" && amount.dimension === "number" && amount.bare !== undefined)
    return amount.number * amount.bare;
  return undefined;
}

/** The same of both, so that they can be added or compared: a bare number beside a length is a length. */
export function alike(a: Amount, b: Amount): [Amount, Amount] | Mismatch {
  if (a.dimension === b.dimension) {
    if (a.dimension !== "number" || a.bare === b.bare || a.bare === undefined || b.bare === undefined)
      return [a, b];
  }
  const first = as(a, "length");
  const second = as(b, "length");
  if (first !== undefined && second !== undefined) {
    return [
      { number: first, dimension: "length" },
      { number: second, dimension: "length" },
    ];
  }
  return {
    mismatch: sentence("mismatch.together", {
      One: capital(called(a.dimension)),
      other: called(b.dimension),
    }),
  };
}

/** a + b, or with sign −1 a − b. */
export function add(a: Amount, b: Amount, sign: 1 | -1): Outcome {
  const pair = alike(a, b);
  if ("mismatch" in pair) return pair;
  return amount(pair[0].number + sign * pair[1].number, pair[0].dimension, pair[0].bare ?? pair[1].bare);
}

export function multiply(a: Amount, b: Amount): Outcome {
  const number = a.number * b.number;
  if (a.dimension === "number")
    return amount(number, b.dimension, b.dimension === "number" ? (a.bare ?? b.bare) : undefined);
  if (b.dimension === "number") return amount(number, a.dimension);
  if (a.dimension === "share") return amount(number, b.dimension);
  if (b.dimension === "share") return amount(number, a.dimension);
  const power = powers[a.dimension] + powers[b.dimension];
  const product = byPower[power];
  if (product !== undefined) return amount(number, product);
  return {
    mismatch: sentence("mismatch.multiply", {
      One: capital(called(a.dimension)),
      other: called(b.dimension),
    }),
  };
}

export function divide(a: Amount, b: Amount): Outcome {
  if (b.number === 0) return { mismatch: sentence("mismatch.by-nothing"), unreadable: true };
  const number = a.number / b.number;
  if (a.dimension === b.dimension)
    return amount(number, "number", a.dimension === "number" ? (a.bare ?? b.bare) : undefined);
  if (b.dimension === "number") return amount(number, a.dimension);
  if (b.dimension === "share") return amount(number, a.dimension, a.bare);
  const dividend = a.dimension === "number" ? as(a, "length") : a.number;
  if (dividend !== undefined) {
    const power = (a.dimension === "number" ? 1 : powers[a.dimension]) - powers[b.dimension];
    if (power === 0) return amount(dividend / b.number, "number");
    const quotient = byPower[power];
    if (quotient !== undefined) return amount(dividend / b.number, quotient);
  }
  return {
    mismatch: sentence("mismatch.divide", { One: capital(called(a.dimension)), other: called(b.dimension) }),
  };
}

function amount(number: number, dimension: Dimension, bare?: number): Outcome {
  if (!Number.isFinite(number)) return { mismatch: sentence("mismatch.too-large"), unreadable: true };
  return bare === undefined ? { number, dimension } : { number, dimension, bare };
}

/** Powers of length; what is no power of length gets a figure that leads nowhere. */
const powers: Readonly<Record<Dimension, number>> = {
  number: Number.NaN,
  share: Number.NaN,
  angle: Number.NaN,
  mass: Number.NaN,
  force: Number.NaN,
  length: 1,
  area: 2,
  volume: 3,
};

const byPower: Readonly<Record<number, Dimension>> = { 1: "length", 2: "area", 3: "volume" };
