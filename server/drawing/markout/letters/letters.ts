/**
 * The letters that sheets are written with: Noto Sans for the Latin, Greek and Cyrillic scripts, in files by script and weight.
 */
import { type LetterFiles, SCRIPTS } from "./files.ts";
import { pdfFont } from "./pdf-font.ts";
import { TrueType } from "./true-type.ts";

/** A stretch of text in one font. */
export interface Run {
  font: ReturnType<typeof pdfFont>;
  /** The font's key. */
  name: string;
  text: string;
  /** Thousandths of its height. */
  width: number;
}

export class Letters {
  readonly #files: LetterFiles;
  readonly #fonts = new Map<string, { face: TrueType; font: Run["font"] }>();

  constructor(files: LetterFiles) {
    this.#files = files;
  }

  readonly #runs = new Map<string, Run[]>();

  /** A text in runs of one font each. A sign of no font stands by its number in Unicode: `U+6905`. */
  runsOf(text: string, bold = false): Run[] {
    const weight = bold ? 700 : 400;
    const key = `${weight} ${text}`;
    const known = this.#runs.get(key);
    if (known) return known;
    const runs: Run[] = [];
    this.#runs.set(key, runs);
    for (const sign of spelled(text, (point) => this.#scriptOf(point, weight) !== undefined)) {
      const point = sign.codePointAt(0)!;
      const name = `${this.#scriptOf(point, weight)!}-${weight}`;
      const { face, font } = this.#font(name);
      const width = (face.advance(face.glyphOf(point)!) * 1000) / face.unitsPerEm;
      const last = runs[runs.length - 1];
      if (last?.name === name) {
        last.text += sign;
        last.width += width;
      } else runs.push({ name, font, text: sign, width });
    }
    return runs;
  }

  #scriptOf(point: number, weight: number): string | undefined {
    return SCRIPTS.find((script) => this.#font(`${script}-${weight}`).face.glyphOf(point) !== undefined);
  }

  /** Read when it is first asked for. */
  #font(name: string) {
    const known = this.#fonts.get(name);
    if (known) return known;
    const file = `noto-sans-${name}-normal.woff`;
    const bytes = this.#files[file];
    if (!bytes) throw new RangeError(`There is no file "${file}" among the letters.`);
    const face = new TrueType(bytes);
    const made = { face, font: pdfFont(face, `NotoSans-${name}`) };
    this.#fonts.set(name, made);
    return made;
  }
}

/** The signs of a text, each that is not known replaced by its number: `U+6905`, apart from the next by a space. */
function spelled(text: string, known: (point: number) => boolean): string[] {
  const parts: string[] = [];
  for (const sign of text.normalize("NFC")) {
    const point = sign.codePointAt(0)!;
    if (known(point)) parts.push(sign);
    else {
      const number = `U+${point.toString(16).toUpperCase().padStart(4, "0")}`;
      parts.push(parts.at(-1)?.startsWith("U+") ? ` ${number}` : number);
    }
  }
  return [...parts.join("")];
}
