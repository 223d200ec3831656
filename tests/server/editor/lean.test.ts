import { describe, expect, it } from "vitest";
import { leanOf } from "../../../server/editor/about/lean.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";

const degrees = (radians: number) => (radians * 180) / Math.PI;

function line(rake: number, splay: number): Vec3 {
  const tan = (angle: number) => Math.tan((angle * Math.PI) / 180);
  const [x, y] = [-tan(splay), tan(rake)];
  const length = Math.hypot(x, y, 1);
  return [x / length, y / length, 1 / length];
}

describe("the lean of a leg", () => {
  // Common practice of chairmakers, worked by hand: tan r = √(tan² rake + tan² splay), tan s = tan splay ÷ tan rake.
  it.each([
    [10, 5, 11.14, 26.39],
    [15, 10, 17.78, 33.35],
    [8, 0, 8, 0],
    [0, 8, 8, 90],
  ])(
    "of rake %d° and splay %d° has a resultant of %d° and a sightline of %d°",
    (rake, splay, resultant, sightline) => {
      const lean = leanOf(line(rake, splay), "left");
      expect(degrees(lean.rake)).toBeCloseTo(rake, 9);
      expect(degrees(lean.splay)).toBeCloseTo(splay, 9);
      expect(degrees(lean.resultant)).toBeCloseTo(resultant, 2);
      expect(degrees(lean.sightline)).toBeCloseTo(sightline, 2);
    },
  );

  it("of a right-hand twin is its left one's", () => {
    const [x, y, z] = line(10, 5);
    expect(leanOf([-x, y, z], "right")).toEqual(leanOf([x, y, z], "left"));
  });
});
