/**
 * The embedded letters against two readers that had no part in them: fontkit 2 (MIT) reads the font's files and the subsets made of them,
 * poppler the PDF.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { create } from "fontkit";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { LETTER_FILES } from "../../../server/drawing/markout/letters/files.ts";
import { Letters } from "../../../server/drawing/markout/letters/letters.ts";
import { Subset } from "../../../server/drawing/markout/letters/subset.ts";
import { TrueType } from "../../../server/drawing/markout/letters/true-type.ts";
import { type Page, words } from "../../../server/drawing/markout/page.ts";
import { pagesToPdf } from "../../../server/drawing/markout/pdf.ts";
import { lettersIn } from "../../../server/main/letters-node.ts";

const folder = new URL("../../../node_modules/@fontsource/noto-sans/files/", import.meta.url);
const files = lettersIn(folder)!;
let place: string;
beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "letters-"));
});
afterAll(() => rmSync(place, { recursive: true, force: true }));

describe.each(LETTER_FILES.filter((name) => name.includes("-400-")))("%s", (name) => {
  const own = new TrueType(files[name]!);
  const theirs = create(Buffer.from(files[name]!));
  // The last of a table of signs is none.
  const signs = theirs.characterSet.filter((sign) => sign !== 0xffff);

  it("has the glyph and the width of every sign that fontkit reads in it", () => {
    expect(signs.length).toBeGreaterThan(20);
    for (const sign of signs) {
      const glyph = theirs.glyphForCodePoint(sign);
      expect([sign, own.glyphOf(sign)]).toEqual([sign, glyph.id]);
      expect(own.advance(glyph.id)).toBe(glyph.advanceWidth);
    }
    expect([own.unitsPerEm, own.ascent, own.descent, own.capHeight]).toEqual([
      theirs.unitsPerEm,
      theirs.ascent,
      theirs.descent,
      theirs.capHeight,
    ]);
  });

  it("gives subsets with the same outlines", () => {
    const subset = new Subset(own);
    const some = signs.filter((_, k) => k % 7 === 0);
    const numbers = some.map((sign) => subset.includeGlyph(own.glyphOf(sign)!));
    const made = create(Buffer.from(subset.encode()));
    some.forEach((sign, k) => {
      const [there, here] = [theirs.glyphForCodePoint(sign), made.getGlyph(numbers[k]!)];
      expect(here.path.toSVG(), String.fromCodePoint(sign)).toBe(there.path.toSVG());
      expect(here.advanceWidth).toBe(there.advanceWidth);
    });
  });
});

describe("a PDF with embedded letters", () => {
  const texts = ["Stól Šárky – 2 × Ø 30", "Ωραία καρέκλα", "Стул на лодке", "椅子 and ≈"];
  const page: Page = {
    width: 210,
    height: 100,
    name: "one",
    items: [
      ...texts.map((text, k) => words([20, 20 + 10 * k], text, 10)),
      words([20, 70], "Dick: Ψ Ж", 10, { bold: true }),
    ],
  };

  it("is read as it was written, with all its fonts in it", async () => {
    const letters = new Letters(files);
    const pdf = join(place, "letters.pdf");
    writeFileSync(pdf, await pagesToPdf([page], { title: "Letters", date: new Date(0), letters }));
    const read = execFileSync("pdftotext", ["-layout", pdf, "-"], { encoding: "utf8" });
    for (const text of texts.slice(0, 3)) expect(read).toContain(text);
    // Signs of other scripts by their numbers in Unicode.
    expect(read).toContain("U+6905 U+5B50 and");
    expect(read).toContain("Dick: Ψ Ж");
    const fonts = execFileSync("pdffonts", [pdf], { encoding: "utf8" }).trim().split("\n").slice(2);
    expect(fonts.length).toBeGreaterThanOrEqual(6);
    for (const font of fonts) expect(font).toMatch(/NotoSans-\S+ +CID TrueType +Identity-H +yes yes yes/);
  });
});
