import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { workedValue } from "../../../server/chair/values/values.ts";
import { edited } from "../../../server/range/choice.ts";
import { goalOf, shortOf } from "../../../server/range/goal.ts";
import { reachSteps, type Way } from "../../../server/range/reach.ts";
import { searchSteps } from "../../../server/range/secant.ts";
import { plain, samples, studied, subjectOf } from "./files.ts";

const mess = samples["boathouse-mess-chair.chair"] ?? "";

function waysTo(text: string, asked: string, by?: string): Way[] {
  const line = studied(`${text}\nrequire ${asked}\n`).design.requires.at(-1);
  const goal = line && goalOf(line);
  if (!goal) throw new Error(asked);
  return finish(
    reachSteps({ subject: subjectOf(text), study: studied(text), goal, ...(by !== undefined && { by }) }),
  );
}

describe("a figure reached", () => {
  it("is the slope that trimming gives: an arctangent", () => {
    // Feet 400 apart: 2° asks for 400 · tan 2° = 13.97 mm off the back feet; 14 mm give 2.005°, which prints as 2°.
    const [way] = waysTo(plain("trim back 10\n"), "seat.slope = 2deg", "trim");
    expect(way).toMatchObject({ written: "14", met: true, comes: [] });
    expect(way?.got).toBeCloseTo(Math.atan(14 / 400), 3);
  });

  it("is what the text then gives", () => {
    for (const { edits, got } of waysTo(mess, "seat.slope = 2deg", "trim")) {
      expect(workedValue(studied(edited(mess, edits)).chair, "seat.slope")?.number).toBeCloseTo(got, 9);
    }
  });

  it("stays within the range of the text, and says the best that can be had", () => {
    const ways = waysTo(plain(), "seat.height = 600mm", "seat-height");
    expect(ways).toHaveLength(1);
    expect(ways[0]).toMatchObject({ to: 480, written: "480", met: false });
  });

  it("tells what comes and goes", () => {
    const text = plain("require seat.height at most 461\n");
    const [way] = waysTo(text, "seat.height at least 470", "seat-height");
    expect(way?.met).toBe(true);
    expect(way?.comes.map(({ code }) => code)).toContain("requirement-not-met");
  });

  it("goes to the nearest end of what is asked, on its right side", () => {
    const [way] = waysTo(plain(), "seat.height at least 470.4", "seat-height");
    expect(way).toMatchObject({ written: "451", met: true });
    const goal = { value: "seat.height", dimension: "length", low: 470.4 } as const;
    expect(shortOf(goal, way?.got ?? 0, "mm")).toBe(0);
  });

  it("leaves out choices that break the chair, unless they are named or nothing else gets there", () => {
    // The strips that the seat rests on would have to lie outside their rails.
    const names = (by?: string) => waysTo(mess, "seat.height = 430mm", by).map(({ choice }) => choice.name);
    expect(names()).toContain("seat-height");
    expect(names()).not.toContain("seat-rest");
    expect(names("seat-rest")).toEqual(["seat-rest"]);
  });

  it("says nothing of choices that do not move it", () => {
    const names = waysTo(plain(), "seat.height = 470").map(({ choice }) => choice.name);
    expect(names).toEqual(["seat-height"]);
  });
});

describe("the search", () => {
  const ask = (f: (x: number) => number, more = {}) => {
    let asked = 0;
    const found = finish(
      searchSteps(
        { from: 10, at: f(10), aim: 0, low: 0, high: 100, fine: 1e-6, step: 1, most: 40, ...more },
        function* (x) {
          asked++;
          yield;
          return f(x);
        },
      ),
    );
    return { ...found, asked };
  };

  it("needs two places on a straight line", () => {
    const { guess, asked } = ask((x) => 3 * x - 150);
    expect(guess).toBeCloseTo(50, 9);
    expect(asked).toBeLessThanOrEqual(2);
  });

  it("agrees with bisection on bent ones", () => {
    for (const f of [
      (x: number) => x ** 2 - 900,
      (x: number) => Math.sin(x / 60) - 0.9,
      (x: number) => Math.log(1 + x) - 3,
    ]) {
      let [a, b] = [0, 100];
      for (let k = 0; k < 60; k++) {
        const middle = (a + b) / 2;
        if (f(a) * f(middle) <= 0) b = middle;
        else a = middle;
      }
      expect(ask(f).guess).toBeCloseTo(a, 5);
    }
  });

  it("keeps within its bounds", () => {
    expect(ask((x) => x - 300).guess).toBe(100);
    expect(ask((x) => 400 - x).guess).toBe(100);
    expect(ask((x) => x + 50).guess).toBe(0);
  });

  it("sees what does not move", () => {
    expect(ask(() => 7).moves).toBe(false);
  });
});
