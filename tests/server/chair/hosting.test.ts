import { describe, expect, it } from "vitest";
import type { Chair, Member } from "../../../server/chair/chair.ts";
import { hostOf, woodOf } from "../../../server/chair/joints/hosting.ts";
import { jointAt } from "../../../server/chair/joints/joint.ts";
import type { JointSite } from "../../../server/chair/joints/joint-site.ts";
import { height } from "../../../server/geometry/plane.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { along, dot, negate, norm, sub } from "../../../server/geometry/vec.ts";
import { given } from "./fixtures.ts";
import { chairOf } from "./from-text.ts";

/** A stool of square legs with a board on it, 360 wide and deep over its rails, 30 thick. */
const stool = chairOf(`
units mm
timber white-ash
joint plain { tenon thick 8, long 20 }
post leg pair { section 40 x 40; foot out 160, back 20; height 400 }
post rear pair { section 40 x 40; foot out 160, back 340; height 400 }
rail front { across leg; section 20 x 60; up 400; face flush; joined plain }
rail back { across rear; section 20 x 60; up 400; face flush; joined plain }
rail side pair { from leg to rear; section 20 x 60; up 400; face flush; joined plain }
rail high pair { from leg to rear; round 24; up 150; joined plain }
rail low { across rear; section 20 x 40; up 200; face flush; joined plain }
slat bars { from low to back; count 2 even; section 8 x 20; joined plain }
block corner { in leg; along 60; thick 20 }
seat board { on front, back, side; thick 30 }
`);

const everyMember = (chair: Chair): [string, Member][] => [...chair.members];

describe("members", () => {
  it("are kept once, in order, and the views by kind hold the very same ones", () => {
    const { posts, rails, slats, blocks, seat } = stool;
    const views = [posts, rails, slats, blocks].flatMap((view) => [...view.values()] as Member[]);
    expect([...views, seat]).toEqual([...stool.members.values()]);
    for (const member of views) expect(stool.members.get(member.name)).toBe(member);
    expect([...stool.members.keys()]).toEqual([
      "leg.left",
      "leg.right",
      "rear.left",
      "rear.right",
      "front",
      "back",
      "side.left",
      "side.right",
      "high.left",
      "high.right",
      "low",
      "bars.1",
      "bars.2",
      "corner.left",
      "corner.right",
      "seat",
    ]);
  });

  it.each(everyMember(stool))(
    "%s has a timber, a centre line in its wood and a unit grain along it",
    (_, part) => {
      expect(part.timber?.species).toBe("white-ash");
      expect(norm(part.grain)).toBeCloseTo(1, 12);
      const [first, last] = [part.centreLine[0]!, part.centreLine.at(-1)!];
      const run = sub(last, first);
      expect(dot(run, part.grain) / norm(run)).toBeGreaterThan(0.999);
      const middle = along(first, run, 0.5);
      const inside = part.body.pieces.some(({ planes }) =>
        planes.every((plane) => height(plane, middle) < 1e-6),
      );
      expect(inside).toBe(true);
      for (const { plane } of part.faces) {
        expect(height(plane, middle)).toBeLessThan(0);
        expect(Math.abs(dot(plane.normal, part.grain))).toBeLessThan(1e-6);
      }
    },
  );
});

/** A peg of 16, 20 long, let square into a member's face at a point on it. */
function peg(member: Member, face: { at: Vec3; normal: Vec3 }) {
  const inward = negate(face.normal);
  const out: Vec3 = Math.abs(inward[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const up: Vec3 = [
    inward[1] * out[2] - inward[2] * out[1],
    inward[2] * out[0] - inward[0] * out[2],
    inward[0] * out[1] - inward[1] * out[0],
  ];
  const host = hostOf(member);
  const site: JointSite = {
    part: "peg",
    end: "end",
    kind: "rail",
    entered: host.entered,
    chosen: { facts: { round: given({ diameter: 16, long: { mm: 20 } }) }, at: { start: 0, end: 0 } },
    origin: face.at,
    inward,
    out,
    up,
    thick: 16,
    wide: 16,
    stuff: 16,
    round: 16,
    shoulder: host.face(face.normal, face.at),
    wood: host.wood(face.at),
    own: host.wood(face.at),
  };
  return jointAt(site, []);
}

describe("every kind of member hosts a joint", () => {
  const { seat } = stool;
  const top = seat!.plane.offset;

  it("a post: 12 beside a peg of 16 in the middle of a face of 40", () => {
    const joint = peg(stool.posts.get("leg.left")!, { at: [180, 20, 250], normal: [1, 0, 0] });
    expect(joint.mortiseWall).toBeCloseTo(12, 6);
    expect(joint.depthThere).toBeCloseTo(40, 6);
  });

  it("a seat from below: the wood is measured to the nearer edge, and to its end grain too", () => {
    // Its outline is the legs' outside faces: 180 out, from 0 to 360 back.
    const nearSide = peg(seat!, { at: [140, 180, top - 30], normal: [0, 0, -1] });
    expect(nearSide.entered).toEqual({ kind: "seat", name: "seat" });
    expect(nearSide.mortiseWall).toBeCloseTo(180 - 140 - 8, 6);
    expect(nearSide.depthThere).toBeCloseTo(30, 6);
    expect(peg(seat!, { at: [0, 25, top - 30], normal: [0, 0, -1] }).mortiseWall).toBeCloseTo(25 - 8, 6);
  });

  it("a seat from above and in its edge", () => {
    expect(peg(seat!, { at: [100, 300, top], normal: [0, 0, 1] }).depthThere).toBeCloseTo(30, 6);
    const edge = peg(seat!, { at: [180, 180, top - 15], normal: [1, 0, 0] });
    expect(edge.mortiseWall).toBeCloseTo(15 - 8, 6);
  });

  it("breaks out of a seat's edge by as much as it lies outside", () => {
    expect(peg(seat!, { at: [175, 180, top - 30], normal: [0, 0, -1] }).mortiseWall).toBeCloseTo(-3, 6);
  });

  it.each(everyMember(stool))("%s tells the grain and the depth under each of its faces", (_, member) => {
    for (const { plane } of member.faces) {
      const middle = along(member.centreLine[0]!, sub(member.centreLine.at(-1)!, member.centreLine[0]!), 0.5);
      const at = along(middle, plane.normal, -height(plane, middle));
      const wood = woodOf(member, at);
      expect(dot(wood.grain, member.grain)).toBeGreaterThan(0.999);
      expect(wood.depthAlong(at, negate(plane.normal))).toBeGreaterThan(5);
      const found = hostOf(member).face(plane.normal, at);
      expect(dot(found.normal, plane.normal)).toBeGreaterThan(0.999);
      expect(Math.abs(height(found, at))).toBeLessThan(1e-6);
    }
  });
});
