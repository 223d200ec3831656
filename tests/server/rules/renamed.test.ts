import { describe, expect, it } from "vitest";
import { diagnostics } from "../../../server/editor/diagnostics.ts";
import { readSettings } from "../../../server/editor/settings.ts";
import { ruleOf, rules } from "../../../server/rules/index.ts";
import { settingSections } from "../../../server/rules/machinery/reference.ts";
import { fixed, studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";
import { exampleOf } from "../../rule-examples.ts";
import { viewOf } from "../editor/view.ts";
import { seatwright } from "../main/cli/bench.ts";

const renamed = rules.flatMap(({ code, was = [] }) => was.map((old) => ({ old, code })));
const codesIn = (text: string) => studied(text).problems.map(({ code }) => code);

describe("codes of rules", () => {
  it("are never a rule's and another's old one", () => {
    const all = rules.flatMap(({ code, was = [] }) => [code, ...was]);
    expect(all.filter((code, k) => all.indexOf(code) !== k)).toEqual([]);
    expect(renamed.length).toBeGreaterThan(0);
  });
});

describe.each(renamed)("the old code $old", ({ old, code }) => {
  const broken = exampleOf(code) ?? "";

  it("still accepts, with the code of today offered", () => {
    expect(codesIn(broken)).toContain(code);
    const text = `${broken}accept ${old} because "tried on a mock-up"\n`;
    expect(codesIn(text)).not.toContain(code);
    expect(codesIn(text)).not.toContain("unknown-rule");
    const told = studied(text).problems.find((problem) => problem.code === "renamed-rule");
    expect(told).toMatchObject({
      severity: "information",
      message: `The rule ${old} is called ${code} today; the old code still works.`,
    });
    const mended = fixed(text, "renamed-rule", `Change to ${code}`);
    expect(mended).toBe(text.replace(old, code));
    expect(codesIn(mended)).toEqual(codesIn(text).filter((each) => each !== "renamed-rule"));
  });

  it("still asks for a reason, and is told when it accepts nothing", () => {
    expect(codesIn(`${broken}accept ${old} because ""\n`)).toContain("accept-without-reason");
    const idle = codesIn(`accept ${old} because "tried on a mock-up"\n`);
    expect(idle).toContain("accept-accepts-nothing");
  });

  it("still limits as the code of today does", () => {
    const limit = ruleOf(code)?.limit;
    if (!limit) return;
    for (const figure of ["1", "100000"])
      expect(
        codesIn(`${broken}limit ${old} to ${figure}\n`).filter((each) => each !== "renamed-rule"),
      ).toEqual(codesIn(`${broken}limit ${code} to ${figure}\n`));
  });

  it("still silences in the settings, unless the code of today is set too", () => {
    const { view } = viewOf(broken);
    const shown = (given: Record<string, string>) =>
      diagnostics(view, readSettings({ rules: given })).flatMap((each) =>
        each.code === code ? [each.severity] : [],
      );
    expect(shown({ [old]: "off" })).toEqual([]);
    expect(shown({ [old]: "off", [code]: ruleOf(code)?.severity ?? "" })).toEqual([]);
    expect(new Set(shown({ [old]: "off", [code]: "error" }))).toEqual(new Set([1]));
    const settings = Object.assign(
      {},
      ...settingSections(rules, () => "joints").map(({ properties }) => properties),
    );
    const key = `renamed-rule.${old}`;
    expect(settings[`seatwright.rules.${old}`]).toMatchObject({ deprecationMessage: `%${key}%` });
    expect(JSON.parse(read("package.nls.json"))[key]).toBe(`The rule is called ${code} today.`);
  });

  it("is explained", () => {
    expect(ruleOf(old)?.code).toBe(code);
    const { code: ending, out } = seatwright("explain", old);
    expect(ending).toBe(0);
    expect(out).toContain(`${old} is called ${code} today.\n\n${code}: `);
  });
});
