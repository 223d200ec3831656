import type { TrueType } from "./true-type.ts";

/** In an outline made of others: what the bits of each one's flags mean (OpenType 1.9, `glyf`). */
const PAIRS_OF_WORDS = 0x1;
const SCALE = 0x8;
const MORE = 0x20;
const TWO_SCALES = 0x40;
const MATRIX = 0x80;

/** The glyphs of a font that are used, numbered anew in the order they come up; glyph 0 is the font's own for what it lacks. */
export class Subset {
  readonly #font: TrueType;
  readonly #glyphs: number[] = [0];
  readonly #numbers = new Map<number, number>([[0, 0]]);

  constructor(font: TrueType) {
    this.#font = font;
  }

  /** The new number of a glyph. */
  includeGlyph(glyph: number): number {
    const known = this.#numbers.get(glyph);
    if (known !== undefined) return known;
    const number = this.#glyphs.push(glyph) - 1;
    this.#numbers.set(glyph, number);
    return number;
  }

  /** A font file with those glyphs alone. */
  encode(): Uint8Array {
    const outlines: Uint8Array[] = [];
    // Outlines made of others bring those in as they come.
    for (let k = 0; k < this.#glyphs.length; k++)
      outlines.push(this.#renumbered(this.#font.outline(this.#glyphs[k]!)));
    const count = outlines.length;
    const places = new DataView(new ArrayBuffer(4 * (count + 1)));
    const sizes = outlines.map(({ length }) => Math.ceil(length / 4) * 4);
    const glyf = new Uint8Array(sizes.reduce((sum, size) => sum + size, 0));
    let at = 0;
    outlines.forEach((outline, k) => {
      glyf.set(outline, at);
      at += sizes[k]!;
      places.setUint32(4 * (k + 1), at);
    });
    const hmtx = new DataView(new ArrayBuffer(4 * count));
    this.#glyphs.forEach((glyph, k) => {
      hmtx.setUint16(4 * k, this.#font.advance(glyph));
      hmtx.setInt16(4 * k + 2, this.#font.bearing(glyph));
    });
    const changed = (tag: string, offset: number, value: number): Uint8Array => {
      const copy = this.#font.table(tag).slice();
      new DataView(copy.buffer).setUint16(offset, value);
      return copy;
    };
    const bytes = (view: DataView) => new Uint8Array(view.buffer);
    const kept = ["cvt ", "fpgm", "prep"].flatMap((tag): [string, Uint8Array][] => {
      const table = this.#font.tables.get(tag);
      return table ? [[tag, table]] : [];
    });
    return fontFile([
      ...kept,
      ["glyf", glyf],
      ["head", changed("head", 50, 1)],
      ["hhea", changed("hhea", 34, count)],
      ["hmtx", bytes(hmtx)],
      ["loca", bytes(places)],
      ["maxp", changed("maxp", 4, count)],
    ]);
  }

  /** An outline with the numbers of those that it is made of changed to the new ones. */
  #renumbered(outline: Uint8Array): Uint8Array {
    if (outline.length === 0) return outline;
    const copy = outline.slice();
    const view = new DataView(copy.buffer);
    if (view.getInt16(0) >= 0) return copy;
    let at = 10;
    for (let flags = MORE; flags & MORE; ) {
      flags = view.getUint16(at);
      view.setUint16(at + 2, this.includeGlyph(view.getUint16(at + 2)));
      at += 4 + (flags & PAIRS_OF_WORDS ? 4 : 2);
      if (flags & SCALE) at += 2;
      else if (flags & TWO_SCALES) at += 4;
      else if (flags & MATRIX) at += 8;
    }
    return copy;
  }
}

/** Tables in the order of their tags, as one file. */
function fontFile(tables: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const padded = (size: number) => Math.ceil(size / 4) * 4;
  const start = 12 + 16 * tables.length;
  const file = new Uint8Array(tables.reduce((sum, [, { length }]) => sum + padded(length), start));
  const view = new DataView(file.buffer);
  view.setUint32(0, 0x00010000);
  view.setUint16(4, tables.length);
  const power = Math.floor(Math.log2(tables.length));
  view.setUint16(6, 16 * 2 ** power);
  view.setUint16(8, power);
  view.setUint16(10, 16 * (tables.length - 2 ** power));
  let at = start;
  tables.forEach(([tag, table], k) => {
    file.set(table, at);
    const entry = 12 + 16 * k;
    for (let n = 0; n < 4; n++) view.setUint8(entry + n, tag.charCodeAt(n));
    view.setUint32(entry + 4, sumOf(view, at, padded(table.length)));
    view.setUint32(entry + 8, at);
    view.setUint32(entry + 12, table.length);
    at += padded(table.length);
  });
  return file;
}

function sumOf(view: DataView, from: number, size: number): number {
  let sum = 0;
  for (let k = 0; k < size; k += 4) sum = (sum + view.getUint32(from + k)) >>> 0;
  return sum;
}
