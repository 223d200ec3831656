import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import type { Study } from "../../../server/study.ts";
import { studied, studiedLate } from "../../check.ts";
import { examples } from "../../rule-examples.ts";

const nowhere = { resolve: (_from: string, path: string) => path, read: () => undefined };

it("a change that overworks a joint is not offered once strength is worked out", () => {
  // Its wide back rail has a tenon too wide for one; two narrower ones satisfy that rule and hold less.
  const { example } = examples.find(({ code }) => code === "held-across-grain")!;
  const titles = (study: Study) => {
    mend(study, nowhere);
    const problem = study.problems.find(({ code }) => code === "tenon-too-wide-for-thickness");
    return problem?.mends?.map(({ title }) => title);
  };
  const [quick, late] = [titles(studied(example)), titles(studiedLate(example))];
  expect(quick).toContain("Make two of it");
  expect(late).not.toContain("Make two of it");
  expect(late).not.toEqual([]);
});

it("goes on to where all holds: five sticks are near enough together, but six are needed to bear the load", () => {
  const slip = readFileSync(new URL("../../../samples/slip-chair.chair", import.meta.url), "utf8");
  const study = studiedLate(slip.replace("count 7 even", "count 4 even"));
  study.problems = study.problems.filter(({ code }) => code === "sticks-too-far-apart");
  mend(study, nowhere);
  expect(study.problems[0]?.mends?.map(({ title }) => title)[0]).toMatch(/count of back-stick from 4 to 6/);
});
