import { describe, expect, it } from "vitest";
import { checkOutput } from "../../../../server/main/cli/schema.ts";
import { frame } from "../../../plain-frame.ts";
import { chairs, messChair, mistyped, ranWith, seatwright } from "./bench.ts";

const path = chairs({
  "stool.chair": mistyped,
  "thin.chair": frame({ joint: "tenon thick 6, long 26" }),
  "empty.chair": "",
  "hostile.chair": 'chair "\u001b[31mred\u001b[0m"\n\u001b[2J\n',
  "picture.chair": new Uint8Array([0x89, 0x50, 0, 1, 2, 3]),
  "latin.chair": new Uint8Array([0x63, 0xe9, 0x0a]),
  "one-word.chair": "a".repeat(100_000),
});

describe("seatwright check", () => {
  it("tells each finding with its place, sentence, code and line, and ends with 1", () => {
    const { out, code, error } = seatwright("check", path("stool.chair"));
    const lines = out.split("\n");
    expect(lines[0]).toMatch(
      new RegExp(`^${path("stool.chair")}:3:3: error: .*section.* \\[unknown-word\\]$`),
    );
    expect(lines[1]).toBe("    3 |   sectoin 40 x 40");
    expect(lines[2]).toBe("      |   ^^^^^^^");
    expect(out).toMatch(/\n\d errors? in 1 file\. A calculation is not a test\.\n$/);
    expect([code, error]).toEqual([1, ""]);
  });

  it("says so when there is nothing to find, and ends with 0", () => {
    const { out, code } = seatwright("check", messChair);
    expect(out).toContain("in 1 file. A calculation is not a test.");
    expect(code).toBe(0);
  });

  it("gives JSON that fits its schema", () => {
    const { out, code } = seatwright("check", path("stool.chair"), messChair, "--format", "json");
    const output = checkOutput.parse(JSON.parse(out));
    expect(output.files.map(({ file }) => file)).toEqual([path("stool.chair"), messChair]);
    expect(output.files[0]?.findings[0]).toMatchObject({
      code: "unknown-word",
      severity: "error",
      line: 3,
      column: 3,
      endLine: 3,
      endColumn: 10,
    });
    expect(output.errors).toBeGreaterThan(0);
    expect(code).toBe(1);
  });

  it("gives the mends that were tried, as edits of the text as checked", () => {
    const { out } = seatwright("check", path("thin.chair"), "--format", "json");
    const [listed] = checkOutput.parse(JSON.parse(out)).files;
    const finding = listed?.findings.find(({ code }) => code === "tenon-too-thin");
    expect(finding?.message).toContain("What works: make it 1/3 of rail");
    const [edit] = finding?.mends[0]?.edits ?? [];
    const line = frame({ joint: "tenon thick 6, long 26" }).split("\n")[(edit?.line ?? 0) - 1] ?? "";
    expect(
      `${line.slice(0, (edit?.column ?? 0) - 1)}${edit?.newText}${line.slice((edit?.endColumn ?? 0) - 1)}`,
    ).toBe("  tenon thick 1/3 of rail, long 26");
  });

  it("says nothing of faults when no file could be read", () => {
    expect(seatwright("check", path("gone.chair"))).toMatchObject({ out: "", code: 2 });
  });

  it("shows the beginning of a word that would swamp its message", () => {
    const { out } = seatwright("check", path("one-word.chair"));
    expect(out).toContain(`error: \`${"a".repeat(39)}…`);
    expect(out.length).toBeLessThan(400);
    expect(seatwright("format", path("one-word.chair")).error.length).toBeLessThan(400);
  });

  it("tells of files it cannot use in one line each, goes on, and ends with 2", () => {
    const { out, error, code } = seatwright(
      "check",
      path("gone.chair"),
      path("stool.chair"),
      path("picture.chair"),
      path("latin.chair"),
      path("."),
    );
    expect(error.trimEnd().split("\n")).toEqual([
      `${path("gone.chair")}: there is no such file.`,
      `${path("picture.chair")}: this is not a text file.`,
      `${path("latin.chair")}: this is not a text file.`,
      `${path(".")}: this is a folder; name the files in it.`,
    ]);
    expect(out).toContain("stool.chair:3:3");
    expect(code).toBe(2);
  });

  it("tells in JSON too which files it could not use", () => {
    const { out, code } = seatwright("check", "--format=json", path("gone.chair"));
    expect(checkOutput.parse(JSON.parse(out)).files[0]).toMatchObject({
      refused: "there is no such file",
      findings: [],
    });
    expect(code).toBe(2);
  });

  it("colours only when the terminal takes it", () => {
    expect(ranWith(true, "check", path("stool.chair")).out).toContain("\u001b[31merror\u001b[39m");
    expect(seatwright("check", path("stool.chair")).out).not.toContain("\u001b");
  });

  it("lets no file steer the terminal", () => {
    const { out, error } = seatwright("check", path("hostile.chair"));
    expect(out + error).not.toContain("\u001b");
  });
});
