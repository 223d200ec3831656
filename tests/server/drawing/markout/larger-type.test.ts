/**
 * Letters of 2.5 mm where a page has room (ISO 3098-1 has 2.5 mm among its heights of capitals).
 */
import { describe, expect, it } from "vitest";
import { inLargestType } from "../../../../server/drawing/markout/larger-type.ts";
import { type Item, POINT, SMALL, words } from "../../../../server/drawing/markout/page.ts";
import { markoutPages } from "../../../../server/drawing/markout/pages.ts";
import { MARGIN, papers } from "../../../../server/drawing/markout/paper.ts";
import { sampleChair } from "../chairs.ts";

/** Capitals of Noto Sans are 714 thousandths of the type's height (its OS/2 table). */
const capitals = (size: number): number => 0.714 * size * POINT;

const laid = (count: number) => (room: { wide: number; high: number }) => {
  const rows = Math.floor(room.high / 4);
  return Array.from({ length: Math.ceil(count / rows) }, (_, page) => ({
    items: Array.from(
      { length: Math.min(rows, count - page * rows) },
      (__, k): Item => words([0, 3 + k * 4], "rail", SMALL),
    ),
  }));
};

const sizes = (pages: readonly { items: readonly Item[] }[]): number[] => [
  ...new Set(pages.flatMap(({ items }) => items.flatMap((item) => (item.is === "words" ? item.size : [])))),
];

describe("pages in the largest type", () => {
  it("has capitals of 2.5 mm where they cost no page", () => {
    const pages = inLargestType({ wide: 100, high: 100 }, laid(10));
    expect(pages).toHaveLength(1);
    expect(capitals(Math.min(...sizes(pages)))).toBeGreaterThanOrEqual(2.5);
  });

  it("keeps the usual letters where larger ones would cost a page, or reach over its side", () => {
    expect(sizes(inLargestType({ wide: 100, high: 100 }, laid(25)))).toEqual([SMALL]);
    expect(sizes(inLargestType({ wide: 3.5, high: 100 }, laid(10)))).toEqual([SMALL]);
  });

  it("takes the size between where only that has room", () => {
    expect(sizes(inLargestType({ wide: 100, high: 100 }, laid(20)))).toEqual([1.2 * SMALL]);
  });
});

describe("stock, bevels and gluing up on a large sheet", () => {
  it.each(["a3", "tabloid"] as const)("are lettered in capitals of 2.5 mm on %s", (paper) => {
    const pages = markoutPages(sampleChair("boathouse-stool"), { paper }).filter(({ name }) =>
      /^(stock|bevels|gluing up)/.test(name),
    );
    expect(pages.length).toBeGreaterThan(2);
    // Above the title block.
    const foot = papers[paper].height - MARGIN - 22;
    const small = pages.flatMap(({ name, items }) =>
      items.flatMap((item) =>
        item.is === "words" && item.at[1] < foot && capitals(item.size) < 2.5
          ? [`${name}: ${item.text}`]
          : [],
      ),
    );
    expect(small).toEqual([]);
  });
});

describe("the title block and the check page", () => {
  it("are lettered in capitals of 2.5 mm on a large sheet", () => {
    const pages = markoutPages(sampleChair("boathouse-stool"), { paper: "a3", templates: true });
    const small = pages
      .slice(0, 2)
      .flatMap(({ name, height, items }) =>
        items.flatMap((item) =>
          item.is === "words" &&
          (name === "check" || item.at[1] > height - MARGIN - 22) &&
          capitals(item.size) < 2.5
            ? [`${name}: ${item.text}`]
            : [],
        ),
      );
    expect(small).toEqual([]);
  });
});
