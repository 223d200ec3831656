/**
 * Whatever can be built can be marked out: the broken chairs of the rules' own examples, and chairs with some of their lines gone.
 */
import { describe, expect, it } from "vitest";
import { markoutPages } from "../../../../server/drawing/markout/pages.ts";
import { pageToSvg } from "../../../../server/drawing/markout/svg.ts";
import { studied } from "../../../check.ts";
import { examples } from "../../../rule-examples.ts";
import { shareName, shareOf, time } from "../../../share.ts";
import { chairOf, sampleNames, sampleText } from "../chairs.ts";

const sound = (chair: Parameters<typeof markoutPages>[0], what: string) => {
  for (const page of markoutPages(chair, { paper: "a4" })) {
    const svg = pageToSvg(page, "x");
    expect(
      svg.includes("NaN") || svg.includes("Infinity") || svg.includes("undefined"),
      `${what}: ${page.name}`,
    ).toBe(false);
    for (const item of page.items) {
      const points = item.is === "line" ? item.points : [item.at];
      expect(points.flat().every(Number.isFinite), `${what}: ${page.name}`).toBe(true);
    }
  }
};

/** Of the lines that say something of a part, and of the rules' examples, one in so many is tried in `npm test`. */
const [LINES, EXAMPLES] = [60, 6];

describe("marking out", { timeout: time }, () => {
  it.each(shareOf(examples, EXAMPLES))("copes with the example of $code", ({ code, example }) => {
    sound(studied(example).chair, code);
  });

  it.each(sampleNames)(`copes with %s when a line is gone, ${shareName(LINES)}`, (name) => {
    const lines = sampleText(name).split("\n");
    const spoken = lines.flatMap((line, k) => (/^ {2}\w/.test(line) ? [k] : []));
    for (const k of shareOf(spoken, LINES)) {
      sound(chairOf(lines.filter((_, at) => at !== k).join("\n")), `${name} without line ${k + 1}`);
    }
  });
});
