/**
 * Volumes, weights and centres of gravity: by hand where they are known, and of every part of every sample against manifold-3d 3.5.4
 * (Apache-2.0), with the centroid added up here from its triangles.
 */
import { afterEach, describe, expect, it } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import { movePoint } from "../../../server/geometry/motion.ts";
import type { Convex } from "../../../server/geometry/solid.ts";
import { density } from "../../../server/timber/density.ts";
import { speciesOf } from "../../../server/timber/species.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studied } from "../../check.ts";
import { sampleNames, studiedSample } from "../samples.ts";
import { hull, lessThan, type Solid, sweepSolids, together } from "../solids/manifold.ts";
import type { V } from "../solids/vectors.ts";

afterEach(sweepSolids);

const ash = density(speciesOf("white-ash")!, 12);
const post = (name: string, out: number, back: number, height: number, section = 40) =>
  `post ${name} pair {\n  section ${section} x ${section}\n  foot out ${out}, back ${back}\n  height ${height}\n}\n`;

describe("known bodies", () => {
  it("a block: its weight is size times density, its centre in its middle", () => {
    const { chair } = studied(
      "timber white-ash moisture 12%\npost block {\n  section 200 x 300\n  foot out 0, back 150\n  height 400\n}\n",
    );
    const { mass, centre, unknown } = weigh(chair);
    expect(unknown).toEqual([]);
    expect(mass).toBeCloseTo((ash * 200 * 300 * 400) / 1e9, 9);
    expect(centre[0]).toBeCloseTo(0, 9);
    expect(centre[1]).toBeCloseTo(150, 9);
    expect(centre[2]).toBeCloseTo(200, 9);
    // It goes over when the line from its edge through its centre stands upright: atan(150/200), and atan(100/200) sideways.
    expect(chair.values.get("tip.back")!.number).toBeCloseTo(Math.atan(150 / 200), 9);
    expect(chair.values.get("tip.front")!.number).toBeCloseTo(Math.atan(150 / 200), 9);
    expect(chair.values.get("tip.side")!.number).toBeCloseTo(Math.atan(100 / 200), 9);
  });

  it("a maker's own density counts in place of the table's", () => {
    const { chair } = studied(
      "timber bog-oak density 1000\npost block {\n  section 100 x 100\n  foot out 0, back 0\n  height 100\n}\n",
    );
    expect(weigh(chair).mass).toBeCloseTo(1, 9);
  });

  it("four legs and the rails between them: tenons fill their mortises, so each rail counts from shoulder to shoulder", () => {
    const joint = "joint j {\n  tenon thick 8, long 20\n  shoulders top 10, bottom 6\n}\n";
    const rail = (name: string, course: string) =>
      `rail ${name} {\n  ${course}\n  section 20 x 60\n  up 400\n  joined j\n}\n`;
    const { chair } = studied(
      `timber white-ash moisture 12%\n${joint}${post("front", 200, 0, 430)}${post("back", 200, 360, 830)}` +
        rail("front-rail", "across front") +
        rail("back-rail", "across back") +
        rail("side pair", "from front to back"),
    );
    const { mass, centre } = weigh(chair);
    // Legs 40 × 40: 430 and 830 high. Rails 20 × 60, 400 − 40 and 360 − 40 long, their middles 370 up.
    const bodies = [
      { volume: 2 * 40 * 40 * 430, back: 0, up: 215 },
      { volume: 2 * 40 * 40 * 830, back: 360, up: 415 },
      { volume: 20 * 60 * 360, back: 0, up: 370 },
      { volume: 20 * 60 * 360, back: 360, up: 370 },
      { volume: 2 * 20 * 60 * 320, back: 180, up: 370 },
    ];
    const volume = bodies.reduce((sum, each) => sum + each.volume, 0);
    const mean = (of: "back" | "up") =>
      bodies.reduce((sum, each) => sum + each.volume * each[of], 0) / volume;
    expect(mass).toBeCloseTo((ash * volume) / 1e9, 9);
    expect(centre[0]).toBeCloseTo(0, 9);
    expect(centre[1]).toBeCloseTo(mean("back"), 6);
    expect(centre[2]).toBeCloseTo(mean("up"), 6);
  });
});

