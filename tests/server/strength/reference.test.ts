import { expect, test } from "vitest";
import { predictedOverMeasured, sizedTests, strengthReference } from "../../../server/strength/reference.ts";

test("the page of what strength is judged by is current", async () => {
  await expect(strengthReference()).toMatchFileSnapshot("../../../server/strength/reference.md");
});

test("joints are predicted within one deviation of the published tests that give every size", () => {
  for (const published of sizedTests)
    expect(Math.abs(predictedOverMeasured(published) - 1), published.species).toBeLessThan(
      published.deviation / published.mean,
    );
});
