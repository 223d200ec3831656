import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { edited } from "../../../server/range/choice.ts";
import { leastSquaresStep } from "../../../server/range/least-squares.ts";
import { type Together, togetherSteps } from "../../../server/range/together.ts";
import { plain, studied, subjectOf } from "./files.ts";

const together = (text: string): Together =>
  finish(togetherSteps({ subject: subjectOf(text), study: studied(text) }));

describe("several requirements at once", () => {
  it("changes nothing where all are met", () => {
    expect(together(plain("require seat.height = 460\n"))).toMatchObject({ met: true, changes: [] });
  });

  it("moves one value where one is enough", () => {
    const found = together(plain("require seat.height = 470\nrequire height at least 845\n"));
    expect(found.met).toBe(true);
    expect(found.changes.map(({ choice, written }) => [choice.name, written])).toEqual([
      ["seat-height", "450"],
    ]);
  });

  it("moves two where it takes two, and the text then meets them", () => {
    const text = plain("require seat.height = 470\nrequire depth = 450\n");
    const found = together(text);
    expect(found.met).toBe(true);
    // Posts 40 deep, feet 410 apart: 450 over all.
    expect(found.changes.map(({ choice, written }) => [choice.name, written])).toEqual([
      ["seat-height", "450"],
      ["foot-back", "410"],
    ]);
    const after = studied(edited(text, found.edits));
    expect(after.problems.filter(({ code }) => code === "requirement-not-met")).toEqual([]);
  });

  it("names those that stand against each other, and no others", () => {
    const found = together(
      plain("require seat.height at least 470\nrequire depth at most 500\nrequire height at most 840\n"),
    );
    // The back posts stand 400 over seat-height: 450 for the one is 850 for the other.
    expect(found.met).toBe(false);
    expect(found.against.map(({ subject }) => subject)).toEqual(["seat.height", "height"]);
  });
});

describe("the smallest step of several unknowns", () => {
  it("solves what can be solved exactly", () => {
    // 2x + y = 4, x − y = −1.
    const [x, y] = leastSquaresStep(
      [
        [2, 1],
        [1, -1],
      ],
      [4, -1],
    );
    expect(x).toBeCloseTo(1, 4);
    expect(y).toBeCloseTo(2, 4);
  });

  it("leaves free what has not to move", () => {
    expect(leastSquaresStep([[1, 1]], [3, 0])[0]).toBeCloseTo(3, 4);
  });
});
