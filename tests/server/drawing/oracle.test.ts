/**
 * Hidden lines against a slow and plain way: many points along every edge, each asked whether a ray from it to the eye passes through
 * any solid.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { see } from "../../../server/drawing/hidden-lines.ts";
import { hiderOf } from "../../../server/drawing/hider.ts";
import { motionInto, sights } from "../../../server/drawing/sight.ts";
import { bodyOf } from "../../../server/geometry/body.ts";
import { box, prism } from "../../../server/geometry/convex.ts";
import { moveBody, rotationAbout, STILL } from "../../../server/geometry/motion.ts";
import type { Body, Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { between, unit } from "../../../server/geometry/vec.ts";

const RUNS = 60;
const SAMPLES = 12;
/** Nearer to a change than this the two may differ, mm. */
const UNSURE = 0.1;
/** A ray counts as stopped by what it passes through beyond this, mm. */
const BEYOND = 0.03;

const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

const placed = (solid: Convex, [x, y, z]: Vec3, turn: number, lean: number): Body => {
  const about = rotationAbout([0, 0, 0], unit([x, 1 + Math.abs(y), z]), turn);
  const over = rotationAbout([x, y, z], [1, 0, 0], lean);
  return moveBody(over, moveBody(about, bodyOf([solid], 0.4)));
};

const stick = fc
  .tuple(number(5, 60), number(5, 60), number(20, 300))
  .map(([a, b, c]) => box([0, 0, 0], [a, b, c]));
const turnedStick = fc
  .tuple(number(5, 30), number(5, 30), number(20, 200), fc.integer({ min: 5, max: 12 }))
  .map(([r, s, h, n]) => {
    const ring = (radius: number, z: number): Vec3[] =>
      Array.from({ length: n }, (_, k) => {
        const bearing = (2 * Math.PI * k) / n;
        return [radius * Math.cos(bearing), radius * Math.sin(bearing), z];
      });
    return prism(ring(r, 0), ring(s, h));
  });
const body = fc
  .tuple(
    fc.oneof(stick, turnedStick),
    fc.tuple(number(-150, 150), number(-150, 150), number(-150, 150)),
    number(-2, 2),
    number(-1, 1),
  )
  .map(([solid, [x, y, z], turn, lean]) => {
    const at = placed(solid, [x, y, z], turn, lean);
    return moveBody({ rotation: STILL.rotation, shift: [x, y, z] }, at);
  });

/** How far the ray towards the eye (the third direction) runs within a solid, beyond its start. */
function within(solid: Convex, p: Vec3): number {
  let from = BEYOND;
  let to = Infinity;
  for (const { normal, offset } of solid.planes) {
    const h = normal[0] * p[0] + normal[1] * p[1] + normal[2] * p[2] - offset;
    if (Math.abs(normal[2]) < 1e-12) {
      if (h > 0) return 0;
    } else if (normal[2] > 0) to = Math.min(to, -h / normal[2]);
    else from = Math.max(from, -h / normal[2]);
  }
  return Math.max(0, to - from);
}

/** Whether something changes close to this place: an outline passes, or a face that it lies on. */
function unsure(solids: readonly Convex[], p: Vec3): boolean {
  return solids.some((solid) => {
    const hider = hiderOf(solid, STILL);
    if (!hider) return true;
    const { planes, outline } = hider;
    let most = -Infinity;
    for (let k = 0; k < outline.length; k++) {
      most = Math.max(most, planes[4 * k]! * p[0] + planes[4 * k + 1]! * p[1] - planes[4 * k + 3]!);
    }
    if (Math.abs(most) < UNSURE) return true;
    if (most > 0) return false;
    const depth = Math.min(
      ...solid.planes.map(({ normal, offset }) => {
        const h = normal[0] * p[0] + normal[1] * p[1] + normal[2] * p[2] - offset;
        return normal[2] > 1e-5 ? Math.abs(h) : Infinity;
      }),
    );
    return depth < UNSURE;
  });
}

/** Whether a line that is seen passes through this place. */
function isDrawn(lines: ReturnType<typeof see>["lines"], which: number, [x, y]: Vec3): boolean {
  return lines.some(({ body: of, a, b }) => {
    if (of !== which) return false;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const size = Math.hypot(dx, dy);
    const along = ((x - a[0]) * dx + (y - a[1]) * dy) / size;
    return Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / size < 1e-6 && along > -1e-6 && along < size + 1e-6;
  });
}

test.each(["front", "side", "plan"] as const)("random scenes from the %s", (view) => {
  let asked = 0;
  let hidden = 0;
  fc.assert(
    fc.property(fc.array(body, { minLength: 2, maxLength: 7 }), (bodies) => {
      const into = motionInto(sights[view], STILL);
      const { lines } = see(bodies, into);
      const seenBodies = bodies.map((each) => moveBody(into, each));
      for (const [which, { edges, pieces }] of seenBodies.entries()) {
        const others = seenBodies.flatMap((each, index) => (index === which ? [] : each.pieces));
        for (const edge of edges) {
          const facing = edge.normals.filter((n) => n[2] > 1e-3).length;
          const away = edge.normals.filter((n) => n[2] < -1e-3).length;
          if (facing + away < 2) continue;
          const candidate = facing === 1 || (facing === 2 && edge.is === "arris");
          for (let k = 0; k < SAMPLES; k++) {
            const p = between(edge.a, edge.b, (k + 0.5) / SAMPLES);
            if (unsure(others, p)) continue;
            const covered = [...others, ...pieces].some((solid) => within(solid, p) > 0);
            asked++;
            if (covered) hidden++;
            // A line behind its own body lies under another of its lines only by chance: ask those that no other can be taken for.
            if (!candidate) continue;
            expect(isDrawn(lines, which, p)).toBe(!covered);
          }
        }
      }
    }),
    { numRuns: RUNS, seed: 20260406, endOnFailure: true },
  );
  expect(asked).toBeGreaterThan(2000);
  expect(hidden).toBeGreaterThan(300);
});
