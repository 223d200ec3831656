import { describe, expect, test } from "vitest";
import { chainsOf } from "../../../server/drawing/chains.ts";
import { see } from "../../../server/drawing/hidden-lines.ts";
import { sightFrom } from "../../../server/drawing/pictorial/eye.ts";
import { motionInto, sights } from "../../../server/drawing/sight.ts";
import { bodyOf } from "../../../server/geometry/body.ts";
import { prism } from "../../../server/geometry/convex.ts";
import { rotationAbout, STILL } from "../../../server/geometry/motion.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { archedRail, bowedRail, boxBody, roundPost, seen } from "./bodies.ts";

/** All worked by hand from the corners of the bodies. */
describe("what can be seen", () => {
  test("a box seen square is its outline, whatever lies at its back", () => {
    const near = boxBody([0, 0, 0], [100, 20, 100]);
    expect(seen([near], "front", 0)).toEqual([
      "outline 0,0 0,100",
      "outline 0,0 100,0",
      "outline 0,100 100,100",
      "outline 100,0 100,100",
    ]);
  });

  test("a box behind a box shows what stands out past it", () => {
    const near = boxBody([0, 0, 0], [100, 20, 100]);
    const far = boxBody([50, 50, 50], [150, 70, 150]);
    expect(seen([near, far], "front", 1)).toEqual([
      "outline 100,50 150,50",
      "outline 150,50 150,150",
      "outline 50,100 50,150",
      "outline 50,150 150,150",
    ]);
    expect(seen([near, far], "front", 0)).toHaveLength(4);
  });

  test("a leg behind a rail is hidden where the rail passes", () => {
    const rail = boxBody([-200, 0, 350], [200, 22, 420]);
    const leg = boxBody([-20, 400, 0], [20, 440, 900]);
    expect(seen([rail, leg], "front", 1)).toEqual([
      "outline -20,0 -20,350",
      "outline -20,0 20,0",
      "outline -20,420 -20,900",
      "outline -20,900 20,900",
      "outline 20,0 20,350",
      "outline 20,420 20,900",
    ]);
  });

  test("of twins one behind the other only the nearer is drawn", () => {
    const left = boxBody([180, 0, 0], [220, 40, 430]);
    const right = boxBody([-220, 0, 0], [-180, 40, 430]);
    expect(seen([left, right], "side", 0)).toHaveLength(4);
    expect(seen([left, right], "side", 1)).toEqual([]);
  });

  test("a ridge that passes close beside the wood before it is drawn, one behind it is not", () => {
    // Seen from the front left, a ridge between two faces that both look at the eye; the board before it ends so far past it.
    const eye = motionInto(sightFrom({ round: 45 * (Math.PI / 180), above: 0 }), STILL);
    const ridge = (past: number) => {
      const along = Math.SQRT1_2;
      const spot = (right: number, towards: number, up: number): Vec3 => [
        eye.rotation[0][0] * right + eye.rotation[2][0] * towards,
        eye.rotation[0][1] * right + eye.rotation[2][1] * towards,
        up,
      ];
      const ring = (up: number) => [spot(-40, 0, up), spot(40, 0, up), spot(0, 40 * along, up)];
      const board = (up: number) => [
        spot(-30, 60, up),
        spot(past, 60, up),
        spot(past, 90, up),
        spot(-30, 90, up),
      ];
      const bodies = [bodyOf([prism(ring(0), ring(100))]), bodyOf([prism(board(-10), board(110))])];
      return see(bodies, eye).lines.filter(({ body, is }) => body === 0 && is === "edge").length;
    };
    expect(ridge(-0.006)).toBe(1);
    expect(ridge(0)).toBe(0);
    expect(ridge(0.006)).toBe(0);
  });

  test("a rail's end against a post's side is the post's own line, once", () => {
    const post = boxBody([0, 0, 0], [40, 40, 430]);
    const rail = boxBody([40, 3, 350], [300, 25, 420]);
    expect(seen([post, rail], "front", 1)).toEqual([
      "outline 300,350 300,420",
      "outline 40,350 300,350",
      "outline 40,420 300,420",
    ]);
  });

  test("a rail let flush into a post's line is drawn once where both have the same arris", () => {
    const post = boxBody([0, 0, 0], [40, 40, 430]);
    const rail = boxBody([40, 0, 350], [300, 22, 420]);
    const lines = see([post, rail], motionInto(sights.front, STILL)).lines;
    const upright = chainsOf(lines).flatMap(({ points }) =>
      points.flatMap((b, k) => {
        const a = points[k - 1];
        return a && Math.abs(a[0] - 40) < 0.1 && Math.abs(b[0] - 40) < 0.1 ? [Math.abs(a[1] - b[1])] : [];
      }),
    );
    expect(upright.reduce((sum, length) => sum + length, 0)).toBeCloseTo(430, 1);
  });

  test("a round post shows its two sides and its ends, no facets", () => {
    const lines = seen([roundPost(20, 400, 32)], "front", 0);
    const sides = lines.filter((line) => line.endsWith(",400") && / -?[\d.]+,0 /.test(line));
    expect(sides).toEqual(["outline -20,0 -20,400", "outline 20,0 20,400"]);
    expect(lines.every((line) => line.startsWith("outline"))).toBe(true);
    const length = (text: string) => {
      const [x, y, u, v] = text.match(/-?[\d.]+/g)!.map(Number) as [number, number, number, number];
      return Math.hypot(u - x, v - y);
    };
    // Both sides, and the top and the foot once across.
    expect(lines.reduce((sum, line) => sum + length(line), 0)).toBeCloseTo(2 * 400 + 2 * 40, 0);
  });

  test("from above a round post is its ring", () => {
    const [ring, ...rest] = chainsOf(see([roundPost(20, 400, 32)], motionInto(sights.plan, STILL)).lines);
    expect(rest).toEqual([]);
    expect(ring!.points).toHaveLength(33);
    for (const [x, y] of ring!.points) expect(Math.hypot(x, y)).toBeCloseTo(20, 9);
  });

  test("an arched rail from the front: its curve is one line that rises to the arch's rise", () => {
    const chains = chainsOf(see([archedRail(180, 22, 70, 14, 16)], motionInto(sights.front, STILL)).lines);
    expect(chains).toHaveLength(1);
    const under = chains[0]!.points.filter(([, z]) => z < 60);
    expect(Math.max(...under.map(([, z]) => z))).toBeCloseTo(14, 9);
    for (const [x, z] of under) expect(z).toBeCloseTo(14 * (1 - (x / 180) ** 2), 6);
  });

  test("an arched rail hides a stretcher behind it above the curve and not below", () => {
    const rail = archedRail(180, 22, 70, 14, 2);
    // A thin rod behind, 7 mm up: the two straights of the arch pass that height half way out.
    const rod = boxBody([-300, 100, 7], [300, 101, 8]);
    const under = see([rail, rod], motionInto(sights.front, STILL))
      .lines.filter(({ body, a, b }) => body === 1 && a[1] === 7 && b[1] === 7)
      .map(({ a, b }) => [Math.min(a[0], b[0]), Math.max(a[0], b[0])])
      .sort((p, q) => p[0]! - q[0]!);
    expect(under.map((ends) => ends.map(Math.round))).toEqual([
      [-300, -180],
      [-90, 90],
      [180, 300],
    ]);
  });

  test("a bowed crest in plan shows both curves, each smooth", () => {
    const chains = chainsOf(see([bowedRail(160, 20, 90, 22, 12)], motionInto(sights.plan, STILL)).lines);
    expect(chains).toHaveLength(1);
    const { points } = chains[0]!;
    expect(Math.max(...points.map(([, y]) => y))).toBeCloseTo(42, 9);
    for (const [x, y] of points) {
      const curve = 22 * (1 - (x / 160) ** 2);
      expect(Math.min(Math.abs(y - curve), Math.abs(y - curve - 20))).toBeLessThan(1e-6);
    }
  });

  test("a box that leans shows its inner edge lighter than its outline", () => {
    const lean = rotationAbout([0, 0, 0], [1, 0, 0], Math.PI / 6);
    const lines = see([boxBody([0, 0, 0], [100, 20, 60])], motionInto(sights.front, lean)).lines;
    // Turned 30° about its lower front edge the top comes away, the foot's face comes into view.
    const height = (z: number, y: number) => z * Math.cos(Math.PI / 6) + y * Math.sin(Math.PI / 6);
    const inner = lines.filter(({ is }) => is === "edge").map(({ a, b }) => [a[1], b[1]]);
    expect(inner).toHaveLength(1);
    const heights = lines.flatMap(({ a, b }) => [a[1], b[1]]);
    expect(Math.max(...heights)).toBeCloseTo(height(60, 20), 9);
    expect(inner[0]![0]).toBeCloseTo(inner[0]![1]!, 9);
  });
});
