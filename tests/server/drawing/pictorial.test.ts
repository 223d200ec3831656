import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { offsetsApart } from "../../../server/drawing/pictorial/apart.ts";
import { type Eye, eyes, sightFrom, spokenEye } from "../../../server/drawing/pictorial/eye.ts";
import { drawPictorial } from "../../../server/drawing/pictorial/pictorial.ts";
import { pictorialToSvg } from "../../../server/drawing/pictorial/svg.ts";
import { sights } from "../../../server/drawing/sight.ts";
import { dot } from "../../../server/geometry/vec.ts";
import { chairs } from "../../outside/joinery/random-chairs.ts";
import { sampleNames } from "../../outside/samples.ts";
import { chairOf, sampleChair } from "./chairs.ts";
import { againstRays } from "./rays.ts";

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
    let [shown, hidden] = [0, 0];
    for (const eye of [eyes["front-left"]!, { round: 200 * DEGREE, above: 40 * DEGREE }] as Eye[]) {
      const found = againstRays(stool, eye);
      expect(found.wrong).toEqual([]);
      shown += found.shown;
      hidden += found.hidden;
    }
    expect(shown).toBeGreaterThan(100);
    expect(hidden).toBeGreaterThan(50);
  });

  /** All samples from so many sides in `npm run prove views`; else one of them from one. */
  const views = Number(process.env.SEATWRIGHT_RUNS ?? 1);
  const names = process.env.SEATWRIGHT_RUNS ? sampleNames : ["small-mess-chair"];

  test.each(names)("%s from random sides against rays", { timeout: views * 120_000 }, (name) => {
    const chair = sampleChair(name);
    let looked = 0;
    fc.assert(
      fc.property(fc.integer({ min: -180, max: 180 }), fc.integer({ min: -80, max: 85 }), (round, above) => {
        const { wrong, shown } = againstRays(chair, { round: round * DEGREE, above: above * DEGREE }, 7);
        expect(wrong).toEqual([]);
        looked += shown;
      }),
      { numRuns: views, seed: 13 },
    );
    expect(looked).toBeGreaterThan(10 * views);
  });

  test("random chairs from random sides against rays", { timeout: views * 120_000 }, () => {
    let looked = 0;
    fc.assert(
      fc.property(
        chairs,
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: -80, max: 85 }),
        (text, round, above) => {
          const { wrong, shown } = againstRays(
            chairOf(text),
            { round: round * DEGREE, above: above * DEGREE },
            5,
          );
          expect(wrong).toEqual([]);
          looked += shown;
        },
      ),
      { numRuns: views > 1 ? 4 * views : 2, seed: 13 },
    );
    expect(looked).toBeGreaterThan(10 * views);
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
