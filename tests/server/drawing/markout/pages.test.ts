/**
 * Every page of the samples, on both papers, in millimetres and in inches: readable, within its border, no words over words, letters as large
 * as there is room for. `npm run prove lettering sheets` looks at all samples on all papers.
 */
import { describe, expect, it } from "vitest";
import type { Chair } from "../../../../server/chair/chair.ts";
import type { Page } from "../../../../server/drawing/markout/page.ts";
import { markoutPages, piecesAsked } from "../../../../server/drawing/markout/pages.ts";
import { papers } from "../../../../server/drawing/markout/paper.ts";
import { pageToSvg } from "../../../../server/drawing/markout/svg.ts";
import { sampleChair, sampleNames } from "../chairs.ts";
import { faultsOn, wordsOf } from "./page-faults.ts";

const inInches = (chair: Chair): Chair => ({ ...chair, design: { ...chair.design, units: "in" } });

describe.each(sampleNames.map((name, k) => ({ name, k })))(
  "the marking-out pages of $name",
  ({ name, k }) => {
    const chair = sampleChair(name);
    const cases = [
      { paper: "a4" as const, chair, units: chair.design.units, step: 32 as const },
      { paper: "letter" as const, chair: inInches(chair), units: "in", step: 64 as const },
      // The larger papers by turns: they differ in the room there is, and what has room on the small ones has it there.
      {
        paper: k % 2 ? ("a3" as const) : ("tabloid" as const),
        chair,
        units: chair.design.units,
        step: 32 as const,
      },
    ];
    let plain: Page[] | undefined;
    const onA4 = () => (plain ??= markoutPages(chair, { paper: "a4", step: 32, text: "0123abcd" }));

    it.each(cases)("are readable on $paper in $units", ({ paper, chair, step }) => {
      const pages = paper === "a4" ? onA4() : markoutPages(chair, { paper, step, text: "0123abcd" });
      expect(pages.length).toBeGreaterThan(8);
      for (const page of pages) {
        const { width, height } = page;
        const { width: wide, height: high } = papers[paper];
        // Only the whole chair may stand on the short side.
        expect(
          page.name === "arrangement"
            ? [
                [wide, high],
                [high, wide],
              ]
            : [[wide, high]],
        ).toContainEqual([width, height]);
        expect(faultsOn(page)).toEqual([]);
      }
    });

    it("are numbered, titled and named apart", () => {
      const pages = onA4();
      for (const [at, page] of pages.entries()) {
        const texts = wordsOf(page).map(({ text }) => text);
        expect(texts).toContain(`${at + 1} of ${pages.length}`);
        expect(texts).toContain(chair.design.title!.value);
        // Sentences may run on in a title block.
        if (page.fullSize)
          expect(texts.join(" ")).toContain("Check the 100 mm square before using a template.");
      }
      // A template of a piece follows its sheets, so that names may come again but no page of either is lost.
      expect(new Set(pages.map((page) => pageToSvg(page, "x"))).size).toBe(pages.length);
    });

    it("hold a sheet for every piece, with how many and its timber", () => {
      const pages = onA4();
      for (const piece of piecesAsked(chair)) {
        const sheet = pages.find((page) => page.name === piece.name || page.name === `${piece.name} 1`)!;
        const texts = wordsOf(sheet).map(({ text }) => text);
        expect(texts.some((text) => text.startsWith(`${piece.parts.length} off`))).toBe(true);
        expect(texts.some((text) => text.includes(piece.timber!.replaceAll("-", " ")))).toBe(true);
      }
    });
  },
);

describe("the whole chair", () => {
  it("begins with the whole of it and its stock, and ends its sheets with the order of gluing up", () => {
    const chair = sampleChair("boathouse-mess-chair");
    const pages = markoutPages(chair, { paper: "a4" });
    const texts = (page: (typeof pages)[number]) =>
      page.items.flatMap((item) => (item.is === "words" ? [item.text] : []));
    expect(pages.slice(0, 4).map(({ name }) => name)).toEqual([
      "reading",
      "arrangement",
      "sections",
      "stock",
    ]);
    // 22 x 70 x 442 with 2 off each face and each edge.
    expect(texts(pages[3]!)).toContain("26 × 74 × 442 mm");
    expect(texts(pages[3]!).join(" ")).toContain("strip of seat-side 2 white ash 15 × 20 × 389.6 mm");
    const side = pages.find(({ name }) => name === "seat-side")!;
    expect(texts(side).join(" ")).toContain("Stock: 26 × 74 × 442.1, sawn 38 thick, grain along its length.");
    const glued = pages.filter(({ name }) => name.startsWith("gluing up"));
    expect(glued).toHaveLength(2);
    const said = glued.flatMap(texts).join(" ");
    expect(said).toContain("1. Right side frame");
    expect(said).toContain("Spring the end of seat-side.right 0.3 mm up to enter front.right.");
    // Each has its picture: far more lines than the border's.
    for (const page of glued) expect(page.items.filter(({ is }) => is === "line").length).toBeGreaterThan(60);
  });
});

describe("asking for less", () => {
  const chair = sampleChair("boathouse-mess-chair");
  const names = (options: Partial<Parameters<typeof markoutPages>[1]>) =>
    markoutPages(chair, { paper: "a4", ...options }).map(({ name }) => name);

  it("gives one part's sheets, rod and templates", () => {
    expect(names({ part: "crest" })).toEqual([
      "crest 1",
      "crest 2",
      "check",
      "crest template 1",
      "crest template 2",
      // Its lower face, which has the slats' mortises, and its upper one, whose outline is another.
      "crest template 1",
      "crest template 2",
    ]);
    expect(names({ part: "front.right" })[0]).toBe("front 1");
  });

  it("gives the full-size pages alone", () => {
    const pages = names({ templates: true });
    expect(pages[0]).toBe("check");
    expect(pages.filter((name) => name.startsWith("sticks"))).toHaveLength(4);
    expect(pages.filter((name) => name.startsWith("back template"))).toHaveLength(4);
  });

  it("gives nothing for a part that is not there", () => {
    expect(names({ part: "keel" })).toEqual([]);
  });
});

describe("an SVG of a page", () => {
  it("escapes what the maker wrote", () => {
    const chair = sampleChair("boathouse-mess-chair");
    const title = '<script>alert("x")</script> & so on';
    const design = { ...chair.design, title: { ...chair.design.title!, value: title } };
    const [page] = markoutPages({ ...chair, design }, { paper: "a4" });
    const svg = pageToSvg(page!, title);
    expect(svg).not.toContain("<script");
    expect(svg).toContain("&lt;script&gt;");
    expect(svg).toMatch(/width="297mm" height="210mm" viewBox="0 0 297 210"/);
  });
});
