/**
 * Why a chair does not stand a load, in words with figures.
 */
import { describe, expect, it } from "vitest";
import { gravity } from "../../../server/floor/loaded.ts";
import type { CaseResult } from "../../../server/strength/case-result.ts";
import { endingOf } from "../../../server/strength/ending.ts";
import { studiedLate } from "../../check.ts";
import { sound } from "./sound.ts";

const ended = (lines: string, unit: "mm" | "in" = "mm") => {
  const { late, chair } = studiedLate(sound(`load own {\n  ${lines}\n}\n`));
  const one = late?.strength.cases.find(({ load }) => load.own) as CaseResult;
  return { says: endingOf(one, unit), state: one.solution.is, chair, one };
};

describe("a load that the chair does not stand", () => {
  it("lifts it: by what the pushes are more than its weight", () => {
    const { says, state, chair } = ended("push 300N up on seat");
    const weight = (chair.values.get("weight")?.number ?? 0) * gravity;
    expect(state).not.toBe("solved");
    expect(says).toBe(
      `It is lifted off the floor: what pushes it up is ${Math.round(300 - weight)} N more than it weighs.`,
    );
    expect(ended("push 300N up on seat", "in").says).toMatch(/ is \d+ lbf \(\d+ N\) more than it weighs/);
  });

  it("turns it over: by how far beyond its feet all of it presses, its weight counted", () => {
    const { says, chair } = ended("push 5000N down on seat at out 300, back 150");
    const far = Number(/acts ([\d.]+) mm beyond its left feet\.$/.exec(says ?? "")?.[1]);
    const weight = (chair.values.get("weight")?.number ?? 0) * gravity;
    const [x] = chair.posts.get("front.left")?.foot ?? [0];
    // Moments about the line of the left feet: the chair's own weight acts on its middle line.
    expect(far).toBeCloseTo((5000 * 300) / (5000 + weight) - x, 0);
  });

  it("slides it away: by how much it is pushed and what its feet rub", () => {
    const { one } = ended("push 20N down on seat");
    const supports = one.load.supports.map((each) => ({ ...each, friction: 0.3 }));
    const loads = [
      { node: 0, v: [120, 160, 0, 0, 0, 0] },
      { node: 1, v: [0, 0, -500, 0, 0, 0] },
    ];
    const slid: CaseResult = { ...one, solution: { is: "slides" }, load: { ...one.load, supports, loads } };
    expect(endingOf(slid, "mm")).toBe(
      "It slides away: it is pushed level by 200 N, and its feet rub with 150 N at most.",
    );
  });

  it("has a loose part, which is named", () => {
    const { one } = ended("push 20N down on seat");
    const node = one.frame.along.get("seat-front")?.[1] ?? 0;
    expect(endingOf({ ...one, solution: { is: "loose", node, way: 0 } }, "mm")).toBe(
      "Seat-front is loose: nothing holds it.",
    );
  });

  it("says nothing of one that it stands", () => {
    expect(ended("push 300N down on seat").says).toBeUndefined();
  });
});
