/**
 * Ceilings that hold on a busy machine: far above what `npm run bench` prints on a quiet one, far below what would be felt.
 */
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { runCase, type SampleResult, type TextResult } from "./cases.ts";
import { quantile } from "./measure.ts";

const SAMPLE = fileURLToPath(new URL("../../samples/boathouse-mess-chair.chair", import.meta.url));
const least = ({ samples }: { samples: number[] }): number => quantile(samples, 0);

test("the sample chair goes from text to diagnostics and drawing within 40 ms", async () => {
  const { all } = (await runCase({ is: "sample", path: SAMPLE, count: 16 })) as SampleResult;
  expect(least(all)).toBeLessThan(40);
});

test("ten times the text takes no more than twenty-five times as long", async () => {
  const time = async (bytes: number, count: number) =>
    least((await runCase({ is: "text", subject: "chair", bytes, kind: "clean", count })) as TextResult);
  expect((await time(20_000, 4)) / (await time(2000, 12))).toBeLessThan(25);
});

test.each(["one error", "badly broken"] as const)("a text with %s is told of", async (kind) => {
  const { found } = (await runCase({
    is: "text",
    subject: "chair",
    bytes: 3000,
    kind,
    count: 2,
  })) as TextResult;
  expect(found).toBeGreaterThan(0);
});
