import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { closingOf } from "../../../server/joinery/closing.ts";
import type { Fitting } from "../../../server/joinery/fitting.ts";

const across: Vec3 = [1, 0, 0];
const joint = (part: string, into: string, direction: Vec3): Fitting => ({
  name: `${part} to ${into}`,
  part,
  into,
  direction,
  long: 28,
  slack: 0.3,
});

describe("what goes in alone", () => {
  // Two posts with a rail between them.
  const rail = [joint("rail", "left", [-1, 0, 0]), joint("rail", "right", [1, 0, 0])];

  it("goes along its own tenons first, so that fewer come together at once", () => {
    const { first, atOnce, sprung } = closingOf([["left"], ["rail"], ["right"]], rail, across);
    expect(first.map(({ parts, closes }) => [parts, closes])).toEqual([[["rail"], ["rail to left"]]]);
    expect([atOnce, sprung]).toEqual([2, []]);
  });

  it("is nothing that would shut out what has still to go between", () => {
    // The left post goes into the right one by a tenon of its own, which leaves no way in for the rail between them.
    const joints = [...rail, joint("left", "right", [0, 1, 0])];
    const { first } = closingOf([["left"], ["rail"], ["right"]], joints, across);
    expect(first).toEqual([]);
  });
});
