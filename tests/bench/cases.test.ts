/**
 * The benchmark's cases do the work they claim to time. Times themselves are printed by `npm run bench`; no test fails on one.
 */
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { runCase, type SampleResult, type SheetsResult, type TextResult } from "./cases.ts";
import type { TurnedResult } from "./trying.ts";

const SAMPLE = fileURLToPath(new URL("../../samples/boathouse-mess-chair.chair", import.meta.url));

test.each(["one error", "badly broken"] as const)("a text with %s is reported", async (kind) => {
  const { found } = (await runCase({
    is: "text",
    subject: "chair",
    bytes: 3000,
    kind,
    count: 2,
  })) as TextResult;
  expect(found).toBeGreaterThan(0);
});

test("the sample chair is read, judged and drawn without an error", async () => {
  const { all, draw } = (await runCase({ is: "sample", path: SAMPLE, count: 1 })) as SampleResult;
  expect(all.samples).toHaveLength(1);
  expect(draw.samples).toHaveLength(1);
});

test("all sheets of the sample chair are made", async () => {
  const { pages } = (await runCase({ is: "sheets", path: SAMPLE, count: 1 })) as SheetsResult;
  expect(pages).toBeGreaterThan(20);
});

test("the ladder-back is turned with its lines drawn", async () => {
  const path = SAMPLE.replace("boathouse-mess-chair", "ladder-back");
  const { lines, samples } = (await runCase({ is: "turned", path, count: 2 })) as TurnedResult;
  expect(samples).toHaveLength(2);
  expect(lines).toBeGreaterThan(50);
});
