import { Subset } from "./subset.ts";
import type { TrueType } from "./true-type.ts";

/** A font as pdfkit takes one that it has not read itself: signs to glyphs one by one, without ligatures or kerning. `name` is its PostScript name. */
export function pdfFont(font: TrueType, name: string) {
  const [minX, minY, maxX, maxY] = font.box;
  const glyph = (id: number, sign?: number) => ({
    id,
    advanceWidth: font.advance(id),
    codePoints: sign === undefined ? [] : [sign],
  });
  return {
    // By these it tells fonts of one name apart.
    _tables: { head: { checkSumAdjustment: name }, name: { records: { name } } },
    postscriptName: name,
    unitsPerEm: font.unitsPerEm,
    ascent: font.ascent,
    descent: font.descent,
    lineGap: 0,
    xHeight: font.xHeight,
    capHeight: font.capHeight,
    italicAngle: 0,
    bbox: { minX, minY, maxX, maxY },
    "OS/2": { sFamilyClass: 8 << 8 },
    post: { isFixedPitch: false },
    head: { macStyle: { italic: false } },
    createSubset: () => new Subset(font),
    getGlyph: (id: number) => glyph(id),
    layout(text: string) {
      const glyphs = [...text].map((sign) => {
        const point = sign.codePointAt(0)!;
        return glyph(font.glyphOf(point) ?? 0, point);
      });
      return {
        glyphs,
        positions: glyphs.map(({ advanceWidth }) => ({
          xAdvance: advanceWidth,
          yAdvance: 0,
          xOffset: 0,
          yOffset: 0,
        })),
        advanceWidth: glyphs.reduce((sum, { advanceWidth }) => sum + advanceWidth, 0),
      };
    },
  };
}
