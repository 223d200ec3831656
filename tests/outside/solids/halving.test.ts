/**
 * Halved rails against manifold-3d, and against figures worked by hand.
 */
import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";
import type { Chair, Rail } from "../../../server/chair/chair.ts";
import type { Convex, Vec3 } from "../../../server/geometry/solid.ts";
import { messagesOf, studied } from "../../check.ts";
import { beyond, hull, lessThan, type Solid, shared, sweepSolids, together } from "./manifold.ts";
import { direction, inner, minus, outer, plus, times, type V } from "./vectors.ts";

afterEach(sweepSolids);

/** Two rails between a front and a back rail, crossing in the middle. */
interface Facts {
  spread: number;
  skew: number;
  one: [number, number];
  other: [number, number];
  /** Heights of their tops. */
  up: [number, number];
  fall: number;
  round?: boolean;
}

const textOf = ({ spread, skew, one, other, up, fall, round }: Facts, more = "") => `
units mm
joint plain { tenon thick 6, long 8 }
joint lap { glue hide }
post front pair { section 44 x 44; foot out 260, back 20; height 430 }
post back pair { section 44 x 44; foot out 260, back 520; height 430 }
rail low-front { across front; section 30 x 150; up 260; joined plain }
rail low-back { across back; section 30 x 150; up 260; joined plain }
rail one {
  from low-front at ${238 - spread} to low-back at ${238 + spread + skew}
  ${round ? `round ${one[0]}` : `section ${one[0]} x ${one[1]}`}
  up ${up[0]}
  fall ${fall}
  joined plain
  halved over other with lap
  ${more}
}
rail other {
  from low-front at ${238 + spread} to low-back at ${238 - spread}
  section ${other[0]} x ${other[1]}
  up ${up[1]}
  joined plain
}
`;

const solid = (pieces: readonly Convex[]): Solid =>
  together(pieces.map(({ points }) => hull(points.map((p: Vec3) => [...p] as V))));

function crossed(facts: Facts): { chair: Chair; one: Rail; other: Rail } {
  const { chair } = studied(textOf(facts));
  return { chair, one: chair.rails.get("one")!, other: chair.rails.get("other")! };
}

const sizes = fc.record({
  spread: fc.integer({ min: 100, max: 180 }),
  skew: fc.integer({ min: -20, max: 20 }),
  one: fc.tuple(fc.integer({ min: 18, max: 30 }), fc.integer({ min: 30, max: 50 })),
  other: fc.tuple(fc.integer({ min: 18, max: 30 }), fc.integer({ min: 30, max: 50 })),
  up: fc.tuple(fc.integer({ min: 196, max: 200 }), fc.integer({ min: 196, max: 200 })),
  fall: fc.integer({ min: -6, max: 6 }),
  round: fc.boolean(),
});

const v = (p: Vec3): V => [...p] as V;

/** A rail's centre line by its own frame: a point of it, its way, and half its size across and up. */
function lineOf(rail: Rail) {
  const [out, up] = [v(rail.outward), v(rail.upward)];
  const [thick, wide] = [rail.thick / 2, rail.wide / 2];
  const at = rail.round ? v(rail.start) : plus(plus(v(rail.start), out, -thick), up, -wide);
  return { at, run: v(rail.along), out, up, thick, wide, round: rail.round !== undefined };
}
type Line = ReturnType<typeof lineOf>;

/** The points where two lines come nearest, each by Cramer's rule. */
function nearest(a: Line, b: Line): [V, V] {
  const square = outer(a.run, b.run);
  const between = minus(b.at, a.at);
  const by = (run: V) => inner(outer(between, run), square) / inner(square, square);
  return [plus(a.at, a.run, by(b.run)), plus(b.at, b.run, by(a.run))];
}

/** Half of what a rail takes up of a line square to it through its middle. */
const reach = ({ round, thick, wide, out, up }: Line, way: V): number =>
  round ? thick : Math.min(thick / Math.abs(inner(way, out)), wide / Math.abs(inner(way, up)));

/** Both rails with their notches, cut anew by the charter's words, and the middle of the height they share. */
function byTheCharter(one: Rail, other: Rail) {
  const [a, b] = [lineOf(one), lineOf(other)];
  const [p, q] = nearest(a, b);
  const square = direction(outer(a.run, b.run));
  const way = square[2] < 0 ? times(square, -1) : square;
  const low = Math.max(-reach(a, way), inner(minus(q, p), way) - reach(b, way));
  const high = Math.min(reach(a, way), inner(minus(q, p), way) + reach(b, way));
  const floor = plus(p, way, (low + high) / 2);
  // A side face leans with its rail: its plane runs along the rail and up its width.
  const faceOf = (host: Line): V => (host.round ? direction(outer(way, host.run)) : host.out);
  const cut = (whole: Solid, host: Line, at: V, out: V) => {
    const face = faceOf(host);
    const between = beyond(
      beyond(whole, plus(at, face, host.thick), times(face, -1)),
      plus(at, face, -host.thick),
      face,
    );
    return lessThan(whole, beyond(between, floor, out));
  };
  return {
    one: cut(solid(one.uncut!.pieces), b, q, times(way, -1)),
    other: cut(solid(other.uncut!.pieces), a, p, way),
    way: direction(outer(faceOf(a), faceOf(b))),
    shared: high - low,
  };
}

