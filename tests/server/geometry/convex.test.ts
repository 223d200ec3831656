import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bodyOf, measureBody } from "../../../server/geometry/body.ts";
import {
  box,
  centroid,
  clip,
  contains,
  fromPlanes,
  intersect,
  mirror,
  sharedVolume,
  split,
  volume,
} from "../../../server/geometry/convex.ts";
import {
  compose,
  inverse,
  moveConvex,
  movePoint,
  rotationAbout,
  shiftBy,
} from "../../../server/geometry/motion.ts";
import { planeAt, threePlanes } from "../../../server/geometry/plane.ts";
import type { Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { distance, dot, unit } from "../../../server/geometry/vec.ts";

/** Every face's ring lies in its plane, runs anticlockwise, and every edge is shared by two faces. */
function expectSound(solid: Convex): void {
  const edges = new Map<string, number>();
  solid.faces.forEach((face, which) => {
    const plane = solid.planes[which]!;
    for (const index of face)
      expect(Math.abs(dot(plane.normal, solid.points[index]!) - plane.offset)).toBeLessThan(2e-7);
    face.forEach((index, k) => {
      const next = face[(k + 1) % face.length]!;
      edges.set(`${index}>${next}`, (edges.get(`${index}>${next}`) ?? 0) + 1);
    });
  });
  for (const key of edges.keys()) {
    const [i, j] = key.split(">");
    expect(edges.get(key)).toBe(1);
    expect(edges.get(`${j}>${i}`)).toBe(1);
  }
  // Euler's formula for a convex solid.
  const used = new Set(solid.faces.flat());
  expect(used.size - edges.size / 2 + solid.faces.length).toBe(2);
}

const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const direction = fc
  .tuple(number(-1, 1), number(-1, 1), number(-1, 1))
  .filter((d) => Math.hypot(...d) > 0.1)
  .map((d) => unit(d));

describe("a convex solid", () => {
  it("of a box has its volume and middle", () => {
    const solid = box([0, 0, 0], [10, 20, 30]);
    expectSound(solid);
    expect(volume(solid)).toBeCloseTo(6000, 9);
    expect(centroid(solid)).toEqual([5, 10, 15]);
    expect(volume(mirror(solid))).toBeCloseTo(6000, 9);
  });

  it("cut by planes keeps its volume in the parts", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(direction, number(-8, 8)), { minLength: 1, maxLength: 8 }), (cuts) => {
        let pieces: Convex[] = [box([-10, -10, -10], [10, 10, 10])];
        for (const [normal, offset] of cuts) {
          pieces = pieces.flatMap((piece) =>
            split(piece, { normal, offset }).filter((part) => part !== null),
          );
        }
        let total = 0;
        for (const piece of pieces) {
          expectSound(piece);
          total += volume(piece);
        }
        expect(total).toBeCloseTo(8000, 3);
      }),
      { numRuns: 60 },
    );
  });

  it("from six planes is their box, and from none that shut is nothing", () => {
    const axes: Vec3[] = [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
      [0, 0, 1],
      [0, 0, -1],
    ];
    expect(volume(fromPlanes(axes.map((normal) => ({ normal, offset: 2 })))!)).toBeCloseTo(64, 9);
    expect(
      fromPlanes([
        { normal: [1, 0, 0], offset: 0 },
        { normal: [-1, 0, 0], offset: -1 },
      ]),
    ).toBeNull();
  });

  it("meets another in the same volume however both are moved", () => {
    fc.assert(
      fc.property(
        direction,
        number(-3, 3),
        fc.tuple(number(-5, 5), number(-5, 5), number(-5, 5)),
        (axis, angle, shift) => {
          const motion = compose(shiftBy(shift), rotationAbout([1, 2, 3], axis, angle));
          const a = box([0, 0, 0], [10, 10, 10]);
          const b = box([4, 5, 6], [14, 15, 16]);
          expect(sharedVolume(moveConvex(motion, a), moveConvex(motion, b))).toBeCloseTo(6 * 5 * 4, 6);
          expect(distance(movePoint(inverse(motion), movePoint(motion, [1, 2, 9])), [1, 2, 9])).toBeLessThan(
            1e-9,
          );
        },
      ),
      { numRuns: 50 },
    );
  });

  it("apart from another shares nothing; touching neither", () => {
    const a = box([0, 0, 0], [1, 1, 1]);
    expect(intersect(a, box([2, 0, 0], [3, 1, 1]))).toBeNull();
    expect(intersect(a, box([1, 0, 0], [2, 1, 1]))).toBeNull();
    expect(contains(a, [1, 1, 1])).toBe(true);
    expect(clip(a, planeAt([0, 0, 1], [0, 0, 1]))).toBe(a);
  });

  it("has its corner where three planes meet", () => {
    const point = threePlanes(
      planeAt([1, 0, 0], [1, 0, 0]),
      planeAt([0, 2, 0], [0, 1, 1]),
      planeAt([0, 0, 3], [0, 0, 1]),
    )!;
    expect(distance(point, [1, -1, 3])).toBeLessThan(1e-12);
  });
});

describe("a body of touching pieces", () => {
  it("shows no seam: two halves of a box have its twelve edges", () => {
    const body = bodyOf([box([0, 0, 0], [5, 10, 10]), box([5, 0, 0], [10, 10, 10])]);
    const total = body.edges.reduce((sum, e) => sum + distance(e.a, e.b), 0);
    expect(total).toBeCloseTo(120, 3);
    expect(measureBody(body).volume).toBeCloseTo(1000, 9);
  });

  it("shows the inner corner of an L, each edge once", () => {
    const body = bodyOf([box([0, 0, 0], [10, 10, 10]), box([10, 0, 0], [20, 5, 10])]);
    const total = body.edges.reduce((sum, e) => sum + distance(e.a, e.b), 0);
    // Two outlines of 20 + 5 + 10 + 5 + 10 + 10 and six uprights of 10.
    expect(total).toBeCloseTo(2 * 60 + 6 * 10, 3);
  });

  it("draws facets of a curve as smooth", () => {
    const wedge = fromPlanes([
      planeAt([0, 0, 0], [-1, 0, 0]),
      planeAt([0, 0, 0], [0, -1, 0]),
      planeAt([0, 0, 0], [0, 0, -1]),
      planeAt([0, 0, 5], [0, 0, 1]),
      planeAt([10, 4.5, 0], [1, 0.03, 0]),
      planeAt([10, 4.5, 0], [1, -0.03, 0]),
      planeAt([0, 9, 0], [0, 1, 0]),
    ])!;
    const body = bodyOf([wedge], 0.1);
    expect(body.edges.filter((e) => e.is === "smooth").length).toBe(1);
    expect(body.edges.length).toBe(15);
  });
});
