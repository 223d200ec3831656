/**
 * A font with TrueType outlines, as far as text is set with it: which glyph a sign has, how wide it is, and its outline (OpenType 1.9).
 */
import { tablesOf } from "./woff.ts";

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

export class TrueType {
  readonly tables: ReadonlyMap<string, Uint8Array>;
  readonly unitsPerEm: number;
  readonly ascent: number;
  readonly descent: number;
  readonly capHeight: number;
  readonly xHeight: number;
  /** Left, lowest, right, highest of all glyphs, font units. */
  readonly box: readonly [number, number, number, number];
  readonly #glyphs: ReadonlyMap<number, number>;
  readonly #metrics: DataView;
  readonly #wide: number;
  readonly #places: DataView;
  readonly #isLong: boolean;
  readonly #outlines: Uint8Array;

  /** From a file in WOFF 1.0. */
  constructor(bytes: Uint8Array) {
    this.tables = tablesOf(bytes);
    const head = viewOf(this.table("head"));
    const hhea = viewOf(this.table("hhea"));
    const os2 = viewOf(this.table("OS/2"));
    this.unitsPerEm = head.getUint16(18);
    this.box = [36, 38, 40, 42].map((at) => head.getInt16(at)) as unknown as TrueType["box"];
    this.ascent = hhea.getInt16(4);
    this.descent = hhea.getInt16(6);
    this.xHeight = os2.getInt16(86);
    this.capHeight = os2.getInt16(88);
    this.#glyphs = glyphsOf(viewOf(this.table("cmap")));
    this.#metrics = viewOf(this.table("hmtx"));
    this.#wide = hhea.getUint16(34);
    this.#places = viewOf(this.table("loca"));
    this.#isLong = head.getInt16(50) === 1;
    this.#outlines = this.table("glyf");
  }

  /** A table that every such font has; throws without it. */
  table(tag: string): Uint8Array {
    const found = this.tables.get(tag);
    if (!found) throw new TypeError(`This font has no table "${tag}".`);
    return found;
  }

  /** The glyph of a sign by its code point; undefined where the font has none. */
  glyphOf(sign: number): number | undefined {
    return this.#glyphs.get(sign);
  }

  /** How far the next glyph stands from this one, font units. */
  advance(glyph: number): number {
    return this.#metrics.getUint16(4 * Math.min(glyph, this.#wide - 1));
  }

  /** From where it begins to its leftmost point, font units. */
  bearing(glyph: number): number {
    const at = glyph < this.#wide ? 4 * glyph + 2 : 4 * this.#wide + 2 * (glyph - this.#wide);
    return this.#metrics.getInt16(at);
  }

  /** Its outline as it stands in the file; no bytes of a blank one. */
  outline(glyph: number): Uint8Array {
    const at = (k: number) =>
      this.#isLong ? this.#places.getUint32(4 * k) : 2 * this.#places.getUint16(2 * k);
    return this.#outlines.subarray(at(glyph), at(glyph + 1));
  }
}

/** Glyphs by code points, from a subtable for Unicode in format 4 or 12. */
function glyphsOf(cmap: DataView): Map<number, number> {
  const glyphs = new Map<number, number>();
  for (let k = 0; k < cmap.getUint16(2); k++) {
    const start = cmap.getUint32(8 + 8 * k);
    const format = cmap.getUint16(start);
    if (format === 4) addSegments(cmap, start, glyphs);
    if (format === 12) addGroups(cmap, start, glyphs);
  }
  return glyphs;
}

function addSegments(cmap: DataView, start: number, glyphs: Map<number, number>): void {
  const twice = cmap.getUint16(start + 6);
  for (let k = 0; k < twice; k += 2) {
    const last = cmap.getUint16(start + 14 + k);
    const first = cmap.getUint16(start + 16 + twice + k);
    const delta = cmap.getUint16(start + 16 + 2 * twice + k);
    const rangeAt = start + 16 + 3 * twice + k;
    const range = cmap.getUint16(rangeAt);
    for (let sign = first; sign <= last && sign < 0xffff; sign++) {
      const raw = range === 0 ? sign : cmap.getUint16(rangeAt + range + 2 * (sign - first));
      const glyph = raw === 0 && range !== 0 ? 0 : (raw + delta) & 0xffff;
      if (glyph) glyphs.set(sign, glyph);
    }
  }
}

function addGroups(cmap: DataView, start: number, glyphs: Map<number, number>): void {
  for (let k = 0; k < cmap.getUint32(start + 12); k++) {
    const group = start + 16 + 12 * k;
    const [first, last, glyph] = [0, 4, 8].map((by) => cmap.getUint32(group + by)) as [
      number,
      number,
      number,
    ];
    for (let sign = first; sign <= last; sign++) glyphs.set(sign, glyph + sign - first);
  }
}
