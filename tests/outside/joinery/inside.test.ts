/**
 * Tenons inside their posts on random chairs and on every sample against manifold-3d 3.5.4 (Apache-2.0), an independent library of exact
 * set operations on solids: what tenons share and the wood between them, the wood beside a mortise, and the wood that is left of a
 * post. The number of chairs comes from SEATWRIGHT_RUNS, 80 without it.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { afterEach, expect, test } from "vitest";
import type { Chair, Joint, Post } from "../../../server/chair/chair.ts";
import { volume } from "../../../server/geometry/convex.ts";
import type { Body, Convex } from "../../../server/geometry/solid.ts";
import { meetingsInside, mortiseSolids } from "../../../server/joinery/inside.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studied } from "../../check.ts";
import { beyond, hull, lessThan, type Solid, shared, sweepSolids, together } from "../solids/manifold.ts";
import { inner, times, type V } from "../solids/vectors.ts";
import { chairs } from "./random-chairs.ts";

const RUNS = Number(process.env.SEATWRIGHT_RUNS ?? 80);
const folder = new URL("../../../samples/", import.meta.url);
const samples = Object.fromEntries(
  readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), "utf8")]),
);

afterEach(sweepSolids);

const solidOf = ({ points }: Convex): Solid => hull(points.map((p) => [...p] as V));
const mortise = (joint: Joint): Solid => together(mortiseSolids(joint).map(solidOf));
/** Set operations wait until something is asked of their outcome. */
const workedOut = (solid: Solid): Solid => {
  solid.volume();
  return solid;
};
const whole = ({ pieces }: Body): Solid => together(pieces.map(solidOf));

/** Overlaps and walls of all that meets inside one member. Manifold keeps its corners in single precision. */
function meetingsHold(chair: Chair): void {
  for (const { a, b, overlap, wall } of meetingsInside(chair)) {
    const [one, other] = [mortise(a), mortise(b)];
    const label = `${a.name}, ${b.name}`;
    expect(Math.abs(shared(one, other).volume() - overlap), label).toBeLessThan(0.05 + 1e-4 * overlap);
    if (overlap === 0) expect(Math.abs(one.minGap(other, 100) - wall), label).toBeLessThan(0.01);
  }
}

/** What is left of each post, against its wood less what is in the mortises: overlaps once, and nothing for what lies outside. */
function woodHolds(chair: Chair): void {
  for (const post of chair.posts.values()) {
    const cut = [...chair.joints.values()].filter(({ entered }) => entered.name === post.name);
    if (cut.length === 0) continue;
    const solid = whole(post.body);
    const inside = cut.map((joint) => shared(mortise(joint), solid));
    // One by one: mitred ends touch in a plane, and a whole tree of operations worked out at once may trip over that.
    const left = inside.reduce((rest, one) => workedOut(lessThan(rest, workedOut(one))), solid).volume();
    const solids = cut.flatMap(mortiseSolids);
    // Only where each mortise lies within the post, and none meets another, does plain arithmetic do.
    const asDrawn = cut.every(
      (joint, k) => Math.abs(inside[k]!.volume() - joint.volume) < 1e-3 * joint.volume,
    );
    const apart = together(inside).volume() > inside.reduce((sum, one) => sum + one.volume(), 0) * (1 - 1e-6);
    if (!asDrawn || !apart || cut.some(({ shape }) => shape === "round")) continue;
    const own = post.body.pieces.reduce((sum, piece) => sum + volume(piece), 0);
    const taken = solids.reduce((sum, one) => sum + volume(one), 0);
    // Single precision: a hundredth of a millimetre over the faces of a post, more where tenons end in its far face.
    const flush = cut.some(({ shape, facts }) => shape === "forked" || facts.through);
    expect(Math.abs(left / (own - taken) - 1), post.name).toBeLessThan(flush ? 2e-4 : 5e-5);
    counted.wood += 1;
  }
}

const counted = { wood: 0, walls: 0, out: 0 };

/** The least wood beside a mortise: from the tenon to what lies beyond the faces that run along the post at its sides. */
function wallsHold(chair: Chair, post: Post): void {
  const [piece] = post.body.pieces;
  const length = post.pieces[0]?.direction;
  if (!piece || !length || post.body.pieces.length !== 1) return;
  for (const joint of chair.joints.values()) {
    if (joint.entered.name !== post.name || joint.tenon.length === 0) continue;
    // Mitred ends are narrower than the mortise that the wall is calculated for; a fork may lie open.
    if (joint.facts.mitre || joint.shape === "round" || joint.shape === "forked") continue;
    const sides = piece.planes.filter(
      ({ normal }) =>
        Math.abs(inner([...normal], [...length])) < Math.SQRT1_2 &&
        Math.abs(inner([...normal], [...joint.direction])) < Math.SQRT1_2,
    );
    expect(sides.length, joint.name).toBe(2);
    const space = around(joint);
    const tenon = together(joint.tenon.map(solidOf));
    const gaps = sides.map(({ normal, offset }) =>
      tenon.minGap(beyond(space, times([...normal], offset), [...normal]), 60),
    );
    const gap = Math.min(...gaps);
    if (joint.mortiseWall > 0.05) {
      expect(Math.abs(gap - joint.mortiseWall), `${joint.name}: wall`).toBeLessThan(0.01);
      counted.walls += 1;
    } else if (joint.mortiseWall < -0.05) {
      expect(gap, `${joint.name}: out`).toBe(0);
      counted.out += 1;
    }
  }
}

/** Space about a joint, clear of the post's ends. */
function around({ root }: Joint): Solid {
  const corners: V[] = [];
  for (const x of [-90, 90])
    for (const y of [-90, 90])
      for (const z of [-90, 90]) corners.push([root[0] + x, root[1] + y, root[2] + z]);
  return hull(corners);
}

test(`${RUNS} chairs: what tenons share, the wood between, beside and left`, () => {
  fc.assert(
    fc.property(chairs, (text) => {
      const { chair } = studied(text);
      meetingsHold(chair);
      woodHolds(chair);
      for (const post of chair.posts.values()) wallsHold(chair, post);
      sweepSolids();
    }),
    { numRuns: RUNS, seed: 4 },
  );
  expect(counted.walls).toBeGreaterThan(RUNS / 2);
  expect(counted.wood).toBeGreaterThan(RUNS / 4);
  expect(counted.out).toBeGreaterThan(0);
}, 3_600_000);

test.each(Object.keys(samples))(
  "%s: what tenons share, the wood between and left, and what each part weighs",
  (name) => {
    const { chair } = studied(samples[name]!, samples);
    meetingsHold(chair);
    woodHolds(chair);
    for (const post of chair.posts.values()) wallsHold(chair, post);
    const { parts } = weigh(chair);
    for (const post of chair.posts.values()) {
      const own = [...chair.joints.values()].filter(({ part }) => part === post.name);
      const cut = [...chair.joints.values()].filter(({ entered }) => entered.name === post.name);
      const stick = together([whole(post.body), ...own.map(mortise)]);
      const left = lessThan(stick, together(cut.length ? cut.map(mortise) : [hull([])])).volume();
      const told = parts.get(post.name)?.volume;
      // A mortise is weighed whole: also what of it lies before a turned post, or stands proud of one that goes through.
      if (told !== undefined) expect(Math.abs(told / left - 1), post.name).toBeLessThan(2e-3);
    }
  },
);
