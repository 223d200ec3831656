/**
 * Seats that rest on strips, in rebates and in grooves, and their rails: volumes worked by hand on a square stool, and against solids made
 * with manifold-3d 3.5.4 (Apache-2.0) where rails are bowed and posts lean.
 */
import { afterEach, describe, expect, it } from "vitest";
import type { Rail, SeatSurface } from "../../../server/chair/chair.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import type { Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studied } from "../../check.ts";
import { bentBox, hull, lessThan, type Solid, shared, sweepSolids, together } from "./manifold.ts";
import { frameOf, spot } from "./own-rail.ts";
import type { V } from "./vectors.ts";

afterEach(sweepSolids);

const v = (p: Vec3): V => [...p] as V;
const solid = (pieces: readonly Convex[]): Solid => together(pieces.map(({ points }) => hull(points.map(v))));

/** A square stool: rails 22 x 60 centred on posts 40 x 40 that stand 400 apart both ways, so that 378 is clear between the rails. */
const stool = (rest: string, seat: string, front = "", lean = "") => {
  const { chair, problems } = studied(`
joint plain { tenon thick 8, long 15; shoulders top 10, bottom 10 }
post front pair { section 40 x 40; foot out 200, back 20; height 430; ${lean} }
post back pair { section 40 x 40; foot out 200, back 420; height 430; ${lean} }
timber white-oak moisture 12%
rail seat-front { across front; section 22 x 60; up 420; ${front}; ${rest}; joined plain }
rail seat-side pair { from front to back; section 22 x 60; up 420; ${rest}; joined plain }
rail seat-back { across back; section 22 x 60; up 420; ${rest}; joined plain }
seat drop-in { on seat-front, seat-side, seat-back; ${seat} }
`);
  expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
  return chair;
};

/** A square with its corners cut out square. */
const square = (side: number, corner: number): number => side ** 2 - 4 * corner ** 2;
const volumeOf = (part: Rail | SeatSurface | undefined): number => measureBody(part!.body).volume;

describe("on the square stool, by hand", () => {
  it("a frame on strips keeps the gap from rails and posts, and lies on the strip", () => {
    const chair = stool("strip 20 x 9 at 18", "thick 30; rests on strips");
    // 1 from each rail: 376; posts stand 9 within the rails and 10 with the gap, less the 1 that is no frame.
    expect(volumeOf(chair.seat)).toBeCloseTo(square(376, 9) * 30, 3);
    expect(chair.seat!.plane.offset).toBeCloseTo(420 - 18 + 30, 9);
    // The strip runs between the posts: 360 long.
    expect(volumeOf(chair.rails.get("seat-front"))).toBeCloseTo(360 * (22 * 60 + 20 * 9), 3);
  });

  it("a covering goes under it and round it", () => {
    const chair = stool("strip 20 x 9 at 18", "thick 30; rests on strips; gap 1.5; cover 2");
    expect(volumeOf(chair.seat)).toBeCloseTo(square(378 - 7, 9) * 30, 3);
    expect(chair.seat!.plane.offset).toBeCloseTo(420 - 18 + 2 + 30, 9);
  });

  it("in rebates it reaches to their walls, less the gap", () => {
    const chair = stool("rebate 8 x 15", "thick 20; rests in rebates");
    expect(volumeOf(chair.seat)).toBeCloseTo(square(378 + 16 - 2, 9 + 8) * 20, 3);
    expect(chair.seat!.plane.offset).toBeCloseTo(420 - 15 + 20, 9);
    expect(volumeOf(chair.rails.get("seat-side.left"))).toBeCloseTo(360 * (22 * 60 - 8 * 15), 3);
  });

  it("in grooves its edge is thinned from below to the groove's width", () => {
    const chair = stool("groove 8 x 7 at 12", "thick 14; rests in grooves");
    expect(volumeOf(chair.seat)).toBeCloseTo(square(378 + 14 - 2, 9 + 7) * 8 + square(376, 9) * 6, 3);
    expect(chair.seat!.plane.offset).toBeCloseTo(420 - 12, 9);
    expect(volumeOf(chair.rails.get("seat-back"))).toBeCloseTo(360 * (22 * 60 - 8 * 7), 3);
  });

  it("cuts in edges and stopped rebates take what they say; the weight follows", () => {
    const whole = stool("", "thick 20; proud 20");
    const chair = stool(
      "groove 6 x 9 top at 5; rebate 7 x 9 outside bottom from 30 to 130",
      "thick 20; proud 20",
    );
    expect(volumeOf(chair.rails.get("seat-front"))).toBeCloseTo(360 * (22 * 60 - 6 * 9) - 100 * 63, 3);
    const [before, after] = [whole, chair].map((each) => weigh(each).parts.get("seat-front")!);
    expect(before!.volume - after!.volume).toBeCloseTo(360 * 54 + 100 * 63, 3);
    expect(after!.mass / before!.mass).toBeCloseTo(after!.volume / before!.volume, 9);
  });

  it("a strip that would lie in another's place butts against it", () => {
    // 12 thick where posts stand 9 within the rails: each pair of strips would share 3 x 3.
    const chair = stool("strip 20 x 12 at 18", "thick 30; rests on strips");
    expect(volumeOf(chair.rails.get("seat-front"))).toBeCloseTo(360 * (22 * 60 + 240), 3);
    expect(volumeOf(chair.rails.get("seat-side.left"))).toBeCloseTo(360 * 22 * 60 + 357 * 240, 3);
    expect(volumeOf(chair.rails.get("seat-back"))).toBeCloseTo(360 * 22 * 60 + 354 * 240, 3);
  });

  it("which of two strips butts is said by the seat, not by the order of the text", () => {
    const rails = [
      "rail seat-front { across front; section 22 x 60; up 420; strip 20 x 12 at 18; joined plain }",
      "rail seat-side pair { from front to back; section 22 x 60; up 420; strip 20 x 12 at 18; joined plain }",
      "rail seat-back { across back; section 22 x 60; up 420; strip 20 x 12 at 18; joined plain }",
    ];
    const strips = (order: readonly number[], on: string) => {
      const { chair } = studied(`
joint plain { tenon thick 8, long 15; shoulders top 10, bottom 10 }
post front pair { section 40 x 40; foot out 200, back 20; height 430 }
post back pair { section 40 x 40; foot out 200, back 420; height 430 }
${order.map((at) => rails[at]).join("\n")}
seat drop-in { on ${on}; thick 30; rests on strips }
`);
      return ["seat-front", "seat-side.left", "seat-back"].map((name) =>
        Math.round((volumeOf(chair.rails.get(name)) - 360 * 22 * 60) / 240),
      );
    };
    for (const order of [
      [0, 1, 2],
      [2, 1, 0],
      [1, 2, 0],
    ]) {
      expect(strips(order, "seat-front, seat-side, seat-back")).toEqual([360, 357, 354]);
      expect(strips(order, "seat-side, seat-front, seat-back")).toEqual([354, 360, 354]);
    }
  });
});

