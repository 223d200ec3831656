/**
 * The rules' figures against what is printed outside the project. Marks as in the data file: seen in print, or common practice.
 */
import { describe, expect, it } from "vitest";
import { figure, figureNames, least, most } from "../../../server/rules/machinery/figures.ts";
import { messagesOf, studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";
import { backFrame, frame } from "../../plain-frame.ts";

const DEG = Math.PI / 180;

describe("rake of a back", () => {
  it("is practice, and lies within the usual seat-to-back angles of 95° to 105° (no title noted: from memory)", () => {
    expect(figure("seat-back-rake").standing).toBe("practice");
    expect(90 + least("seat-back-rake") / DEG).toBeGreaterThanOrEqual(95);
    expect(90 + most("seat-back-rake") / DEG).toBeLessThanOrEqual(105);
  });

  it("is not over 7° on a dining chair and not as little as 4° (common practice)", () => {
    expect(messagesOf(backFrame("rake 4deg above 450"), "rake-under-limit")).toHaveLength(1);
    expect(messagesOf(backFrame("rake 7.2deg above 450"), "rake-over-limit")).toHaveLength(1);
    expect(studied(backFrame("rake 6deg above 450")).problems).toEqual([]);
  });
});

describe("a tenon", () => {
  it("is a third of the stock (handbooks of joinery, no title noted: from memory)", () => {
    expect(least("tenon-share-of-rail")).toBeCloseTo(1 / 3, 12);
  });

  it("of a published test specimen passes: rail 22.2 × 63.5, tenon 32 long × 38 high × 9.5 thick (BioResources 11(3), 2016; seen)", () => {
    const specimen = frame({
      joint: "tenon thick 9.5, wide 38, long 32\nshoulders top 12.75, bottom 12.75",
    }).replaceAll("22 x 60", "22.2 x 63.5");
    expect(studied(specimen).problems).toEqual([]);
  });

  it("leaves 4.5 mm beyond its mortise, which is 1.5 to 3 mm deeper than it is long (handbooks of joinery, no title noted: from memory)", () => {
    expect(least("wood-beyond-mortise")).toBe(4.5);
    expect([least("mortise-deeper-than-tenon"), most("mortise-deeper-than-tenon")]).toEqual([1.5, 3]);
    expect(messagesOf(frame({ joint: "tenon thick 8, long 34" }), "tenon-too-long")).toEqual([]);
    expect(messagesOf(frame({ joint: "tenon thick 8, long 34.2" }), "tenon-too-long")).toHaveLength(1);
  });

  it("blind, of half to two thirds of the post, is never called too long in chair-size posts (handbooks of joinery, no title noted: from memory)", () => {
    for (const post of [30, 36, 40, 45, 50]) {
      for (const share of [1 / 2, 2 / 3]) {
        const text = frame({ joint: `tenon thick 8, long ${(post * share).toFixed(2)}` }).replaceAll(
          "40 x 40",
          `${post} x ${post}`,
        );
        expect(messagesOf(text, "tenon-too-long"), `${post} ${share}`).toEqual([]);
      }
    }
  });
});

/** Every data file of figures. */
const dataFiles = [
  "server/rules/figures.json",
  "server/sitter/seats.json",
  "server/strength/wood.json",
  "server/strength/loads.json",
  "server/boards/sawn-sizes.json",
  "server/floor/loads.json",
  "server/sitter/child-weights.json",
];

/** What names a book, a paper, a standard or the body that keeps it. */
const title =
  /Wood Handbook, FPL-GTR-\d+|BioResources \d+\(\d+\)|Drvna industrija \d+|Bending fatigue life of|Static Versus Cyclic|Forest Products Journal \d+\(\d+\)|\b(?:EN|ISO|ANSI|DIN) [\w/-]*\d|CDC 2000|ANSUR II|Bodyspace/;

describe("sources", () => {
  it.each(dataFiles)("of %s that were seen name what was seen", (path) => {
    const untitled: string[] = [];
    JSON.parse(read(path), (key, value) => {
      if (/source$/i.test(key) && typeof value === "string" && /\bseen\b/.test(value))
        for (const part of value.replaceAll(/\bno[tn]?e?\b[^.;]*\bseen\b/gi, "").split("; "))
          if (/\bseen\b/.test(part) && !title.test(value)) untitled.push(value);
      if (value && typeof value === "object" && /^seen\b/.test(String(value.seen)) && value.source)
        if (!title.test(value.source)) untitled.push(value.source);
      return value;
    });
    expect(untitled).toEqual([]);
  });

  it("are never seen without a title", () => {
    for (const name of figureNames) {
      const { source, standing } = figure(name);
      if (standing === "seen" || /\bseen\b/.test(source))
        expect(source, name).not.toMatch(/no title noted|handbooks of/);
    }
  });
});
