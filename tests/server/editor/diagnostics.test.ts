import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver-types";
import type { Problem } from "../../../grammar/problem.ts";
import { diagnostics } from "../../../server/editor/diagnostics.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import type { View } from "../../../server/editor/view.ts";
import { viewOf } from "./view.ts";

function finding(problem: Partial<Problem>): Problem {
  return { code: "made-up", severity: "warning", message: "So.", start: 0, end: 5, ...problem };
}

function withFindings(text: string, problems: Problem[], files: Record<string, string> = {}): View {
  const { view } = viewOf(text, files);
  return { ...view, other: view.other, study: { ...view.study, problems } };
}

describe("diagnostics", () => {
  it("say what is wrong on the narrowest text, with code and sender", () => {
    const { view } = viewOf("post front pair {\n  sectoin 40 x 40\n  foot out 205, back 20\n}\n");
    const [first] = diagnostics(view, defaultSettings);
    expect(first && view.document.getText(first.range)).toBe("sectoin");
    expect(first).toMatchObject({
      code: "unknown-word",
      source: "seatwright",
      severity: DiagnosticSeverity.Error,
    });
  });

  it("are none in a clean file", () => {
    const name = "boathouse-mess-chair.chair";
    const text = readFileSync(new URL(`../../../samples/${name}`, import.meta.url), "utf8");
    expect(diagnostics(viewOf(text).view, defaultSettings)).toEqual([]);
  });

  it("take the severity that the settings give a rule, or none", () => {
    const view = withFindings("units mm\n", [finding({}), finding({ code: "other" })]);
    const rules = { "made-up": "hint", other: "off" } as const;
    expect(diagnostics(view, { ...defaultSettings, rules }).map(({ severity }) => severity)).toEqual([
      DiagnosticSeverity.Hint,
    ]);
  });

  it("carry the second places that explain, in other files too", () => {
    const files = { "joints.chair": "\njoint far {\n}\n" };
    const related = [
      { start: 6, end: 8, message: "Here." },
      { start: 7, end: 10, message: "There.", file: "file:///mess/joints.chair" },
      { start: 0, end: 1, message: "Nowhere.", file: "file:///mess/gone.chair" },
    ];
    const view = withFindings("units mm\n", [finding({ related })], files);
    expect(
      diagnostics(view, defaultSettings)[0]?.relatedInformation?.map(({ message, location }) => [
        message,
        location.range.start.line,
      ]),
    ).toEqual([
      ["Here.", 0],
      ["There.", 1],
    ]);
  });

  it("fade what does nothing", () => {
    const view = withFindings("units mm\n", [finding({ code: "accept-accepts-nothing" })]);
    expect(diagnostics(view, defaultSettings)[0]?.tags).toEqual([DiagnosticTag.Unnecessary]);
  });

  it("stop at the limit and say how many more there are", () => {
    const view = withFindings("units mm\n", [finding({}), finding({}), finding({})]);
    const shown = diagnostics(view, { ...defaultSettings, problemLimit: 1 });
    expect(shown.map(({ message }) => message)).toEqual([
      "So.",
      '2 more findings are not shown; raise "seatwright.problemLimit" to see more.',
    ]);
  });
});
