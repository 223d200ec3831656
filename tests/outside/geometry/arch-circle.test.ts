import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildMembers } from "../../../server/chair/members.ts";
import { arcOver } from "../../../server/chair/rails/arc.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { cross, distance, norm, sub } from "../../../server/geometry/vec.ts";
import { boathouse } from "../../server/chair/fixtures.ts";

/** Circumradius of a triangle, R = abc / 4K (Euclid's circle through three points): independent of the arch's own formula. */
function circumradius(a: Vec3, b: Vec3, c: Vec3): number {
  const area = norm(cross(sub(b, a), sub(c, a))) / 2;
  return (distance(a, b) * distance(b, c) * distance(c, a)) / (4 * area);
}

describe("the circle through an arch", () => {
  it("has R = c²/8s + s/2, the sagitta formula (school geometry, worked)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 900, noNaN: true }),
        fc.double({ min: 1, max: 45, noNaN: true }),
        (chord, rise) => {
          const arc = arcOver(chord, rise)!;
          expect(arc.radius).toBeCloseTo((chord * chord) / (8 * rise) + rise / 2, 9);
          const radius = circumradius([0, 0, 0], [chord / 2, rise, 0], [chord, 0, 0]);
          expect(arc.radius / radius).toBeCloseTo(1, 9);
          expect(arc.rise(chord / 2)).toBeCloseTo(rise, 9);
          expect(arc.length).toBeGreaterThan(chord);
        },
      ),
    );
  });

  it("is the one the mess chair's front rail is cut to: 14 in 370 is a radius of 1229.3", () => {
    const rail = buildMembers(boathouse()).rails.get("seat-front")!;
    const radius = (370 * 370) / (8 * 14) + 14 / 2;
    expect(radius).toBeCloseTo(1229.32, 2);
    const lower = rail.body.pieces
      .flatMap((piece) => piece.points)
      .filter((p) => p[2] < 400 && Math.abs(p[1] - 3) < 1e-6);
    expect(lower.length).toBeGreaterThan(20);
    for (const p of lower)
      expect(distance([p[0], 0, p[2]], [0, 0, 428 - 70 + 14 - radius])).toBeCloseTo(radius, 6);
  });

  it("bows the mess chair's crest 22 back, outer and inner faces about one centre", () => {
    const crest = buildMembers(boathouse()).rails.get("crest")!;
    const chord = crest.length;
    const radius = (chord * chord) / (8 * 22) + 11;
    expect(crest.roundLength).toBeCloseTo(2 * radius * Math.asin(chord / 2 / radius), 9);
    const middle = crest.start.map((v, i) => (v + crest.end[i]!) / 2) as unknown as Vec3;
    const centre = middle.map((v, i) => v - (radius - 22) * crest.outward[i]!) as unknown as Vec3;
    const out = (p: Vec3) =>
      norm(sub(sub(p, centre), crest.upward.map((u) => u * dotUp(p)) as unknown as Vec3));
    const dotUp = (p: Vec3) => sub(p, centre).reduce((sum, v, i) => sum + v * crest.upward[i]!, 0);
    const inner = crest.body.pieces.slice(1, -1).flatMap((piece) => piece.points);
    for (const p of inner) {
      const r = out(p);
      expect(Math.min(Math.abs(r - radius), Math.abs(r - (radius - 20)))).toBeLessThan(1e-6);
    }
  });
});
