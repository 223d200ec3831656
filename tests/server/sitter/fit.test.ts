import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { settle } from "../../../server/settle.ts";
import { quantile, shareBelow } from "../../../server/sitter/body-sizes.ts";
import { fitAdults, fitNamed } from "../../../server/sitter/fit.ts";
import { marksForAges, schoolMark } from "../../../server/sitter/school-marks.ts";
import { sizesOf } from "../../../server/sitter/sizes.ts";
import { studied } from "../../check.ts";

describe("whom a chair fits", () => {
  it("one size alone excludes by its own measure: shoes added for feet on the floor", () => {
    const { groups } = fitAdults({ seatWidth: 420 });
    for (const { group, share } of groups)
      expect(share).toBeCloseTo(shareBelow(group, "hip-breadth-sitting", 395), 9);
    const women = fitAdults({ seatHeight: 425 }, "women").groups[0]!;
    // 425 less 45 of shoes: behind the knee at least 380.
    expect(women.each.find((one) => one.check.name === "height")!.share).toBeCloseTo(
      1 - shareBelow("women", "popliteal-height", 380),
      9,
    );
  });

  it("all at once is at most the least of each, and what excludes most is named", () => {
    const sizes = { seatHeight: 425, seatDepth: 411, seatWidth: 440, armHeight: 219, backTop: 500 };
    for (const fit of fitAdults(sizes).groups) {
      for (const { share } of fit.each) expect(fit.share).toBeLessThanOrEqual(share + 0.002);
      expect(fit.excludesMost!.shareWithout).toBeGreaterThan(fit.share);
    }
  });

  it("a lower seat suits more women on the height of the knee", () => {
    const at = (seatHeight: number) =>
      fitAdults({ seatHeight }, "women").groups[0]!.each.find((one) => one.check.name === "height")!.share;
    expect(at(400)).toBeGreaterThan(at(440));
  });

  it("a named sitter is judged by their own measures, and only by those given", () => {
    const given = (value: number) => ({ value, at: { start: 0, end: 0 } });
    const measures = new Map([["popliteal-height", given(quantile("men", "popliteal-height", 0.5))]]);
    const verdicts = fitNamed({ seatHeight: 470, seatDepth: 400 }, { measures });
    expect(verdicts.map((one) => one.check.name)).toEqual(["height", "not too low"]);
    // 470 less 25 of shoes asks for 445; the median man has 430.
    expect(verdicts[0]).toMatchObject({ low: 445, fits: false });
    expect(verdicts[1]!.fits).toBe(true);
  });

  it("a named sitter has on what the text says: higher heels, thicker clothing", () => {
    const given = (value: number) => ({ value, at: { start: 0, end: 0 } });
    const fits = (shoes: number, clothing: number) =>
      fitNamed(
        { seatHeight: 470, seatWidth: 420 },
        {
          measures: new Map([
            ["popliteal-height", given(435)],
            ["hip-breadth-sitting", given(400)],
            ["shoes", given(shoes)],
            ["clothing", given(clothing)],
          ]),
        },
      ).map(({ check, fits: well }) => [check.name, well]);
    expect(fits(25, 10)).toEqual([
      ["height", false],
      ["not too low", true],
      ["width", true],
    ]);
    expect(fits(40, 25)).toEqual([
      ["height", true],
      ["not too low", true],
      ["width", false],
    ]);
  });
});

describe("school chairs (EN 1729-1, size marks)", () => {
  it("mark 4 is 380 mm for children of 355 to 405 behind the knee", () => {
    expect(schoolMark(4)).toMatchObject({ seatHeight: 380, popliteal: [355, 405], stature: [1330, 1590] });
    expect(schoolMark(9)).toBeUndefined();
  });

  it("marks for an age overlap as children do", () => {
    expect(marksForAges(5, 5).map((row) => row.mark)).toEqual([2]);
    expect(marksForAges(6, 9).map((row) => row.mark)).toEqual([2, 3, 4]);
  });
});

describe("sizes of whole chairs that meet the sitter", () => {
  const sizesFrom = (name: string) => {
    const at = (path: string) => new URL(`../../../samples/${path}`, import.meta.url);
    const files = {
      resolve: (_from: string, path: string) => path,
      read: (path: string) => readFileSync(at(path), "utf8"),
    };
    const tree = parse(readFileSync(at(name), "utf8"), vocabulary);
    return sizesOf(settle({ tree, address: name, files }).chair);
  };

  it("the mess chair has no arms and a depth to where the back is leant on", () => {
    const sizes = sizesFrom("boathouse-mess-chair.chair");
    expect(sizes.armHeight).toBeUndefined();
    // The seat is 435 mm deep to its back edge; the straight of the back meets it some way ahead of that.
    expect(sizes.seatDepth).toBeGreaterThan(380);
    expect(sizes.seatDepth).toBeLessThan(435);
    expect(sizes.seatHeight).toBeCloseTo(425, 0);
  });

  it("the armchair is as wide as is clear between its arms", () => {
    const sizes = sizesFrom("mess-armchair.chair");
    expect(sizes.armHeight).toBeGreaterThan(178);
    expect(sizes.armHeight).toBeLessThan(250);
    expect(sizes.seatWidth).toBeGreaterThan(350);
  });

  it.each([
    [60, 420],
    [300, 372],
  ])(
    "a solid seat %s wide in front: its widest counts where it is sat on astride, else its middle",
    (front, wide) => {
      const text = `seat solid {\n up 440\n thick 42\n deep 400\n wide ${front} at 0\n wide 420 at 340 straight\n}\n`;
      const { seatWidth } = sizesOf(studied(text).chair);
      // 300 widens by 120 over 340, so it is 370.6 at 200.
      expect(seatWidth).toBeCloseTo(front === 60 ? wide : 300 + (120 * 200) / 340, 6);
    },
  );

  it("no seat, no sizes", () => {
    const tree = parse('chair "x"\n', vocabulary);
    const files = { resolve: (_: string, path: string) => path, read: () => undefined };
    expect(sizesOf(settle({ tree, address: "x", files }).chair)).toEqual({});
  });
});
