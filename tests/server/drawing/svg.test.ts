import { XMLParser, XMLValidator } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import type { Sheet } from "../../../server/drawing/sheet.ts";
import { sheetToSvg } from "../../../server/drawing/svg.ts";
import { chairOf, sampleChair, sampleNames } from "./chairs.ts";

const parser = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: "@", processEntities: true });

const titled = (title: string): Sheet => ({ ...drawSheet(chairOf("")), title });

describe("a drawing as SVG", () => {
  test.each(sampleNames)("of %s is well formed and tells its size in millimetres", (name) => {
    const sheet = drawSheet(sampleChair(name));
    const text = sheetToSvg(sheet);
    expect(XMLValidator.validate(text)).toBe(true);
    const { svg } = parser.parse(text);
    expect(svg["@viewBox"]).toBe(`0 0 ${sheet.width} ${sheet.height}`);
    expect(Number.parseFloat(svg["@width"])).toBeCloseTo(sheet.width / 5, 1);
    expect(svg["@width"]).toMatch(/mm$/);
    expect(svg.g.map((group: { "@id"?: string }) => group["@id"]).slice(0, 3)).toEqual([
      "front",
      "side",
      "plan",
    ]);
  });

  test("names the parts its lines belong to", () => {
    const text = sheetToSvg(drawSheet(sampleChair("boathouse-mess-chair")));
    for (const part of ["front.left", "crest", "seat"]) expect(text).toContain(`data-part="${part}"`);
  });

  test("no word of the maker's is ever markup", () => {
    const title = `"><script>alert(1)</script><!-- ]]> & ' \u0007\u0000 \ud800 \ufffe chair`;
    const text = sheetToSvg(titled(title));
    expect(XMLValidator.validate(text)).toBe(true);
    expect(text).not.toContain("<script");
    expect(text).not.toContain("<!--");
    // XML 1.0, section 2.2: the characters it allows.
    const allowed = (code: number) =>
      code === 9 ||
      code === 10 ||
      code === 13 ||
      (code >= 0x20 && code < 0xd800) ||
      (code >= 0xe000 && code < 0xfffe) ||
      code > 0xffff;
    expect([...text].every((sign) => allowed(sign.codePointAt(0)!))).toBe(true);
    expect(parser.parse(text).svg.title).toBe(`"><script>alert(1)</script><!-- ]]> & '    chair`);
  });

  test("a long title takes two lines at most", () => {
    const words = [
      ...sheetToSvg(titled("a long name for a chair ".repeat(30))).matchAll(/font-size="40"[^>]*>([^<]*)</g),
    ];
    expect(words).toHaveLength(2);
    expect(words[1]![1]).toMatch(/…$/);
  });

  test("fetches nothing and runs nothing", () => {
    const text = sheetToSvg(drawSheet(sampleChair("ladder-back")));
    expect(text.replace("http://www.w3.org/2000/svg", "")).not.toMatch(
      /https?:|href|url\(|<script|<style|on\w+=/,
    );
  });

  test("the same sheet always gives the same text", () => {
    const sheet = drawSheet(sampleChair("landing-bench"));
    expect(sheetToSvg(sheet)).toBe(sheetToSvg(structuredClone(sheet)));
  });

  test("within a page it has no declaration", () => {
    expect(sheetToSvg(titled("x"), { standalone: false })).toMatch(/^<svg /);
    expect(sheetToSvg(titled("x"))).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>/);
  });
});
