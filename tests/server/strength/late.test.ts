import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { compare } from "../../../server/compare/compare.ts";
import { mendSteps } from "../../../server/mends/mends.ts";
import { goalSteps } from "../../../server/range/ask.ts";
import { reachSteps } from "../../../server/range/reach.ts";
import { lateSteps } from "../../../server/strength/late.ts";
import { deepenSteps, study } from "../../../server/study.ts";
import { studied, studiedLate } from "../../check.ts";
import { subjectOf } from "../range/files.ts";
import { sound } from "./sound.ts";

const files = { resolve: () => undefined, read: () => undefined };
const codes = (problems: readonly { code: string }[]) => problems.map(({ code }) => code);

describe("values that are worked out last", () => {
  const deep = studiedLate(sound());

  it("are among the chair's: the margin is one over the hardest worked part or joint", () => {
    const { values } = deep.chair;
    const demands = [...values].filter(([name]) => name.endsWith(".demand")).map(([, { number }]) => number);
    expect(demands.length).toBeGreaterThan(10);
    expect(values.get("strength.margin")?.number).toBeCloseTo(1 / Math.max(...demands), 9);
    expect(values.get("seat-side.left.front.demand")?.number).toBeGreaterThan(0);
    expect(values.get("front.left.demand")?.part).toBe("front.left");
    expect(studied(sound()).chair.values.has("strength.margin")).toBe(false);
  });

  it("can be required: judged once they are known, and nothing is said of them before", () => {
    const text = sound("require strength.margin at least 50\nrequire seat-side.front.demand at most 20\n");
    expect(codes(studied(text).problems)).not.toContain("requirement-not-judged");
    const found = studiedLate(text).problems.filter(({ code }) => code.startsWith("requirement"));
    expect(found.map(({ subject }) => subject)).toEqual(["strength.margin"]);
    expect(found[0]?.message).toMatch(/^strength\.margin is \d.*, and must be at least 50\.$/);
  });

  it("cannot be part of what the chair follows from", () => {
    const { problems } = studied(sound("let extra = strength.margin * 2mm\n"));
    expect(codes(problems)).toContain("circular-value");
    expect(codes(studied(sound("let strength = 3\n")).problems)).toContain("reserved-name");
  });

  it("find the same as a study that works out everything at once, and keep what was found before", () => {
    const text = sound("limit tenon-too-short to 0.9\nlimit joint-overworked to 0.1\n");
    const quick = studied(text);
    const late = finish(deepenSteps(quick, lateSteps));
    expect(codes(late.problems)).toEqual(codes(studiedLate(text).problems));
    expect(codes(quick.problems).every((code) => codes(late.problems).includes(code))).toBe(true);
    expect(codes(late.problems)).toContain("joint-overworked");
  });

  it("an accept of a late finding is not idle before it is known, and sets it aside then", () => {
    const text = sound('limit joint-overworked to 0.1\naccept joint-overworked because "a stool for show"\n');
    expect(codes(studied(text).problems)).not.toContain("accept-accepts-nothing");
    const late = studiedLate(text);
    expect(codes(late.problems)).not.toContain("joint-overworked");
    expect(late.accepted.length).toBeGreaterThan(0);
    expect(
      codes(
        studiedLate(sound('accept joint-overworked because "none"\nlimit joint-overworked to 90\n')).problems,
      ),
    ).toContain("accept-accepts-nothing");
  });

  it("can be reached by a choice", () => {
    const subject = {
      ...subjectOf(sound("let deep = 60 within 50 to 100\n").replaceAll("22 x 60", "22 x deep")),
      late: lateSteps,
    };
    const goal = finish(
      goalSteps(
        subject,
        `strength.margin >= ${(deep.chair.values.get("strength.margin")?.number ?? 1) * 1.3}`,
      ),
    );
    if ("refused" in goal) throw new Error(goal.refused);
    const ways = finish(reachSteps({ subject, study: study(subject), goal, by: "deep" }));
    expect(ways.some(({ choice, to, met }) => choice.name === "deep" && met && to > 60)).toBe(true);
  });

  it("are compared where both sides have them, and never one side's alone", () => {
    const before = { study: studied(sound()), files };
    const after = { study: studiedLate(sound().replace("22 x 60", "22 x 90")), files };
    const names = (comparison: ReturnType<typeof compare>) => comparison.follows.map(({ name }) => name);
    expect(names(compare(before, after)).some((name) => /demand|strength/.test(name))).toBe(false);
    expect(names(compare({ study: deep, files }, after))).toContain("strength.margin");
  });
});

describe("mends of what is found late", () => {
  it("are tried with strength worked out again: the joint is no longer overworked, and the hint says what was changed", () => {
    const limit = (studiedLate(sound()).late?.strength.joints[0]?.demand ?? 1) * 0.9;
    const deep = studiedLate(sound(`limit joint-overworked to ${limit.toFixed(3)}\n`));
    const found = deep.problems.filter(({ code }) => code === "joint-overworked");
    expect(found).not.toEqual([]);
    finish(mendSteps(deep, files, found.slice(0, 1), { each: 24, all: 24 }));
    const [mended] = found[0]?.mends ?? [];
    expect(mended?.title).toBeDefined();
    const text = [...(mended?.edits ?? [])]
      .sort((a, b) => b.start - a.start)
      .reduce((now, { start, end, text: put }) => now.slice(0, start) + put + now.slice(end), deep.text);
    const after = studiedLate(text).problems.filter(({ code }) => code === "joint-overworked");
    expect(after.map(({ subject }) => subject)).not.toContain(found[0]?.subject);
  });
});

describe("a part that is not held as the text says", () => {
  it.each([
    ["end-reaches-nothing", (text: string) => text.replace("up seat-height", "up 560")],
    ["rail-misses-post", (text: string) => text.replace("up seat-height", "up seat-height\n  face inset 30")],
  ])("has the finding %s, and none that it works too hard", (code, broken) => {
    const deep = studiedLate(broken(sound()));
    expect(codes(deep.problems)).toContain(code);
    expect(Math.max(...(deep.late?.strength.joints ?? []).map(({ demand }) => demand))).toBeGreaterThan(1);
    expect(codes(deep.problems).filter((each) => /overworked|limp|slender-at-arch/.test(each))).toEqual([]);
  });
});
