import { describe, expect, it } from "vitest";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { ruleOf, rules } from "../../../server/rules/index.ts";
import { findings, judge } from "../../../server/rules/judge.ts";
import { figure, figureNames } from "../../../server/rules/machinery/figures.ts";
import { boundsOf } from "../../../server/rules/machinery/limits.ts";
import { allFound } from "../../../server/rules/machinery/rule.ts";
import { here, studied, studiedLate } from "../../check.ts";
import { frame } from "../../plain-frame.ts";
import { exampleOf, examples } from "../../rule-examples.ts";

const others = (text: string) => ({
  "here.chair": text,
  "faulty.chair": "post {\n",
  "empty.chair": "",
  "vast.chair": "let a = 1\n".repeat(30_000),
});

describe("the rule table", () => {
  it("has each code once, in kebab case", () => {
    const codes = rules.map((rule) => rule.code);
    expect(codes.filter((code, k) => codes.indexOf(code) !== k)).toEqual([]);
    expect(codes.filter((code) => !/^[a-z]+(-[a-z]+)*$/.test(code))).toEqual([]);
    expect(ruleOf("tenon-too-thin")?.title).toBe("Tenon too thin for its rail");
    expect(ruleOf("tenon")).toBeUndefined();
  });

  it("says of each why it is there and where it comes from", () => {
    for (const { code, title, explanation, source } of rules) {
      expect(title, code).toMatch(/^[A-Z][^.]*$/);
      expect(explanation, code).toMatch(/[.`]$/);
      expect(explanation.length, code).toBeGreaterThan(30);
      expect(source, code).toMatch(/\.$/);
    }
  });

  it("names the line that changes a figure", () => {
    for (const { code, limit, explanation } of rules) {
      if (limit && !explanation.includes(`limit ${code}`))
        expect.fail(`${code} does not show its limit line`);
    }
  });

  it("has an example for every rule that text can break; no row of the vocabulary is left for later", () => {
    const unbroken = [
      "internal-error",
      ...(vocabulary.rows.some(({ later }) => later) ? [] : ["not-yet-worked-out"]),
    ];
    expect(rules.filter(({ code }) => !exampleOf(code)).map(({ code }) => code)).toEqual(unbroken);
  });

  it.each(examples)("has an example that breaks $code", ({ code, rule, example }) => {
    const work = rule.late === "only" ? studiedLate : studied;
    const found = work(example, others(example)).problems.filter((each) => each.code === code);
    expect(found).not.toEqual([]);
    for (const problem of found) {
      expect(problem.severity).toBe(rule.severity);
      expect(problem.start).toBeLessThanOrEqual(problem.end);
      expect(problem.end).toBeLessThanOrEqual(example.length);
      expect(problem.message).toMatch(/^\S.*[^.][.?]$/);
    }
  });

  it("breaks a frame that is clean as it comes", () => {
    expect(studied(frame()).problems).toEqual([]);
  });

  it("never lets a rule throw on another rule's example", () => {
    for (const { example } of examples) {
      const { tree, design, chair } = studied(example, others(example));
      for (const rule of rules) {
        expect(
          () => allFound(rule, { tree, design, chair, rules, ...boundsOf(rule, design) }),
          rule.code,
        ).not.toThrow();
      }
    }
  });

  it("judges a whole file in the order of its text", () => {
    const { tree, design, chair, problems } = studied(`${exampleOf("tenon-too-thin")}limit nothing to 4\n`);
    expect(problems.map(({ start }) => start)).toEqual(
      [...problems.map(({ start }) => start)].sort((a, b) => a - b),
    );
    expect(findings({ tree, design, chair })).toEqual(judge({ tree, design, chair }).problems);
    expect(problems.map(({ code }) => code)).toEqual(["tenon-too-thin", "unknown-rule"]);
    expect(here).toMatch(/\.chair$/);
  });
});

describe("the figures", () => {
  it("each say what they are, where they come from and how that stands", () => {
    for (const name of figureNames) {
      const { low, high, what, source, standing } = figure(name);
      expect(low ?? high, name).toBeGreaterThan(0);
      expect(what.length * source.length, name).toBeGreaterThan(100);
      expect(["seen", "memory", "practice"]).toContain(standing);
      if (standing === "practice") expect(source, name).toContain("common practice");
    }
  });
});
