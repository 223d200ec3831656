import { describe, expect, it } from "vitest";
import type { Problem } from "../../../grammar/problem.ts";
import { codeLenses } from "../../../server/editor/code-lens.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import type { View } from "../../../server/editor/view.ts";
import { at, changed } from "./frame.ts";

const shown = (view: View) =>
  codeLenses(view, defaultSettings).map(
    ({ range, command }) => `${view.document.getText(range)}: ${command?.title}`,
  );

describe("code lens", () => {
  it("tells how many, how long and with how many joints over posts and rails", () => {
    const lines = shown(at("chair|").view);
    expect(lines[0]).toBe("front: 2 off · 428 mm · 2 joints");
    expect(lines).toContain("seat-front: 370 mm · 2 joints");
    expect(lines.map((line) => line.split(":")[0])).toEqual([
      "front",
      "back",
      "seat-front",
      "seat-side",
      "seat-back",
    ]);
  });

  it("tells the worst finding of the part and its joints", () => {
    const { view } = at("chair|");
    const problem = (severity: Problem["severity"], code: string, subject: string): Problem => ({
      severity,
      code,
      subject,
      message: "",
      start: 0,
      end: 0,
      found: "3 mm",
    });
    const study = {
      ...view.study,
      problems: [
        problem("warning", "mild", "seat-front"),
        problem("error", "grave", "seat-front to front.left"),
      ],
    };
    const lines = codeLenses({ ...view, study }, defaultSettings).map(({ command }) => command?.title);
    expect(lines).toContain("370 mm · 2 joints · error: grave (3 mm)");
  });

  it("can be clicked where the client runs our commands: the part on the drawing, the finding in the text", () => {
    const { view } = at("chair|");
    const start = view.document.getText().indexOf("tenon thick");
    const grave: Problem = {
      severity: "error",
      code: "grave",
      subject: "seat-front to front.left",
      message: "",
      start,
      end: start + 5,
    };
    const study = { ...view.study, problems: [grave] };
    const lenses = codeLenses({ ...view, study }, defaultSettings, { commands: true });
    const titles = lenses.map(({ command }) => command?.title);
    const of = (title: string) => lenses[titles.indexOf(title)]!.command!;
    expect(of("370 mm · 2 joints")).toMatchObject({
      command: "seatwright.showPart",
      arguments: [view.uri, view.document.positionAt(view.document.getText().indexOf("seat-front {"))],
    });
    expect(of("error: grave")).toMatchObject({
      command: "seatwright.showFinding",
      arguments: [view.uri, view.document.positionAt(start)],
    });
    for (const { command } of lenses) expect(command?.command).not.toBe("");
  });

  it("is none when turned off, and none over what cannot be built", () => {
    expect(codeLenses(at("chair|").view, { ...defaultSettings, codeLens: false })).toEqual([]);
    const broken = changed("  section 40 x 40\n", "  section\n");
    expect(shown(broken.view).map((line) => line.split(":")[0])).not.toContain("front");
  });
});
