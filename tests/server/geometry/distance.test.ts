import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { box } from "../../../server/geometry/convex.ts";
import { distanceBetween } from "../../../server/geometry/distance.ts";
import { moveConvex, rotationAbout } from "../../../server/geometry/motion.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";

describe("least distance between convex solids", () => {
  it("boxes apart along one, two and three directions", () => {
    const a = box([0, 0, 0], [10, 10, 10]);
    expect(distanceBetween(a, box([13, 2, 2], [20, 8, 8])).distance).toBeCloseTo(3, 10);
    expect(distanceBetween(a, box([13, 14, 2], [20, 20, 8])).distance).toBeCloseTo(5, 10);
    expect(distanceBetween(a, box([12, 13, 16], [20, 20, 20])).distance).toBeCloseTo(7, 10);
  });

  it("touching and overlapping are zero", () => {
    const a = box([0, 0, 0], [10, 10, 10]);
    expect(distanceBetween(a, box([10, 0, 0], [20, 10, 10])).distance).toBe(0);
    expect(distanceBetween(a, box([5, 5, 5], [20, 20, 20])).distance).toBe(0);
  });

  // Axis-aligned boxes have a closed form: the root of the sum of squared gaps.
  it("random boxes against the closed form, whatever way both are turned together", () => {
    const side = fc.double({ min: 1, max: 50, noNaN: true });
    const place = fc.double({ min: -120, max: 120, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(place, place, place, side, side, side),
        fc.tuple(place, place, place, side, side, side),
        fc.double({ min: 0, max: 6, noNaN: true }),
        (p, q, angle) => {
          const make = (t: readonly number[]) =>
            box([t[0]!, t[1]!, t[2]!], [t[0]! + t[3]!, t[1]! + t[4]!, t[2]! + t[5]!]);
          const gaps = [0, 1, 2].map((i) =>
            Math.max(0, q[i]! - p[i]! - p[i + 3]!, p[i]! - q[i]! - q[i + 3]!),
          );
          const motion = rotationAbout([3, -2, 5], unitOf([1, 2, -1]), angle);
          const { distance, onA, onB } = distanceBetween(
            moveConvex(motion, make(p)),
            moveConvex(motion, make(q)),
          );
          const expected = Math.hypot(...gaps);
          expect(distance).toBeCloseTo(expected, 6);
          if (expected > 1e-3)
            expect(Math.hypot(onA[0] - onB[0], onA[1] - onB[1], onA[2] - onB[2])).toBeCloseTo(expected, 6);
        },
      ),
      { numRuns: 400, seed: 11 },
    );
  });
});

function unitOf(v: Vec3): Vec3 {
  const length = Math.hypot(...v);
  return [v[0] / length, v[1] / length, v[2] / length];
}
