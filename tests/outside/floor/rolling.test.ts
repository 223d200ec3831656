/**
 * How far the empty chair can be tilted, by formula, against the chair rolled over the edge of its feet: each body's own corners are
 * turned about the edge that stays on the floor, and it goes over where its potential energy is greatest.
 */
import { describe, expect, it } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import { movePoint } from "../../../server/geometry/motion.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { sampleNames, studiedSample } from "../samples.ts";

interface Weighted {
  mass: number;
  at: Vec3;
}

/** The chair as point masses, one for each part, and all corners of its posts, as it stands. */
function pieces(chair: Chair): { masses: Weighted[]; corners: Vec3[] } {
  const corners = [...chair.posts.values()].flatMap(({ body }) =>
    body.pieces.flatMap(({ points }) => points.map((point) => movePoint(chair.stance, point))),
  );
  const masses = [...weigh(chair).parts.values()].map(({ mass, centre }) => ({ mass, at: centre }));
  return { masses, corners };
}

/** Turned over towards `way` by an angle, and let down until its lowest corner touches the floor. */
function turned(
  way: readonly [number, number],
  angle: number,
  { masses, corners }: ReturnType<typeof pieces>,
) {
  const along = ([x, y]: Vec3) => x * way[0] + y * way[1];
  const height = (at: Vec3) => at[2] * Math.cos(angle) - along(at) * Math.sin(angle);
  const floor = Math.min(...corners.map(height));
  return masses.reduce((sum, { mass, at }) => sum + mass * (height(at) - floor), 0);
}

/** The angle of greatest energy up to where it would lie on its side, found by golden section. */
function goesOverAt(way: readonly [number, number], of: ReturnType<typeof pieces>): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [0.01, 1.2];
  for (let k = 0; k < 60; k++) {
    const a = high - golden * (high - low);
    const b = low + golden * (high - low);
    if (turned(way, a, of) < turned(way, b, of)) low = a;
    else high = b;
  }
  return (low + high) / 2;
}

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

/** Directions mostly along an axis, square to the lines between the feet's corners that have all the others on one side. */
function weighted(chair: Chair, axis: 0 | 1): [number, number][] {
  const feet = [...chair.posts.values()].flatMap(({ body }) =>
    body.pieces.flatMap(({ points }) =>
      points.map((point) => movePoint(chair.stance, point)).filter(([, , z]) => Math.abs(z) < 0.01),
    ),
  );
  const found: [number, number][] = [];
  for (const a of feet) {
    for (const b of feet) {
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (length < 1) continue;
      const out: [number, number] = [(b[1] - a[1]) / length, (a[0] - b[0]) / length];
      if (Math.abs(out[axis]) < Math.abs(out[1 - axis]!)) continue;
      if (feet.every((c) => (c[0] - a[0]) * out[0] + (c[1] - a[1]) * out[1] < 1e-6)) found.push(out);
    }
  }
  return found;
}

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
