import { describe, expect, it } from "vitest";
import { balanceOf } from "../../../server/floor/tips.ts";
import { check, messagesOf, otherwiseOf, studied } from "../../check.ts";
import { backFrame, frame } from "../../plain-frame.ts";

const ash = "timber white-ash\n";
const overhanging = (side: "front" | "out", by: number) =>
  frame({
    more: ash,
    seat: `seat board {\n  on seat-front, seat-side, seat-back\n  thick 20\n  overhang ${side} ${by}\n}\n`,
  });

describe("tipping under the standard loads", () => {
  it("says which way, the margin and how far the feet would have to come", () => {
    expect(messagesOf(overhanging("front", 120), "tips-forwards")[0]).toMatch(
      /^The post front lets the chair go over forwards with a load near the seat's edge: margin 0\.\d\d, and 1\.00 is needed\. A calculation is not a test\.$/,
    );
    expect(messagesOf(overhanging("out", 120), "tips-sideways")).toHaveLength(1);
    check(overhanging("front", 20));
  });

  it("names a distance that is enough and no more", () => {
    const text = backFrame("rake 6deg above 450", `${ash}limit tips-backwards to 3\n`);
    const by = Number(/stand ([\d.]+) mm/.exec(otherwiseOf(text, "tips-backwards")[0] ?? "")?.[1]);
    const worst = balanceOf(studied(text).chair).cases.find(({ way }) => way === "back")!;
    // The standard's case by hand: 600 N ahead of the line and the chair's weight against the push on the back.
    const [weight, seat, push] = worst.loads;
    const line = worst.line.from[1] + by;
    const holding = -seat!.force[2] * (line - seat!.at[1]) - weight!.force[2] * (line - weight!.at[1]);
    expect(holding / (push!.force[1] * push!.at[2])).toBeCloseTo(3, 2);
  });

  it("needs what moves the line, and half of that is not enough, forwards too", () => {
    const worst = balanceOf(studied(overhanging("front", 120)).chair).cases.find(
      ({ way }) => way === "front",
    )!;
    expect(worst.outFor(1)).toBeCloseTo(worst.short, 2);
  });

  it("stands on the kick of the back post, else on its place, and follows the file's limit", () => {
    const text = backFrame(
      "kick 4deg below 100\n#    ^^^^^^^^^^^^^^^ tips-backwards\nrake 6deg above 450",
      `${ash}limit tips-backwards to 3\n`,
    );
    expect(studied(text).problems.map(({ code, start, end }) => [code, text.slice(start, end)])).toEqual([
      ["tips-backwards", expect.stringContaining("4deg")],
    ]);
    const straight = backFrame("rake 6deg above 450", `${ash}limit tips-backwards to 3\n`);
    const [problem] = studied(straight).problems;
    expect(straight.slice(problem!.start, problem!.end)).toBe("200, back 420");
  });

  it("keeps quiet while the timber is not known", () => {
    expect(messagesOf(overhanging("front", 120).replace(ash, ""), "tips-forwards")).toEqual([]);
  });

  it("goes by the edition that the text chooses", () => {
    const forwards = (stability: string) =>
      studied(`${stability}${overhanging("front", 120)}`).chair.values.get("tip.front-margin")!.number;
    const en = forwards("");
    expect(forwards("stability en-1022-2018\n")).toBe(en);
    // The older one loads the seat 10 mm nearer to its edge, so it is the harder one on an overhang.
    expect(forwards("stability iso-7174-1-1988\n")).toBeLessThan(en);
  });
});

describe("tipping beyond the standards", () => {
  const upright = (more = "") => backFrame("rake 6deg above 450", `${ash}${more}`);

  it("under a child that kneels and leans over the back: the older the child the sooner", () => {
    const margin = (more: string) => studied(upright(more)).chair.values.get("tip.child-margin")!.number;
    const ages = [4, 8, 12].map((age) => margin(`stability child ${age}\n`));
    expect(ages[0]).toBeGreaterThan(ages[1]!);
    expect(ages[1]).toBeGreaterThan(ages[2]!);
    expect(margin("")).toBe(ages[1]);
    expect(margin("stability en-1022-2018, child 8\n")).toBe(ages[1]);
    expect(messagesOf(upright("limit tips-under-child to 3\n"), "tips-under-child")[0]).toMatch(
      /^The chair holds backwards with a child of 8 kneeling on it and leaning over the back, by a margin of \d\.\d\d; this file asks for 3\.00 or more\. /,
    );
  });

  it("when somebody rocks on the back legs, with the distance that is enough and no more", () => {
    const text = upright("limit tips-when-leant-back to 3\n");
    expect(messagesOf(text, "tips-when-leant-back")[0]).toMatch(
      /^The chair holds backwards with a sitter of middle size rocking on the back legs, by a margin of \d\.\d\d; this file asks for 3\.00 or more\. /,
    );
    const { chair } = studied(text);
    const rocking = balanceOf(chair).beyond.find(({ kind }) => kind === "leaning")!;
    // By hand: chair and sitter as one weight, the line moved out; over when the weight stands above it.
    const down = rocking.loads.map(({ force }) => -force[2]);
    const mean = (axis: 1 | 2) =>
      rocking.loads.reduce((sum, { at }, k) => sum + at[axis] * down[k]!, 0) / (down[0]! + down[1]!);
    const line = rocking.line.from[1];
    expect(chair.values.get("tip.leaning")!.number).toBeCloseTo(Math.atan((line - mean(1)) / mean(2)), 12);
    const moved = Math.atan((line + rocking.outFor(3) - mean(1)) / mean(2));
    expect((moved * 180) / Math.PI).toBeCloseTo(3 * 10, 6);
  });

  it("is not asked of a stool", () => {
    const { values } = studied(`${ash}${frame()}`).chair;
    expect([...values.keys()].filter((name) => /tip\.(child|leaning)/.test(name))).toEqual([]);
  });
});
