import { describe, expect, it } from "vitest";
import {
  rangeMapOutput,
  rangeOutput,
  reachAllOutput,
  reachOutput,
} from "../../../../server/main/cli/schema-range.ts";
import { plain } from "../../range/files.ts";
import { chairs, seatwright } from "./bench.ts";

const path = chairs({
  "plain.chair": plain("require seat.height at most 463.3\n"),
  "two.chair": plain("require seat.height = 470\nrequire depth = 450\n"),
  "against.chair": plain("require seat.height at least 470\nrequire height at most 840\n"),
  "trimmed.chair": plain("trim back 10\n"),
  "faulty.chair": plain("trim back 10\nrial x {\n}\n"),
});
const file = path("plain.chair");

describe("seatwright range", () => {
  it("says where a choice is free and what begins where", () => {
    const { out, code } = seatwright("range", file, "--value", "seat-height", "--places", "9");
    expect(out).toContain("seat-height  400 to 480 mm, now 440 mm");
    expect(out).toMatch(/error 443\.3 to 480 mm: requirement-not-met of seat\.height/);
    expect(out).toContain("9 places tried");
    expect(code).toBe(0);
  });

  it("gives one value as JSON by itself, and all with `within` together", () => {
    const one = JSON.parse(
      seatwright(
        "range",
        file,
        "--value",
        "seat-height",
        "--places",
        "5",
        "--of",
        "seat.height,seat.slope",
        "--format",
        "json",
      ).out,
    );
    rangeOutput.parse(one);
    expect(one).toMatchObject({
      name: "seat-height",
      unit: "mm",
      low: 400,
      high: 480,
      now: 440,
      step: 1,
      tried: 5,
    });
    expect(one.values.map(({ name, unit }: { name: string; unit: string }) => [name, unit])).toEqual([
      ["seat.height", "mm"],
      ["seat.slope", "deg"],
    ]);
    expect(one.values[0].at).toEqual([420, 440, 460, 480, 500]);
    const all = JSON.parse(seatwright("range", file, "--places", "2", "--format", "json").out);
    rangeOutput.parse(all);
    expect(all.ranges.map(({ name }: { name: string }) => name)).toEqual(["seat-height", "foot-back"]);
  });

  it("takes any figure by its place, between ends of its own", () => {
    const { out, code } = seatwright(
      "range",
      file,
      "--value",
      "back.foot.out",
      "--low",
      "190",
      "--high",
      "21cm",
      "--places",
      "3",
    );
    expect(out).toContain("back.foot.out  190 to 210 mm, now 200 mm");
    expect(code).toBe(0);
  });

  it("maps two values, in text, JSON and SVG", () => {
    const map = ["range", file, "--value", "seat-height,foot-back", "--places", "3"];
    const json = rangeMapOutput.parse(JSON.parse(seatwright(...map, "--format", "json").out));
    expect(json.across.places).toEqual([400, 440, 480]);
    expect(json.rows).toHaveLength(3);
    const k = json.findings.findIndex(({ code }) => code === "requirement-not-met");
    for (const row of json.rows) expect(row.map((here) => here.includes(k))).toEqual([false, false, true]);
    expect(seatwright(...map).out).toContain("requirement-not-met of seat.height");
    const svg = seatwright(...map, "--format", "svg").out;
    expect(svg).toContain('fill="url(#error)"');
    expect(svg.match(/<rect [^>]*height="36"[^>]*stroke-width="0.5"/g)).toHaveLength(9);
  });

  it("draws ranges and curves as SVG", () => {
    const svg = seatwright(
      "range",
      file,
      "--value",
      "seat-height",
      "--of",
      "seat.height",
      "--places",
      "5",
      "--format",
      "svg",
    ).out;
    expect(svg).toContain("requirement-not-met of seat.height, 443.3 to 480 mm");
    expect(svg).toMatch(/>seat\.height<[\s\S]*text-anchor="start">420 mm<[\s\S]*text-anchor="end">500 mm</);
  });

  it.each([
    [["--value", "no-such"], "is not a figure of this file"],
    [["--value", "a,b,c"], "is not a figure of this file"],
    [["--value", "seat-height", "--of", "no.such"], "is not a value of this chair"],
    [["--value", "seat-height", "--low", "5deg"], "is not a figure for seat-height"],
    [["--value", "seat-height", "--low", "470", "--high", "420"], "has to be less than"],
    [["--low", "400"], "goes with one --value"],
    [["--value", "seat-height", "--places", "1.5"], "is not a whole number from 2"],
    [["--value", "seat-height,seat-height"], "two different names"],
  ])("refuses %j in one line", (more, why) => {
    const { out, error, code } = seatwright("range", file, ...more);
    expect([out, code]).toEqual(["", 2]);
    expect(error).toContain(why);
    expect(error.trimEnd()).not.toContain("\n");
  });
});

