/**
 * The slip chair's undercarriage against figures worked apart from the program: lean and sight line by vectors, feet by the lines' own
 * equations, the outline by a spline and integration worked out elsewhere; its solids against manifold-3d.
 */
import { afterAll, describe, expect, it } from "vitest";
import { measure } from "../../../server/geometry/convex.ts";
import { partPieces } from "../../../server/solids/part-pieces.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studied } from "../../check.ts";
import { hull, lessThan, type Solid, sweepSolids, together } from "../solids/manifold.ts";
import { ownSocket } from "../solids/own-socket.ts";
import { direction, inner, minus, outer, plus, times, type V } from "../solids/vectors.ts";
import { slipSeat } from "./slip-seat.ts";

const { chair: found } = studied(slipSeat);
const chair = found!;
const value = (name: string) => chair.values.get(name)!.number;
const degrees = (name: string) => (value(name) * 180) / Math.PI;

describe("the slip chair, worked apart from the program", () => {
  it.each([
    ["front-leg.left", 10.37, 120.35, 215.8, 32.9],
    ["back-leg.left", 21.05, 33.87, 188.1, 406.1],
  ])("%s leans %d° along %d° to its foot at out %d, back %d", (leg, lean, sight, out, back) => {
    expect(degrees(`${leg}.lean`)).toBeCloseTo(lean, 2);
    // To the second place as it was worked: 33.875 may round either way.
    expect(Math.abs(degrees(`${leg}.sight-line`) - sight)).toBeLessThan(0.006);
    const { foot } = chair.posts.get(leg)!;
    expect(foot[0]).toBeCloseTo(out, 1);
    expect(foot[1]).toBeCloseTo(back, 1);
  });

  it("is 442.5 wide at 184 behind its front edge, and its outline holds 0.1537 m²", () => {
    const { plan, outline, plane } = chair.seat!;
    expect(value("seat.width")).toBeCloseTo(442.5, 1);
    const stations = Array.from({ length: 3000 }, (_, k) => 12 + (k * 340) / 3000);
    const widest = stations.reduce((best, s) => (plan!.widthAt(s) > plan!.widthAt(best) ? s : best));
    expect(widest).toBeGreaterThan(183.5);
    expect(widest).toBeLessThan(184.5);
    const area = outline.reduce((sum, [x, y], k) => {
      const [u, v] = outline[(k + 1) % outline.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0);
    expect(area / plane.normal[2] / 1e6).toBeCloseTo(0.1537, 4);
  });

  it("has the depth, widths and slope that its text gives", () => {
    expect(value("seat.depth")).toBeCloseTo(400, 9);
    expect(value("seat.front-width")).toBeCloseTo(410, 9);
    expect(value("seat.back-width")).toBeCloseTo(300, 9);
    expect(Math.sin(value("seat.slope"))).toBeCloseTo(12 / 400, 9);
    expect(value("seat.height")).toBeCloseTo(430, 9);
  });
});

describe("its sockets", () => {
  afterAll(sweepSolids);

  const v = (p: readonly [number, number, number]): V => [...p];

  /** A cone about the leg's line, from the under face to the top face, its sizes those of the text at both. */
  function cone(leg: string): Solid {
    const post = chair.posts.get(leg)!;
    const [foot, top] = [v(post.foot), v(post.top)];
    const into = v(chair.seat!.plane.normal);
    return ownSocket({ at: top, run: direction(minus(top, foot)), into, thick: 44, first: 28, last: 22 });
  }

  /** Where the lines along a cone's skin pass the two faces. */
  function rimsOf(leg: string): V[] {
    const post = chair.posts.get(leg)!;
    const [foot, top] = [v(post.foot), v(post.top)];
    const run = direction(minus(top, foot));
    const up = v(chair.seat!.plane.normal);
    const long = 44 / inner(run, up);
    const u = direction(outer(run, [1, 0, 0]));
    const w = outer(run, u);
    return Array.from({ length: 720 }, (_, k) => {
      const a = (2 * Math.PI * k) / 720;
      const out = plus(times(u, Math.cos(a)), w, Math.sin(a));
      const from = plus(top, out, 14);
      const way = plus(run, out, -3 / long);
      return [0, 44].map((deep) => {
        const reach = inner(minus(plus(top, up, deep), from), up) / inner(way, up);
        return plus(from, way, reach);
      });
    }).flat();
  }

  it.each(["front-leg.left", "front-leg.right", "back-leg.left", "back-leg.right"])(
    "%s fills a cone from 28 to 22 between the two faces",
    (leg) => {
      const joint = chair.joints.get(`${leg} to seat`)!;
      // Circles are figures of 24 corners with the circle's area here and of 96 within it there.
      expect(joint.volume / cone(leg).volume()).toBeCloseTo(1, 2);
      expect(joint.long).toBeCloseTo(44, 9);
      expect(value(`${leg.replace("right", "left")}.bore-depth`)).toBeCloseTo(
        44 / Math.cos(value(`${leg.replace("right", "left")}.lean`)),
        6,
      );
    },
  );

  it("take from the seat what the legs put in: its weight is the slab's less the four", () => {
    const slab = together(chair.seat!.body.pieces.map(({ points }) => hull(points.map((p) => v(p)))));
    const bored = ["front-leg.left", "front-leg.right", "back-leg.left", "back-leg.right"]
      .map(cone)
      .reduce(lessThan, slab);
    const weighed = weigh(chair).parts.get("seat")!;
    expect(weighed.volume / bored.volume()).toBeCloseTo(1, 4);
    const pieces = partPieces(chair, chair.seat!).reduce((sum, piece) => sum + measure(piece).volume, 0);
    expect(pieces / bored.volume()).toBeCloseTo(1, 4);
  });

  it("leave the wood to the edge that lies nearest to their rims in either face", () => {
    const { outline, plane } = chair.seat!;
    for (const leg of ["front-leg.left", "back-leg.left"]) {
      const rim = rimsOf(leg);
      const least = Math.min(
        ...rim.map((p) => {
          const flat = (q: V) => [q[0], inner(q, outer(v(plane.normal), [1, 0, 0]))] as const;
          const [x, y] = flat(p);
          return Math.min(
            ...outline.map((a, k) => {
              const [ax, ay] = flat(v(a));
              const [bx, by] = flat(v(outline[(k + 1) % outline.length]!));
              const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
              const s = Math.min(1, Math.max(0, t));
              return Math.hypot(x - ax - s * (bx - ax), y - ay - s * (by - ay));
            }),
          );
        }),
      );
      expect(Math.abs(value(`${leg}.edge-wood`) - least)).toBeLessThan(0.02);
    }
  });
});
