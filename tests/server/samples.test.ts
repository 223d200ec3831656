import { expect, it } from "vitest";
import { finish } from "../../grammar/steps.ts";
import { lateSteps } from "../../server/strength/late.ts";
import { deepenSteps } from "../../server/study.ts";
import { sampleNames, studiedSample } from "../outside/samples.ts";

it.each(sampleNames)("nothing is wrong with %s, strength and moisture worked out too", (name) => {
  const { problems } = finish(deepenSteps(studiedSample(name), lateSteps));
  expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
});
