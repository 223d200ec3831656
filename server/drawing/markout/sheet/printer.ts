import { millimetresIn, printAngle, printSlope } from "../../../design/units.ts";
import type { Figures } from "../figures.ts";
import type { SheetFigure, SheetMark } from "./sheet.ts";

/** Leans smaller than this are none, radians: a twentieth of a degree. */
export const LEAST = 0.05 * (Math.PI / 180);

type How = "nearest" | "up" | "down";

/** Makes the figures of a sheet, each rounded once: what is printed is what is given. */
export class Printer {
  readonly figures: Figures;
  readonly #unit: number;

  constructor(figures: Figures) {
    this.figures = figures;
    this.#unit = millimetresIn(figures.unit);
  }

  /** A length, mm. */
  long(mm: number, how: How = "nearest"): SheetFigure {
    return this.steps(this.figures.steps(mm, how));
  }

  /** So many of the sheets' steps. */
  steps(count: number): SheetFigure {
    return { value: tidy((count * this.figures.step) / this.#unit), text: this.figures.text(count) };
  }

  /** An angle, radians. */
  angle(radians: number): SheetFigure {
    const text = printAngle(radians);
    return { value: Number.parseFloat(text), text };
  }

  /** A lean with its rise in a run, `4.7° (1:12.2)`. */
  lean(radians: number): SheetFigure {
    const { value, text } = this.angle(Math.abs(radians));
    return { value, text: `${text} (${printSlope(radians)})` };
  }

  /** A clearance, finer than the steps: a hundredth of a millimetre, or a thousandth of an inch. */
  fine(mm: number): SheetFigure {
    const places = this.figures.unit === "in" ? 3 : 2;
    const value = Number((mm / (this.figures.unit === "cm" ? 1 : this.#unit)).toFixed(places));
    return {
      value: this.figures.unit === "cm" ? tidy(value / 10) : value,
      text: this.figures.unit === "cm" ? `${tidy(value / 10)} cm` : `${value} ${this.figures.unit}`,
    };
  }

  /** Whether a length prints as none. */
  isNone(mm: number): boolean {
    return this.figures.steps(mm) === 0;
  }
}

/** Without the last digits that arithmetic leaves. */
const tidy = (value: number): number => Number(value.toPrecision(12));

export const word = (value: string): SheetFigure => ({ value, text: value });
export const count = (value: number): SheetFigure => ({ value, text: String(value) });

export const mark = (
  kind: string,
  face: string,
  datum: string,
  figures: Record<string, SheetFigure | undefined>,
): SheetMark => ({
  kind,
  face,
  datum,
  figures: Object.fromEntries(
    Object.entries(figures).filter((each): each is [string, SheetFigure] => each[1] !== undefined),
  ),
});

/** The printed figure of that name; empty when there is none. */
export const told = ({ figures }: SheetMark, name: string): string => figures[name]?.text ?? "";
