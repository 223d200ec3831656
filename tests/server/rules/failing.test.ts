import { describe, expect, it, vi } from "vitest";
import * as angles from "../../../server/chair/values/angles.ts";
import { closesIn } from "../../../server/editor/about/about-assembly.ts";
import * as tips from "../../../server/floor/tips.ts";
import * as frames from "../../../server/joinery/frames.ts";
import { rules } from "../../../server/rules/index.ts";
import { judge } from "../../../server/rules/judge.ts";
import type { Rule } from "../../../server/rules/machinery/rule.ts";
import { studied, studiedLate } from "../../check.ts";
import { sampleText } from "../../outside/samples.ts";
import { examples } from "../../rule-examples.ts";

const finding = examples.filter(({ rule }) => rule.find);

/** The table with one rule that throws. */
const failingAt = (code: string): Rule[] =>
  rules.map((rule) =>
    rule.code === code
      ? {
          ...rule,
          asksForMissing: undefined,
          find: () => {
            throw new Error("it failed");
          },
        }
      : rule,
  ) as Rule[];

describe("a rule that throws", () => {
  it.each(finding.map(({ code, example }) => [code, example]))(
    "is told and logged when it is %s, and the others judge on",
    (code, example) => {
      const text = `${example}accept ${code} because "tried on a mock-up"\n`;
      const isLate = rules.some((rule) => rule.code === code && rule.late === "only");
      const { tree, design, chair, late } = isLate ? studiedLate(text) : studied(text);
      const of = { tree, design, chair, ...(late && { late }) };
      const before = judge(of);
      const after = judge(of, [], failingAt(code));
      expect(after.failures).toEqual([{ what: code, thrown: new Error("it failed") }]);
      const told = after.problems.filter((problem) => problem.code === "internal-error");
      expect(told.map(({ severity, message }) => [severity, message])).toEqual([
        [
          "information",
          `The rule ${code} could not judge this file because of an internal error, so what it looks for may be there without being reported.`,
        ],
      ]);
      const idle = "accept-accepts-nothing";
      expect(after.problems.filter((each) => each.code === idle && each.message.startsWith(code))).toEqual(
        [],
      );
      const others = (problems: typeof before.problems) =>
        problems.filter((each) => ![code, "internal-error", idle].includes(each.code));
      expect(others(after.problems)).toEqual(others(before.problems));
    },
  );

  it("is told in one finding with the others that throw", () => {
    const { tree, design, chair } = studied(sampleText("joined-stool"));
    const table = failingAt("tenon-too-thin").map((rule) =>
      rule.code === "foot-hangs"
        ? { ...rule, find: failingAt("foot-hangs").find(({ code }) => code === "foot-hangs")!.find! }
        : rule,
    );
    const told = judge({ tree, design, chair }, [], table).problems.filter(
      ({ code }) => code === "internal-error",
    );
    expect(told.map(({ message }) => message)).toEqual([
      "The rules tenon-too-thin and foot-hangs could not judge this file because of an internal error, so what they look for may be there without being reported.",
    ]);
  });
});

describe("working out that throws", () => {
  it("leaves a chair without its weight, told and in doubt", () => {
    const spy = vi.spyOn(tips, "balanceOf").mockImplementation(() => {
      throw new Error("it failed");
    });
    const { problems, failures, chair } = studied(
      `${sampleText("joined-stool")}\naccept foot-hangs because "the floor is rough"\nrequire weight at most 20kg\n`,
    );
    spy.mockRestore();
    expect(failures).toEqual([{ what: "the weight and how the chair tips", thrown: new Error("it failed") }]);
    expect(chair.values.has("height") && !chair.values.has("weight")).toBe(true);
    const information = problems.filter(({ severity }) => severity !== "error").map(({ code }) => code);
    expect(information).toContain("internal-error");
    expect(information).not.toContain("accept-accepts-nothing");
    expect(information).not.toContain("requirement-not-judged");
  });

  it("leaves out one value, told by its name", () => {
    const spy = vi.spyOn(angles, "angleOf").mockImplementation(() => {
      throw new Error("it failed");
    });
    const { problems, failures, chair } = studied(
      `${sampleText("joined-stool")}\nangle lean {\n  between front, floor\n}\nangle other {\n  between back, floor\n}\n`,
    );
    spy.mockRestore();
    expect(failures.map(({ what }) => what)).toEqual([
      "the value leg-lean",
      "the value lean",
      "the value other",
    ]);
    expect(problems.find(({ code }) => code === "internal-error")?.message).toBe(
      "The value leg-lean, the value lean and the value other could not be worked out because of an internal error, so rules that need them may report nothing.",
    );
    expect(chair.values.has("height")).toBe(true);
  });

  it("leaves the rest of a hover when the order of assembly fails", () => {
    const { chair } = studied(sampleText("joined-stool"));
    const [joint = ""] = chair.joints.keys();
    expect(closesIn(chair, joint)).toMatch(/^Closes in glue-up/);
    const again = studied(sampleText("joined-stool")).chair;
    const spy = vi.spyOn(frames, "framesOf").mockImplementation(() => {
      throw new Error("it failed");
    });
    const told = closesIn(again, joint);
    spy.mockRestore();
    expect(told).toBe("Nothing is known of the order of assembly because of an internal error");
  });
});
