/**
 * Lengths as they are printed on the sheets: in whole steps of the file's unit, so rounded that what fits still fits.
 */
import type { LengthUnit } from "../../design/design.ts";
import { printBareLength } from "../../design/units.ts";
import type { CutTenon, Mortise } from "../../joinery/pieces/piece.ts";

export type Step = 16 | 32 | 64;

/** Lines that run out by less than this, or less than a step, are given as parallel, mm. */
const PARALLEL = 0.12;
/** Nearer than this to a whole step is on it. */
const NEAR = 1e-6;

export class Figures {
  readonly unit: LengthUnit;
  readonly parts: number;
  /** mm in one step. */
  readonly step: number;

  /** `parts` is how many steps there are to the inch; millimetres and centimetres go by tenths of a millimetre. */
  constructor(unit: LengthUnit, parts: Step = 32) {
    this.unit = unit;
    this.parts = parts;
    this.step = unit === "in" ? 25.4 / parts : 0.1;
  }

  /** Whole steps in a length: the nearest, or not less than it is, or not more. */
  steps(mm: number, how: "nearest" | "up" | "down" = "nearest"): number {
    const count = mm / this.step;
    if (how === "up") return Math.ceil(count - NEAR);
    return how === "down" ? Math.floor(count + NEAR) : Math.round(count);
  }

  /** So many steps as a bare length. */
  text(steps: number): string {
    return printBareLength(steps * this.step, this.unit, this.parts);
  }

  print(mm: number, how: "nearest" | "up" | "down" = "nearest"): string {
    return this.text(this.steps(mm, how));
  }

  /** The unit after a figure, as sentences have it. */
  get sign(): string {
    return this.unit === "in" ? "in" : this.unit;
  }
}

/** A tenon in whole steps. Its thickness and width are the mortise's too; its length is never more than it is, the mortise's depth never less. */
interface TenonSteps {
  thick: number;
  wide: number;
  long: number;
}

export function tenonSteps(
  figures: Figures,
  { thick, wide, long }: Pick<CutTenon, "thick" | "wide" | "long">,
): TenonSteps {
  return { thick: figures.steps(thick), wide: figures.steps(wide), long: figures.steps(long, "down") };
}

/** The shoulders beside a tenon in whole steps: with the tenon they come to the stuff's own thickness or width as it is printed. */
export function shoulderSteps(
  figures: Figures,
  tenon: number,
  [one, other]: readonly [number, number],
  stuff: number,
): [number, number] {
  const first = figures.steps(one);
  return Math.abs(one + other) < NEAR ? [0, 0] : [first, figures.steps(stuff) - tenon - first];
}

interface MortiseSteps {
  /** At its near and its far side. */
  from: [number, number];
  to: [number, number];
  /** At its start and its end. */
  near: [number, number];
  far: [number, number];
  deep?: number;
}

/** A mortise in whole steps, never smaller than its tenon in the same steps. */
export function mortiseSteps(figures: Figures, mortise: Omit<Mortise, "letter">): MortiseSteps {
  const { from, to, near, far, tenon, deep } = mortise;
  const along = Math.abs(to[0] - from[0]);
  const lengthwise = Math.abs(along - tenon.wide) <= Math.abs(along - tenon.thick);
  const [long, wide] = lengthwise ? [tenon.wide, tenon.thick] : [tenon.thick, tenon.wide];
  const isParallel = (...ends: (readonly number[])[]) =>
    ends.every(([a, b]) => Math.abs(a! - b!) < Math.max(figures.step, PARALLEL));
  // A mouth that lies askew measures less along the stick and across it than its tenon is wide and thick.
  const least = (size: number, measures: number) =>
    mortise.is !== "mortise" || measures < size - figures.step ? 0 : figures.steps(size);
  const pair = (start: readonly number[], end: readonly number[], tenonSize: number) => {
    // One figure then, whichever way it rounds.
    const sides = isParallel(start, end) ? [0, 0] : [0, 1];
    const starts = sides.map((k) => figures.steps(start[k]!)) as [number, number];
    const ends = sides.map((k, at) =>
      Math.max(starts[at]! + least(tenonSize, end[k]! - start[k]!), figures.steps(end[k]!)),
    ) as [number, number];
    return [starts, ends] as const;
  };
  const [starts, ends] = pair(from, to, long);
  const [nears, fars] = pair(near, far, wide);
  return {
    from: starts,
    to: ends,
    near: nears,
    far: fars,
    ...(deep === undefined ? {} : { deep: figures.steps(deep, "up") }),
  };
}
