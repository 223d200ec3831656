import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { markoutOutput } from "../../../../server/main/cli/schema-markout.ts";
import { chairs, messChair, mistyped, ranInTime } from "./bench.ts";

const stool = `chair "Stool"
units in
timber white-oak
post leg pair {
  section 1 1/2 x 1 1/2
  foot out 6, back 0
  height 17
}
rail stretcher {
  across leg
  section 3/4 x 1 1/2
  up 6
  joined plain
}
joint plain {
  tenon thick 1/4, long 1
  shoulders top 1/4, bottom 1/4
}
`;

const path = chairs({
  "stool.chair": stool,
  "mistyped.chair": mistyped,
  "empty.chair": 'chair "Nothing yet"\n',
});

describe("seatwright markout", () => {
  it("writes a PDF of all pages and says how many are at full size", async () => {
    const out = path("mess.pdf");
    const ran = await ranInTime("markout", messChair, "-o", out);
    expect(ran.code).toBe(0);
    expect(ran.out).toMatch(
      /mess\.pdf: \d+ pages, \d+ of them at full size: print at 100 % and check the 100 mm square first\.\n$/,
    );
    const pdf = readFileSync(out, "latin1");
    expect(pdf.startsWith("%PDF-1.")).toBe(true);
    const pages = pdf.match(/\/Type \/Page\b(?!s)/g)!.length;
    expect(ran.out).toContain(`: ${pages} pages`);
    // A4 lying on its long side, in points.
    expect(pdf).toMatch(/\/MediaBox \[0 0 841\.8\d* 595\.2\d*\]/);
  });

  it("writes each page as an SVG into a folder, on Letter for a file in inches", async () => {
    const out = path("sheets");
    const ran = await ranInTime(
      "markout",
      path("stool.chair"),
      "--format",
      "svg",
      "--step",
      "1/64",
      "-o",
      out,
    );
    expect([ran.code, ran.error]).toEqual([0, ""]);
    const files = readdirSync(out);
    const first = ["01-reading.svg", "02-arrangement.svg", "03-sections.svg", "04-stock.svg", "05-leg.svg"];
    expect(files.slice(0, 6)).toEqual([...first, "06-stretcher.svg"]);
    const svg = readFileSync(`${out}/06-stretcher.svg`, "utf8");
    expect(svg).toContain('width="279.4mm" height="215.9mm"');
    expect(svg).toContain("Figures in inches, to 1/64.");
    // Legs 12 apart between centre lines, each 1 1/2 thick.
    expect(svg).toContain("10 1/2 between the shoulders");
  });

  it("gives the figures of the sheets as JSON, as they are printed", async () => {
    const ran = await ranInTime("markout", path("stool.chair"), "--part", "stretcher", "--format", "json");
    expect([ran.code, ran.error]).toEqual([0, ""]);
    const sheets = markoutOutput.parse(JSON.parse(ran.out));
    expect([sheets.unit, sheets.step, sheets.parts.map(({ name }) => name)]).toEqual([
      "in",
      1 / 32,
      ["stretcher"],
    ]);
    const [stretcher] = sheets.parts;
    const tenon = stretcher!.marks.find(({ kind }) => kind === "tenon")!;
    // 1 1/2 wide less 1/4 at top and bottom, 1/4 of 3/4 thick in the middle.
    expect(tenon).toMatchObject({
      face: "right",
      datum: "shoulder",
      figures: {
        thick: { value: 0.25, text: "1/4" },
        wide: { value: 1, text: "1" },
        long: { value: 1, text: "1" },
        outside: { value: 0.25, text: "1/4" },
        top: { value: 0.25, text: "1/4" },
      },
    });
    const far = stretcher!.marks.find(
      ({ kind, figures }) => kind === "line" && figures.end?.value === "left",
    );
    expect(far?.figures.at).toEqual({ value: 10.5, text: "10 1/2" });
    const into = path("stretcher.json");
    expect((await ranInTime("markout", path("stool.chair"), "--format", "json", "-o", into)).out).toBe("");
    expect(markoutOutput.parse(JSON.parse(readFileSync(into, "utf8"))).parts.map(({ name }) => name)).toEqual(
      ["leg.left, leg.right", "stretcher"],
    );
    const wrong = await ranInTime("markout", messChair, "--format", "json", "--templates");
    expect([wrong.code, wrong.error]).toEqual([
      2,
      'seatwright: "--templates" are drawings: ask for them as "pdf" or "svg"; JSON has the figures of every part.\n',
    ]);
  });

  it("marks out one part, or the templates alone", async () => {
    const one = await ranInTime("markout", messChair, "--part", "seat-back", "-o", path("one.pdf"));
    expect(one.out).toMatch(/: 1 page\.\n$/);
    const full = await ranInTime(
      "markout",
      messChair,
      "--part",
      "crest",
      "--templates",
      "-o",
      path("full.pdf"),
    );
    expect(full.out).toMatch(/: 5 pages, 5 of them at full size/);
    const none = await ranInTime(
      "markout",
      messChair,
      "--part",
      "seat-back",
      "--templates",
      "-o",
      path("none.pdf"),
    );
    expect([none.code, none.error]).toEqual([0, `${messChair}: nothing in it needs a template.\n`]);
    expect(existsSync(path("none.pdf"))).toBe(false);
  });

  it.each([
    [["--part", "crst"], 'seatwright: there is no part "crst". Did you mean "crest"?\n'],
    [
      ["--paper", "a5"],
      'seatwright: "--paper a5" is not known; there are "a4", "a3", "letter" and "tabloid".\n',
    ],
    [["--date", "2026-02-30"], 'seatwright: "--date 2026-02-30" is not a day; write it as "2026-03-14".\n'],
    [["--format", "dxf"], 'seatwright: "--format dxf" is not known; there are "pdf", "svg" and "json".\n'],
    [
      ["--step", "1/10"],
      'seatwright: "--step 1/10" is not known; there are "1/16", "1/32" and "1/64" of an inch.\n',
    ],
    [["--step", "1/16"], `seatwright: "--step" is for files in inches, and "${messChair}" is in mm.\n`],
  ])("refuses %j in one line", async (options, error) => {
    const ran = await ranInTime("markout", messChair, ...options);
    expect([ran.code, ran.error, ran.out]).toEqual([2, error, ""]);
  });

  it("says when it cannot write", async () => {
    const ran = await ranInTime("markout", messChair, "-o", path("no-such-folder/x.pdf"));
    expect(ran.code).toBe(2);
    expect(ran.error).toMatch(/x\.pdf" cannot be written \(ENOENT\)\.\n$/);
  });

  it("makes no sheets of a chair with errors, of none, or of no file", async () => {
    const wrong = await ranInTime("markout", path("mistyped.chair"));
    expect(wrong.code).toBe(1);
    expect(wrong.error).toMatch(
      /it has \d+ errors?, and timber should not be cut before (it is|they are) mended; "seatwright check" tells\.\n$/,
    );
    const empty = await ranInTime("markout", path("empty.chair"));
    expect([empty.code, empty.error]).toEqual([
      1,
      `${path("empty.chair")}: there are no posts or rails to mark out; "seatwright check" tells.\n`,
    ]);
    const missing = await ranInTime("markout", path("missing.chair"));
    expect([missing.code, missing.error]).toEqual([2, `${path("missing.chair")}: there is no such file.\n`]);
  });
});
