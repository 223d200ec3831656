import { describe, expect, test } from "vitest";
import { see } from "../../../server/drawing/hidden-lines.ts";
import { offsetsApart } from "../../../server/drawing/pictorial/apart.ts";
import { type Eye, eyes, sightFrom, spokenEye } from "../../../server/drawing/pictorial/eye.ts";
import { drawPictorial } from "../../../server/drawing/pictorial/pictorial.ts";
import { pictorialToSvg } from "../../../server/drawing/pictorial/svg.ts";
import { sceneOf } from "../../../server/drawing/scene.ts";
import { motionInto, sights } from "../../../server/drawing/sight.ts";
import { lineThrough } from "../../../server/geometry/convex.ts";
import { inverse, movePoint } from "../../../server/geometry/motion.ts";
import type { Convex } from "../../../server/geometry/solid.ts";
import { dot } from "../../../server/geometry/vec.ts";
import { sampleChair } from "./chairs.ts";

const DEGREE = Math.PI / 180;
const stool = sampleChair("joined-stool");

describe("seen from any side", () => {
  test("the named sides are the three views", () => {
    expect(sightFrom(eyes.front!)).toEqual(sights.front);
    expect(sightFrom(eyes.left!)).toEqual(sights.side);
    expect(sightFrom(eyes.above!)).toEqual(sights.plan);
  });

  test("directions are unit and square to each other, right-handed", () => {
    for (const eye of Object.values(eyes)) {
      const { right, up, towards } = sightFrom(eye);
      for (const d of [right, up, towards]) expect(dot(d, d)).toBeCloseTo(1, 12);
      expect(dot(right, up)).toBeCloseTo(0, 12);
      expect(dot(right, towards)).toBeCloseTo(0, 12);
      expect(right[0] * up[1] - right[1] * up[0]).toBeCloseTo(towards[2], 12);
    }
  });

  test("it says from where", () => {
    expect(spokenEye(eyes["front-left"]!)).toBe("from the front left, 25° above level");
    expect(spokenEye(eyes.below!)).toBe("from below");
    expect(spokenEye({ round: 50 * DEGREE, above: -10 * DEGREE })).toBe(
      "from 5° on from the front left, 10° below level",
    );
  });

  test("hidden lines of turned views against rays cast at the solids, at three places of every line", () => {
    const parts = sceneOf(stool);
    const solids = parts.flatMap(({ body }) => body.pieces);
    let [shown, hidden] = [0, 0];
    for (const eye of [eyes["front-left"]!, { round: 200 * DEGREE, above: 40 * DEGREE }] as Eye[]) {
      const into = motionInto(sightFrom(eye), stool.stance);
      const { lines } = see(
        parts.map(({ body }) => body),
        into,
      );
      const seenAt = (u: number, v: number) =>
        lines.some(({ a, b }) => {
          const run = [b[0] - a[0], b[1] - a[1]] as const;
          const size = Math.hypot(...run);
          const along = ((u - a[0]) * run[0] + (v - a[1]) * run[1]) / size;
          const off = Math.abs((u - a[0]) * run[1] - (v - a[1]) * run[0]) / size;
          return off < 0.02 && along > -0.1 && along < size + 0.1;
        });
      for (const { body } of parts)
        for (const { a, b, is, normals } of body.edges) {
          const faces = normals.map((n) => dot(n, into.rotation[2]) > 1e-3);
          if (is !== "arris" || !faces.some(Boolean)) continue;
          for (const share of [0.21, 0.5, 0.83]) {
            const p = [0, 1, 2].map((k) => a[k]! + (b[k]! - a[k]!) * share) as unknown as typeof a;
            const depth = coverAt(solids, p, into.rotation[2]);
            const [u, v] = movePoint(into, p);
            if (depth > 0.5) {
              hidden += 1;
              // Another line may be seen just there; only the middle of the wood is sure.
              continue;
            }
            if (depth > 0.001) continue;
            shown += 1;
            expect(seenAt(u, v), `${u}, ${v}`).toBe(true);
          }
        }
      // The other way round: nothing that is drawn lies behind wood.
      const out = inverse(into);
      for (const { body, a, b } of lines) {
        const middle: [number, number] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        const own = parts[body]!.body.edges.some((edge) => {
          const [p, q] = [movePoint(into, edge.a), movePoint(into, edge.b)];
          const size = Math.hypot(q[0] - p[0], q[1] - p[1]);
          if (size < 0.05) return false;
          const share = ((middle[0] - p[0]) * (q[0] - p[0]) + (middle[1] - p[1]) * (q[1] - p[1])) / size ** 2;
          const off =
            Math.abs((middle[0] - p[0]) * (q[1] - p[1]) - (middle[1] - p[1]) * (q[0] - p[0])) / size;
          if (off > 0.02 || share < 0 || share > 1) return false;
          const at = movePoint(out, [middle[0], middle[1], p[2] + (q[2] - p[2]) * share]);
          return coverAt(solids, at, into.rotation[2]) < 0.1;
        });
        expect(own, `${middle}`).toBe(true);
      }
    }
    expect(shown).toBeGreaterThan(100);
    expect(hidden).toBeGreaterThan(50);
  });

  test("tenons are dashed where the wood hides them", () => {
    const svg = pictorialToSvg(drawPictorial(stool, { eye: eyes["front-left"]!, joints: true }));
    expect(svg).toMatch(/class="tenon"[^>]* stroke-dasharray/);
    expect(pictorialToSvg(drawPictorial(stool, { eye: eyes["front-left"]! }))).not.toMatch(/class="tenon"/);
  });

  test("taken apart, no tenon is left in its mortise", () => {
    const offsets = offsetsApart(stool);
    for (const { part, entered, direction, long, tenon } of stool.joints.values()) {
      if (tenon.length === 0) continue;
      const [own, other] = [offsets.get(part)!, offsets.get(entered.name)!];
      const out = -own.reduce((sum, v, k) => sum + (v - other[k]!) * direction[k]!, 0);
      expect(out, `${part} out of ${entered.name}`).toBeGreaterThan(long);
    }
    const whole = drawPictorial(stool, { eye: eyes["front-left"]! });
    const apart = drawPictorial(stool, { eye: eyes["front-left"]!, apart: 1 });
    expect(apart.width).toBeGreaterThan(whole.width);
    expect(apart.caption).toBe("From the front left, 25° above level, taken apart.");
  });
});

/** How deep wood lies before a place, along the line towards the eye, mm. */
function coverAt(
  solids: readonly Convex[],
  p: readonly [number, number, number],
  towards: readonly [number, number, number],
): number {
  let deepest = 0;
  for (const solid of solids) {
    const through = lineThrough(solid, p, towards);
    if (through) deepest = Math.max(deepest, through[1] - Math.max(0, through[0]));
  }
  return deepest;
}