describe("with a bowed front and leaning posts, by manifold", () => {
  const RISE = 30;
  const bowed = (rest: string, seat: string) =>
    stool(rest, seat, `bow ${RISE} front`, "rake 3deg top back; splay 2deg foot out");

  /** A bar along the bowed front rail, between two distances in from its outside face and two heights, by the arc's own circle. */
  function along(rail: Rail, deep: [number, number], up: [number, number]): Solid {
    const frame = frameOf(rail);
    const radius = frame.length ** 2 / (8 * RISE) + RISE / 2;
    const half = Math.asin(frame.length / 2 / radius);
    const sign = Math.sign(rail.bow!);
    return bentBox([-1.4, -deep[1], up[0]], [1.4, -deep[0], up[1]], 1500, ([share, y, z]) => {
      const angle = share * half;
      const r = radius + sign * y;
      return spot(
        frame,
        frame.length / 2 + r * Math.sin(angle),
        sign * (RISE - radius + r * Math.cos(angle)),
        z,
      );
    });
  }

  it.each([
    ["a rebate", "rebate 8 x 15", "rests in rebates", [14, 60], [-15, 20]],
    ["a groove", "groove 8 x 7 at 12", "rests in grooves", [15, 60], [-20, -12]],
  ] as const)("%s follows the curve", (_, rest, rests, deep, up) => {
    const rail = bowed(rest, `thick 20; ${rests}`).rails.get("seat-front")!;
    const made = lessThan(solid(rail.uncut!.pieces), along(rail, [...deep], [...up]));
    // The rail is built of flats that turn by 1°, up to 0.05 mm off the circle.
    expect(Math.abs(volumeOf(rail) / made.volume() - 1)).toBeLessThan(2e-4);
    expect(shared(solid(rail.body.pieces), made).volume() / made.volume()).toBeGreaterThan(1 - 2e-4);
  });

  it("a strip follows it too, and the frame keeps its gap all round", () => {
    const chair = bowed("strip 20 x 9 at 18", "thick 24; rests on strips; gap 2");
    const rail = chair.rails.get("seat-front")!;
    const added = volumeOf(rail) - measureBody(rail.uncut!).volume;
    expect(
      Math.abs(added / shared(along(rail, [22, 31], [-38, -18]), clipped(rail)).volume() - 1),
    ).toBeLessThan(2e-3);
    // Grown by 1.9 square to its edges it touches no rail; grown by 2.2 it does.
    const rails = together([...chair.rails.values()].map(({ uncut }) => solid(uncut!.pieces)));
    const seat = solid(chair.seat!.body.pieces);
    expect(shared(moved(seat, 1.9), rails).volume()).toBeLessThan(1);
    expect(shared(moved(seat, 2.2), rails).volume()).toBeGreaterThan(10);
    const posts = together([...chair.posts.values()].map(({ body }) => solid(body.pieces)));
    expect(shared(moved(seat, 1.9), posts).volume()).toBeLessThan(1);
    expect(shared(moved(seat, 2.2), posts).volume()).toBeGreaterThan(10);
  });

  /** All between a rail's shoulders. */
  function clipped(rail: Rail): Solid {
    const [a, b] = rail.ends.map(({ shoulder }) => shoulder!) as [
      { normal: Vec3; offset: number },
      { normal: Vec3; offset: number },
    ];
    const huge = hull(
      [-999, 999].flatMap((x) => [-999, 999].flatMap((y) => [-1, 999].map((z): V => [x, y, z]))),
    );
    return huge.trimByPlane(v(a.normal), a.offset).trimByPlane(v(b.normal), b.offset);
  }

  /** A solid together with itself moved four ways in the level plane: what it touches within that distance. */
  const moved = (one: Solid, by: number): Solid =>
    together(
      (
        [
          [by, 0, 0],
          [-by, 0, 0],
          [0, by, 0],
          [0, -by, 0],
        ] as V[]
      ).map((shift) => one.translate(shift)),
    );
});
