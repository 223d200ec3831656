/**
 * The marks under a slider, as on a maker's rule: tenths and fives in millimetres, halves to sixteenths in inches, as rules are cut.
 */
import type { Adjustable } from "../../../server/editor/adjustable.ts";

interface Graduation {
  /** From the low end (0) to the high (1). */
  share: number;
  size: "long" | "middle" | "short";
  /** On some of the long ones. */
  label?: string;
}

/** At most this many marks on one rule: finer ones run together. */
const MOST_MARKS = 70;
const MOST_LABELS = 7;

/** The marks from end to end, in order. */
export function graduations({ low, high, unit }: Pick<Adjustable, "low" | "high" | "unit">): Graduation[] {
  const range = high - low;
  if (!(range > 0)) return [];
  const ladder = unit === "in" ? inches : decimals(range);
  const fine = ladder.find((step) => range / step.short <= MOST_MARKS) ?? ladder[ladder.length - 1]!;
  const first = Math.ceil(low / fine.short - 1e-9);
  const last = Math.floor(high / fine.short + 1e-9);
  const marks: Graduation[] = [];
  for (let k = first; k <= last; k += 1) {
    const value = k * fine.short;
    const size = isMultiple(value, fine.long) ? "long" : isMultiple(value, fine.middle) ? "middle" : "short";
    marks.push({ share: (value - low) / range, size });
  }
  label(marks, low, range);
  return marks;
}

function label(marks: Graduation[], low: number, range: number): void {
  let named = marks.filter((mark) => mark.size === "long");
  if (named.length < 2) named = marks.filter((mark) => mark.size !== "short");
  if (named.length < 2) named = marks;
  const every = Math.ceil(named.length / MOST_LABELS);
  named.forEach((mark, i) => {
    if (i % every === 0) mark.label = String(Number((low + mark.share * range).toFixed(3)));
  });
}

interface Steps {
  short: number;
  middle: number;
  long: number;
}

const inches: Steps[] = [
  { short: 1 / 16, middle: 1 / 4, long: 1 },
  { short: 1 / 8, middle: 1 / 2, long: 1 },
  { short: 1 / 4, middle: 1, long: 2 },
  { short: 1, middle: 6, long: 12 },
  { short: 12, middle: 60, long: 120 },
];

/** Ones, fives and tens of the power of ten that suits the range, and coarser. */
function decimals(range: number): Steps[] {
  const base = 10 ** Math.floor(Math.log10(range / MOST_MARKS));
  return [1, 2, 5, 10, 20, 50, 100].map((k) => {
    const short = base * k;
    const head = k / 10 ** Math.floor(Math.log10(k));
    return head === 2
      ? { short, middle: short * 5, long: short * 10 }
      : head === 5
        ? { short, middle: short * 2, long: short * 10 }
        : { short, middle: short * 5, long: short * 10 };
  });
}

function isMultiple(value: number, of: number): boolean {
  const times = value / of;
  return Math.abs(times - Math.round(times)) < 1e-6;
}
