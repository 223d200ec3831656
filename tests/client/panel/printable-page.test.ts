import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { papers, printablePage, scaleOn } from "../../../client/panel/printable-page.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { study } from "../../../server/study.ts";
import { read } from "../../house/project-files.ts";

const paper = (name: string) => papers.find((each) => each.name === name)!;
const text = read("samples/boathouse-mess-chair.chair").replace(
  "Boathouse mess chair",
  "<img src=x onerror=print()> & </svg><script>",
);
const sheet = drawSheet(
  study({ text, address: "a", files: { resolve: () => "", read: () => undefined } }).chair,
);

describe("the scale a drawing is printed at", () => {
  it("is the largest usual one at which the sheet fits, the paper turned if that helps", () => {
    expect(scaleOn(paper("A4"), { width: 1400, height: 1900 })).toEqual({ scale: 10, turned: false });
    expect(scaleOn(paper("A3"), { width: 1380, height: 1900 })).toEqual({ scale: 5, turned: false });
    expect(scaleOn(paper("A4"), { width: 1380, height: 950 })).toEqual({ scale: 5, turned: true });
    expect(scaleOn(paper("A4"), { width: 190, height: 277 })).toEqual({ scale: 1, turned: false });
    expect(scaleOn(paper("A4"), { width: 190.1, height: 277 })).toEqual({ scale: 2, turned: false });
  });
});

describe("the page to print", () => {
  const page = printablePage(sheet, paper("A4"));
  const { scale } = scaleOn(paper("A4"), sheet);

  it("has the drawing at its size to scale", () => {
    const [, width, height] = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm"/.exec(page) ?? [];
    expect(Number(width)).toBeCloseTo(sheet.width / scale, 1);
    expect(Number(height)).toBeCloseTo(sheet.height / scale, 1);
    expect(page).toContain("@page { size: 210mm 297mm");
    expect(page).toContain(`Scale 1 : ${scale} on paper.`);
  });

  it("runs its own script and nothing that a maker wrote", () => {
    const scripts = [...page.matchAll(/<script>([^<]*)<\/script>/g)].map(([, code]) => code);
    expect(scripts).toEqual(["print()"]);
    const hash = createHash("sha256").update("print()").digest("base64");
    expect(page).toContain(`script-src 'sha256-${hash}'`);
    expect(page).not.toMatch(/<img|<script(?!>print)/);
    expect(page.match(/<\/svg>/g)).toHaveLength(1);
  });
});
