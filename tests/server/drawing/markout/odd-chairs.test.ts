/**
 * Whatever can be built can be marked out: the broken chairs of the rules' own examples, and chairs with some of their lines gone.
 */
import { describe, expect, it } from "vitest";
import { markoutPages } from "../../../../server/drawing/markout/pages.ts";
import { pageToSvg } from "../../../../server/drawing/markout/svg.ts";
import { studied } from "../../../check.ts";
import { examples } from "../../../rule-examples.ts";
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

describe("marking out", () => {
  it.each(examples)("copes with the example of $code", ({ code, example }) => {
    sound(studied(example).chair, code);
  });

  it.each(sampleNames)("copes with %s when any one of its lines is gone", { timeout: 120_000 }, (name) => {
    const lines = sampleText(name).split("\n");
    // Every line that says something of a part, a few at a time apart, so that all kinds are met in little time.
    const spoken = lines.flatMap((line, k) => (/^ {2}\w/.test(line) ? [k] : []));
    for (const k of spoken.filter((_, at) => at % 8 === 0)) {
      sound(chairOf(lines.filter((_, at) => at !== k).join("\n")), `${name} without line ${k + 1}`);
    }
  });
});
