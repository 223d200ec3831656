/**
 * Widths of words against pdfkit 0.20.2, which reads them from Adobe's own metrics.
 */
import PDFDocument from "pdfkit";
import { describe, expect, it } from "vitest";
import { linesOf, shortened, widthOf } from "../../../../server/drawing/markout/lettering.ts";
import { POINT } from "../../../../server/drawing/markout/page.ts";
import { pagesToPdf, plain } from "../../../../server/drawing/markout/pdf.ts";

const texts = [
  ...Array.from({ length: 95 }, (_, k) => String.fromCharCode(32 + k)),
  "35.7 – 67.7",
  "Ø 36",
  "86.0°",
  "6 × 22",
  "a…",
];

describe("widths of words", () => {
  it.each(["Helvetica", "Helvetica-Bold"])("are those of %s", (font) => {
    const document = new PDFDocument({ autoFirstPage: false });
    document.font(font, 10);
    for (const text of texts) {
      const theirs = document.widthOfString(text, { features: [] }) * POINT;
      // They set some pairs of signs a little nearer to each other.
      const digits = [...text].length === 1 ? 9 : 1;
      expect(widthOf(text, 10, font.endsWith("Bold")), text).toBeCloseTo(theirs, digits);
    }
  });

  it("decide where lines break and what is left out", () => {
    const lines = linesOf("one two three four five", 10, widthOf("one two three", 10));
    expect(lines).toEqual(["one two three", "four five"]);
    expect(shortened("stretcher", 10, widthOf("stretch", 10))).toMatch(/^stretc?h?…$/);
    expect(shortened("rail", 10, 100)).toBe("rail");
  });
});

describe("a PDF", () => {
  const page = { width: 210, height: 297, name: "one", items: [] };

  it("is the same bytes for the same pages and date", async () => {
    const make = () => pagesToPdf([page, page], { title: "Stool", date: new Date("2026-03-14T00:00:00Z") });
    const [one, two] = [await make(), await make()];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
    expect(Buffer.from(one).toString("latin1")).toContain("D:20260314");
  });

  it("tells how far it has come", async () => {
    const told: number[] = [];
    await pagesToPdf([page, page, page], {
      title: "",
      date: new Date(0),
      made: (count) => void told.push(count),
    });
    expect(told).toEqual([1, 2, 3]);
  });

  it("keeps what it can of signs that its fonts lack", () => {
    expect(plain("Šárka’s chair – 2")).toBe("Sárka’s chair – 2");
    expect(plain("椅子 Ø 30")).toBe("?? Ø 30");
  });
});
