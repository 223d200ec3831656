import { expect, test } from "vitest";
import {
  drawnOverMeasured,
  drawnTests,
  predictedOverMeasured,
  sizedTests,
  strengthReference,
} from "../../../server/strength/reference.ts";

test("the page of what strength is judged by is current", async () => {
  await expect(strengthReference()).toMatchFileSnapshot("../../../server/strength/reference.md");
});

test("joints are predicted within one deviation of the published tests that give every size", () => {
  for (const published of sizedTests)
    expect(Math.abs(predictedOverMeasured(published) - 1), published.species).toBeLessThan(
      published.deviation / published.mean,
    );
});

test("dowels drawn out are predicted between the published tests, which lie a factor of three apart", () => {
  const ratios = drawnTests.map(drawnOverMeasured);
  expect(Math.min(...ratios)).toBeLessThan(1);
  expect(Math.max(...ratios)).toBeGreaterThan(1);
  for (const ratio of ratios) expect(Math.abs(Math.log(ratio))).toBeLessThan(Math.log(3));
});
