/**
 * How far the empty chair can be tilted, by formula, against the chair rolled over the edge of its feet: each body's own corners are
 * turned about the edge that stays on the floor, and it goes over where its potential energy is greatest.
 */
import { describe, expect, it } from "vitest";
import { measureBody } from "../../../server/geometry/body.ts";
import { movePoint } from "../../../server/geometry/motion.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { sampleNames, studiedSample } from "../samples.ts";
import { goesOverAt, pieces, weighted } from "./rolled.ts";

const degrees = (radians: number) => (radians * 180) / Math.PI;

describe.each(sampleNames)("%s rolled over its feet", (name) => {
  const { chair } = studiedSample(name);
  const of = pieces(chair);

  it.each([
    ["tip.back", 1],
    ["tip.front", -1],
  ] as const)("%s, about the line through the outer edges of two feet", (value, way) => {
    const bearings = weighted(chair, 1).filter((bearing) => Math.sign(bearing[1]) === way);
    const least = Math.min(...bearings.map((bearing) => goesOverAt(bearing, of)));
    expect(Math.abs(degrees(least) - degrees(chair.values.get(value)!.number))).toBeLessThan(0.01);
  });

  it("tip.side, about the line through the outer edges of a front and a back foot", () => {
    const value = chair.values.get("tip.side")!.number;
    const outermost = weighted(chair, 0).map((bearing) => goesOverAt(bearing, of));
    expect(Math.abs(degrees(Math.min(...outermost)) - degrees(value))).toBeLessThan(0.01);
  });
});

describe("the parts' own centres", () => {
  it("are those of their bodies but for tenons and mortises", () => {
    const { chair } = studiedSample("boathouse-mess-chair");
    const { parts } = weigh(chair);
    for (const post of chair.posts.values()) {
      const at = movePoint(chair.stance, measureBody(post.body).centroid);
      const centre = parts.get(post.name)!.centre;
      expect(Math.hypot(at[0] - centre[0], at[1] - centre[1], at[2] - centre[2])).toBeLessThan(15);
    }
  });
});