describe("seatwright reach", () => {
  it("says which choice gives the figure, and what the chair then has", () => {
    const { out, code } = seatwright("reach", path("trimmed.chair"), "seat.slope=2deg", "--by", "trim");
    expect(out).toContain("seat.slope is 1.43°; asked is 2°.");
    expect(out).toMatch(/trim\.back 10 mm to 14: seat\.slope is then 2(\.0\d)?°/);
    expect(code).toBe(0);
  });

  it("gives JSON that fits its schema, with edits as findings count", () => {
    const { out } = seatwright(
      "reach",
      path("trimmed.chair"),
      "seat.slope = 2deg",
      "--by",
      "trim",
      "--format",
      "json",
    );
    const output = reachOutput.parse(JSON.parse(out));
    expect(output).toMatchObject({ value: "seat.slope", unit: "deg", now: 1.43 });
    const [way] = output.ways;
    const lines = plain("trim back 10\n").split("\n");
    const edit = way?.edits[0];
    expect(lines[(edit?.line ?? 0) - 1]?.slice((edit?.column ?? 0) - 1, (edit?.endColumn ?? 0) - 1)).toBe(
      "10",
    );
    expect(edit?.newText).toBe("14");
  });

  it("ends with 1 where it cannot be had, and tells the best that can", () => {
    const { out, code } = seatwright("reach", file, "seat.height=600");
    expect(out).toContain("No single choice reaches it");
    expect(out).toContain("seat-height 440 mm to 480");
    expect(code).toBe(1);
  });

  it("lists the nearest first where none reaches it, and says that a file has errors", () => {
    const { out } = seatwright("reach", file, "weight=1kg");
    const got = [...out.matchAll(/weight is then ([\d.]+) kg/g)].map(([, kg]) => Number(kg));
    expect(got.length).toBeGreaterThan(1);
    expect(got).toEqual([...got].sort((a, b) => a - b));
    const faulty = seatwright("reach", path("faulty.chair"), "weight=1kg");
    expect(faulty.out).toContain("The file has errors, so it is worked out as far as it goes");
  });

  it("meets every requirement together, or says which stand against each other", () => {
    const two = seatwright("reach", path("two.chair"), "--all");
    expect(two.out).toMatch(/seat-height 440 mm to 450\n.*foot-back 400 mm to 410/);
    expect(two.code).toBe(0);
    reachAllOutput.parse(JSON.parse(seatwright("reach", path("two.chair"), "--all", "--format", "json").out));
    const against = seatwright("reach", path("against.chair"), "--all");
    expect(against.out).toMatch(/These stand against each other.*\n {2}seat\.\w+ .*\d.*\n {2}\S+ .*\d/);
    expect(against.code).toBe(1);
  });

  it.each([
    [["no.such=3"], "no part called no"],
    [["seat.slope"], "seat.slope"],
    [["seat.slope=2mm"], "needs an angle"],
    [["seat.slope=2deg", "--by", "nothing"], "is not a figure"],
    [["seat.slope=2deg; trim back 3"], "is not one comparison"],
    [[], "name a figure"],
    [["seat.slope=2deg", "--all"], "leave the figure out"],
  ])("refuses %j in one line", (more, why) => {
    const { error, code } = seatwright("reach", file, ...more);
    expect(code).toBe(2);
    expect(error).toContain(why);
    expect(error.trimEnd()).not.toContain("\n");
  });
});
