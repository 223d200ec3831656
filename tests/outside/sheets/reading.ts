/**
 * A sheet as a cutter reads it: nothing but its printed figures, in millimetres and radians.
 */
import type { SheetMark, SheetPart, Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";

export const inMillimetres = { mm: 1, cm: 10, in: 25.4 };

/** From 1 in so much on, a tenth of the run turns a line by less than a tenth of a degree does. */
const FINE = 7.6;

/** One mark; asking for a figure that it lacks is a fault of the sheet. */
export class Read {
  readonly mark: SheetMark;
  readonly #unit: number;

  constructor(mark: SheetMark, unit: Sheets["unit"]) {
    this.mark = mark;
    this.#unit = inMillimetres[unit];
  }

  has(name: string): boolean {
    return name in this.mark.figures;
  }

  /** A length, mm. */
  long(name: string): number {
    return this.#number(name) * this.#unit;
  }

  longOr(name: string, otherwise: number): number {
    return this.has(name) ? this.long(name) : otherwise;
  }

  /** An angle, radians: by its degrees, or by the rise in a run that is printed beside them where that is the finer figure. */
  angle(name: string): number {
    const degrees = (this.#number(name) * Math.PI) / 180;
    const run = Number(/\b1:([\d.]+)\)?$/.exec(this.#figure(name).text)?.[1] ?? 0);
    return run > FINE ? Math.sign(degrees) * Math.atan(1 / run) : degrees;
  }

  angleOr(name: string, otherwise: number): number {
    return this.has(name) ? this.angle(name) : otherwise;
  }

  number(name: string): number {
    return this.#number(name);
  }

  word(name: string): string {
    const { value } = this.#figure(name);
    if (typeof value !== "string") throw new Error(`${this.mark.kind}: "${name}" is not a word`);
    return value;
  }

  /** Towards one of two named ways, positive to the first: `to front` or `to back`. */
  towards(before: string, one: string, other: string, what: "long" | "angle"): number {
    if (this.has(`${before} ${one}`)) return this[what](`${before} ${one}`);
    return this.has(`${before} ${other}`) ? -this[what](`${before} ${other}`) : 0;
  }

  #number(name: string): number {
    const { value } = this.#figure(name);
    if (typeof value !== "number") throw new Error(`${this.mark.kind}: "${name}" is not a figure`);
    return value;
  }

  #figure(name: string) {
    const figure = this.mark.figures[name];
    if (!figure) throw new Error(`the sheet's ${this.mark.kind} ${this.mark.face} has no "${name}"`);
    return figure;
  }
}

/** All marks of a part's sheet. */
export class SheetRead {
  readonly part: SheetPart;
  readonly stock: Read;
  readonly #marks: Read[];

  constructor(part: SheetPart, unit: Sheets["unit"]) {
    this.part = part;
    this.stock = new Read({ kind: "stock", face: "", datum: "", figures: part.stock }, unit);
    this.#marks = part.marks.map((mark) => new Read(mark, unit));
  }

  all(...kinds: string[]): Read[] {
    return this.#marks.filter(({ mark }) => kinds.includes(mark.kind));
  }

  one(kind: string, face: string): Read | undefined {
    return this.#marks.find(({ mark }) => mark.kind === kind && mark.face === face);
  }
}
