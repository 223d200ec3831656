import { describe, expect, it } from "vitest";
import { balanceOf } from "../../../server/floor/tips.ts";
import { backFrame, frame } from "../../../server/rules/examples.ts";
import { outBy } from "../../../server/rules/tipping.ts";
import { check, messagesOf, studied } from "../../check.ts";

const ash = "timber white-ash\n";
const overhanging = (side: "front" | "out", by: number) =>
  frame({
    more: ash,
    seat: `seat board {\n  on seat-front, seat-side, seat-back\n  thick 20\n  overhang ${side} ${by}\n}\n`,
  });

describe("tipping under the standard loads", () => {
  it("says which way, the margin and how far the feet would have to come", () => {
    expect(messagesOf(overhanging("front", 120), "tips-forwards")[0]).toMatch(
      /^The post front lets it go over forwards with a load near the seat's edge: margin 0\.\d\d, and 1\.00 is wanted; [\d.]+ mm further out at the feet of front would do\. A calculation is not a test\.$/,
    );
    expect(messagesOf(overhanging("out", 120), "tips-sideways")).toHaveLength(1);
    check(overhanging("front", 20));
  });

  it("names a distance that is enough and no more", () => {
    const text = backFrame("rake 6deg above 450", `${ash}limit tips-backwards to 3\n`);
    const by = Number(/wanted; ([\d.]+) mm/.exec(messagesOf(text, "tips-backwards")[0] ?? "")?.[1]);
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
    expect(outBy(worst, 1)).toBeCloseTo(worst.short, 2);
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
});
