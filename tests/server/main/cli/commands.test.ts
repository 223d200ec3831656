import { readFileSync, truncateSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { commands } from "../../../../server/main/cli/run.ts";
import { version } from "../../../../server/main/version.ts";
import { chairs, messChair, mistyped, seatwright } from "./bench.ts";

const untidy = "units   mm\npost leg {\nsection 40 x 40\nfoot out 0, back 0\nheight 440\n}\n";
const tidy = "units mm\npost leg {\n  section 40 x 40\n  foot out 0, back 0\n  height 440\n}\n";
const path = chairs({
  "stool.chair": mistyped,
  "untidy.chair": untidy,
  "tidy.chair": tidy,
  "again.chair": untidy,
  "empty.chair": "",
  "huge.chair": "",
});

describe("seatwright draw", () => {
  it("writes the three views as SVG", () => {
    const { out, code } = seatwright("draw", messChair);
    expect(out).toMatch(/^(<\?xml[^>]*\?>\s*)?<svg /);
    expect(out.trimEnd().endsWith("</svg>")).toBe(true);
    expect(code).toBe(0);
  });

  it("writes to a file", () => {
    const { out, code } = seatwright("draw", messChair, "-o", path("out.svg"));
    expect([out, code]).toEqual(["", 0]);
    expect(readFileSync(path("out.svg"), "utf8")).toContain("<svg ");
  });

  it("tells when the file cannot be written, and when there is nothing to draw", () => {
    expect(seatwright("draw", messChair, "-o", path("none/out.svg"))).toMatchObject({
      code: 2,
      error: `seatwright: "${path("none/out.svg")}" cannot be written (ENOENT).\n`,
    });
    expect(seatwright("draw", path("empty.chair"))).toMatchObject({ code: 1, out: "" });
  });
});

describe("seatwright format", () => {
  it("with --check says which files would change and changes none", () => {
    const { out, code } = seatwright("format", "--check", path("untidy.chair"), path("tidy.chair"));
    expect([out, code]).toEqual([`${path("untidy.chair")}: would be laid out anew.\n`, 1]);
    expect(readFileSync(path("untidy.chair"), "utf8")).toBe(untidy);
    expect(seatwright("format", "--check", path("tidy.chair"))).toMatchObject({ out: "", code: 0 });
  });

  it("lays files out in place, and finds nothing to do the second time", () => {
    expect(seatwright("format", path("again.chair")).code).toBe(0);
    expect(readFileSync(path("again.chair"), "utf8")).toBe(tidy);
    expect(seatwright("format", path("again.chair"))).toMatchObject({ out: "", code: 0 });
  });

  it("leaves a file that cannot be read for sure as it is, and goes on", () => {
    const { error, code } = seatwright("format", path("stool.chair"), path("tidy.chair"));
    expect(error).toMatch(/stool\.chair: left as it is, because line 3 cannot be read: /);
    expect(code).toBe(1);
    expect(readFileSync(path("stool.chair"), "utf8")).toBe(mistyped);
  });
});

describe("seatwright explain", () => {
  it("tells a rule's reason, source and example", () => {
    const { out, code } = seatwright("explain", "tenon-too-thin");
    expect(out).toMatch(/^tenon-too-thin: /);
    expect(out).toContain("\nSource: ");
    expect(out).toContain("An example that breaks it:");
    expect(code).toBe(0);
  });

  it("lists the rules", () => {
    const { out } = seatwright("explain");
    expect(out).toMatch(/^unknown-word +error +Unknown word$/m);
    expect(out).toMatch(/^tenon-too-thin +\w+ +\S/m);
  });

  it("offers the nearest rule", () => {
    expect(seatwright("explain", "tenon-to-thin")).toMatchObject({
      code: 2,
      error: 'seatwright: there is no rule "tenon-to-thin". Did you mean "tenon-too-thin"?\n',
    });
  });
});

describe("the command line", () => {
  it.each([[[]], [["--help"]], [["-h"]], [["help"]]])("helps: %j", (args) => {
    const { out, code } = seatwright(...args);
    for (const { name } of commands) expect(out).toContain(`seatwright ${name}`);
    expect(out).toContain("--stdio");
    expect(code).toBe(0);
  });

  it("helps with one command", () => {
    expect(seatwright("draw", "--help")).toMatchObject({
      code: 0,
      out: expect.stringContaining("-o, --out FILE"),
    });
  });

  it("says its version", () => {
    expect(seatwright("--version")).toMatchObject({ out: `${version}\n`, code: 0 });
  });

  it("serves an editor", () => {
    expect(seatwright("--stdio")).toMatchObject({ served: true, code: undefined, out: "" });
  });

  it.each([
    [["chek", "a.chair"], 'there is no command "chek". Did you mean "check"?'],
    [["frobnicate"], 'there is no command "frobnicate". There are "check"'],
    [["check"], '"check" needs more: check FILES…'],
    [["reckon", "a", "b"], '"reckon" takes no more than that: reckon FILE'],
    [
      ["check", "a", "--format", "xml"],
      '"--format xml" is not known; there are "text", "json", "sarif" and "annotations".',
    ],
    [["check", "a", "--loud"], "Unknown option '--loud'."],
    [["draw", "a", "-o"], "argument missing"],
    [["--stdio", "x"], 'there is no command "--stdio"'],
  ])("refuses what is not meant, in one line: %j", (args, says) => {
    const { code, error, out } = seatwright(...args);
    expect([code, out]).toEqual([2, ""]);
    expect(error).toContain(says);
    expect(error.trimEnd().split("\n")).toHaveLength(1);
  });

  it("does not read huge files", () => {
    truncateSync(path("huge.chair"), 11 * 1024 * 1024);
    for (const command of ["check", "reckon", "draw", "format"]) {
      expect(seatwright(command, path("huge.chair"))).toMatchObject({
        code: 2,
        error: `${path("huge.chair")}: at most 10 MB are read, and this is longer.\n`,
      });
    }
  });
});