describe("rails that are halved over each other", () => {
  it("are as the charter's words cut them, fill each other, and lift apart, on chairs at random", () => {
    let made = 0;
    fc.assert(
      fc.property(sizes, (facts) => {
        const { chair, one, other } = crossed(facts);
        const joint = chair.joints.get("one to other");
        if (!joint || !one.uncut || !other.uncut) return;
        made += 1;
        const wanted = byTheCharter(one, other);
        const [a, b] = [solid(one.body.pieces), solid(other.body.pieces)];
        for (const [found, ours] of [
          [a, wanted.one],
          [b, wanted.other],
        ] as const) {
          expect(lessThan(found, ours).volume()).toBeLessThan(0.01);
          expect(lessThan(ours, found).volume()).toBeLessThan(0.01);
        }
        expect(joint.long).toBeCloseTo(wanted.shared / 2, 6);
        expect(joint.volume).toBeCloseTo(shared(wanted.one, solid(other.uncut.pieces)).volume(), 2);
        for (const lift of [0, 1, 5, 15, 40]) {
          const lifted = a.translate(times(wanted.way, wanted.way[2] < 0 ? -lift : lift));
          expect(shared(lifted, b).volume()).toBeLessThan(0.01);
          lifted.delete();
        }
        sweepSolids();
      }),
      { numRuns: 40, seed: 9 },
    );
    expect(made).toBeGreaterThan(12);
  });

  it("are cut at the middle of the height they share, by hand", () => {
    // 20 × 40 and 24 × 36 with tops at 200 and 198: from 162 to 198 they share 36, cut at 180. 220 across over 500.
    const facts: Facts = { spread: 110, skew: 0, one: [20, 40], other: [24, 36], up: [200, 198], fall: 0 };
    const { chair, one, other } = crossed(facts);
    const joint = chair.joints.get("one to other")!;
    const angle = 2 * Math.atan(220 / 500);
    expect(joint.long).toBeCloseTo(18, 6);
    expect(joint.root[2]).toBeCloseTo(180, 6);
    expect(joint.glueArea).toBeCloseTo((20 * 24) / Math.sin(angle), 4);
    expect(joint.direction[2]).toBeCloseTo(-1, 9);
    // Left under the lower one's notch 180 − 162, over the upper one's 200 − 180.
    expect(joint.mortiseWall).toBeCloseTo(18, 6);
    expect(joint.socketWall).toBeCloseTo(20, 6);
    // The upper one loses all under 180 over the other's thickness, the lower one all over it.
    const floor = (20 * 24) / Math.sin(angle);
    const lost = (rail: Rail) => solid(rail.uncut!.pieces).volume() - solid(rail.body.pieces).volume();
    expect(lost(one)).toBeCloseTo(floor * (180 - 160), 2);
    expect(lost(other)).toBeCloseTo(floor * 18, 2);
    expect(joint.facts.glue?.value).toBe("hide");
  });
});

describe("rails that cannot be halved", () => {
  const good: Facts = { spread: 110, skew: 0, one: [20, 40], other: [24, 36], up: [200, 198], fall: 0 };
  const told = (facts: Facts, more?: string) => messagesOf(textOf(facts, more), "cannot-be-built").join();

  it("are told how flat they cross, how far apart they pass, and how much nearer is enough", () => {
    expect(told(good)).toBe("");
    // 2 atan(40 / 500) is 9.15°.
    expect(told({ ...good, spread: 20 })).toMatch(
      /rail one cannot be halved over other: they cross at 9\.1°, and at least 20° is needed/,
    );
    expect(told({ ...good, spread: -110 - 60, skew: 0 })).toBe("");
    const apart = told({ ...good, up: [216, 198] });
    expect(apart).toMatch(
      /their centre lines pass 16 mm apart, and half a thickness, 10 mm, is allowed; bring their heights 6 mm nearer together/,
    );
    expect(told({ ...good, up: [210, 198] })).toBe("");
    expect(told({ ...good, up: [250, 198] })).toMatch(/one passes 12 mm clear above the other/);
  });

  it("are told when both say so", () => {
    const both = textOf(good).replace(/(rail other \{[^}]*)\}/, "$1  halved over one\n}");
    expect(messagesOf(both, "cannot-be-built").join()).toContain("say it in one of the two");
    expect(studied(both).chair.joints.has("one to other")).toBe(true);
  });
});
