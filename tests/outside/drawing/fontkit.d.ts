/** What is used here of fontkit, which comes without types. */
declare module "fontkit" {
  interface Glyph {
    id: number;
    advanceWidth: number;
    path: { toSVG(): string };
  }

  export interface Font {
    characterSet: number[];
    unitsPerEm: number;
    ascent: number;
    descent: number;
    capHeight: number;
    glyphForCodePoint(sign: number): Glyph;
    getGlyph(id: number): Glyph;
  }

  export function create(bytes: Uint8Array): Font;
}