const solidOf = ({ points }: Convex): Solid => hull(points.map((p) => [...p] as V));

/** Volume and centroid of a solid's mesh: the sum of the tetrahedra from the origin. */
function measured(solid: Solid): { volume: number; centroid: V } {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  const corner = (k: number): V =>
    [0, 1, 2].map((axis) => vertProperties[triVerts[k]! * numProp + axis]!) as V;
  let volume = 0;
  const moment = [0, 0, 0];
  for (let k = 0; k < triVerts.length; k += 3) {
    const [a, b, c] = [corner(k), corner(k + 1), corner(k + 2)];
    const six =
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
    volume += six / 6;
    for (const axis of [0, 1, 2] as const) moment[axis]! += (six / 24) * (a[axis] + b[axis] + c[axis]);
  }
  return { volume, centroid: moment.map((each) => each / volume) as V };
}

/** A member with its own tenons, less the mortises cut in it, scribed to the posts and turned rails it enters and planed to a board seat. */
function memberOf(chair: Chair, name: string): Solid {
  const member = chair.members.get(name);
  const joints = [...chair.joints.values()];
  const tenons = (some: typeof joints) =>
    some.flatMap(({ tenon, haunch }) => (haunch ? [...tenon, haunch] : tenon)).map(solidOf);
  // One after another: many touching solids worked out at once may trip over a shared plane.
  const workedOut = (solid: Solid) => {
    solid.volume();
    return solid;
  };
  const body = together(member!.body.pieces.map(solidOf));
  // A stick goes through a bow as it is.
  const own = joints.filter(({ part, kind }) => part === name && kind !== "passing");
  const turned = ({ entered }: (typeof own)[number]) => {
    const rail = chair.rails.get(entered.name) ?? chair.bows.get(entered.name);
    return rail?.round === undefined ? undefined : rail.body;
  };
  const posts = own.flatMap((joint) => chair.posts.get(joint.entered.name)?.body ?? turned(joint) ?? []);
  const scribed = posts.reduce(
    (rest, post) => workedOut(lessThan(rest, together(post.pieces.map(solidOf)))),
    body,
  );
  const mortises = tenons(joints.filter(({ entered }) => entered.name === name));
  const made = mortises.reduce(
    (rest, cut) => workedOut(lessThan(rest, cut)),
    together([scribed, ...tenons(own)]),
  );
  const post = chair.posts.get(name);
  const seatHeight = chair.values.get("seat.height")?.number ?? 0;
  // What of the tops of rails and of the posts under it stands up into a board seat is planed off.
  const below = chair.rails.has(name) || (post && post.topHeight < seatHeight);
  return chair.seat?.design.kind === "board" && below
    ? lessThan(made, together(chair.seat.body.pieces.map(solidOf)))
    : made;
}

describe.each(sampleNames)("every part of %s", (name) => {
  const { chair } = studiedSample(name);
  it("has manifold's volume and centroid, and so has the whole", () => {
    const parts = [...weigh(chair).parts].filter(([part]) => part !== "seat");
    expect(parts.length).toBe(chair.members.size - (chair.seat ? 1 : 0));
    let [mass, other] = [0, 0];
    const [moment, otherMoment] = [
      [0, 0, 0],
      [0, 0, 0],
    ];
    for (const [part, { volume, centre, density: perVolume = 0, mass: own }] of parts) {
      const found = measured(memberOf(chair, part));
      expect(Math.abs(found.volume - volume) / volume, part).toBeLessThan(2e-3);
      const at = movePoint(chair.stance, found.centroid);
      expect((found.volume * perVolume) / 1e9 / own, part).toBeCloseTo(found.volume / volume, 9);
      for (const axis of [0, 1, 2] as const) {
        expect(Math.abs(at[axis] - centre[axis]), part).toBeLessThan(0.8);
        moment[axis]! += own * centre[axis];
        otherMoment[axis]! += found.volume * perVolume * at[axis];
      }
      mass += own;
      other += found.volume * perVolume;
      sweepSolids();
    }
    expect(Math.abs(other / 1e9 / mass - 1)).toBeLessThan(2e-4);
    for (const axis of [0, 1, 2])
      expect(Math.abs(otherMoment[axis]! / other - moment[axis]! / mass)).toBeLessThan(0.05);
  });
});
