import { describe, expect, it } from "vitest";
import type { Joint } from "../../../server/chair/chair.ts";
import { volume } from "../../../server/geometry/convex.ts";
import { pegsOf } from "../../../server/joinery/pegs.ts";
import { messagesOf, studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

/** A rail 22 × 60 at a post 40 × 40, its middle on the post's. */
function jointOf(joint: string, front?: string): Joint {
  const text = frame({ joint, ...(front ? { front } : {}) }).replace("  mitre\n", "");
  const found = studied(text).chair.joints.get("seat-side.left to front.left");
  if (!found) throw new Error("no joint");
  return found;
}

const heights = ({ tenon }: Joint): [number, number][] =>
  tenon.map(({ points }) => {
    const up = points.map((p) => p[2]);
    return [Math.min(...up), Math.max(...up)];
  });

describe("twin tenons", () => {
  // 60 less 10 and 6 are 44; a gap of 12 leaves two of 16, from 420 − 10 down.
  const joint = jointOf("tenon thick 8, long 26\ntwin gap 12");

  it("are two, one above the other, with the gap between", () => {
    expect(heights(joint).map((pair) => pair.map((z) => Math.round(z * 1e6) / 1e6))).toEqual([
      [394, 410],
      [366, 382],
    ]);
    expect(joint.volume).toBeCloseTo(2 * 8 * 16 * 26, 6);
    expect(joint.tenon.reduce((sum, solid) => sum + volume(solid), 0)).toBeCloseTo(joint.volume, 6);
  });

  it("are glued at four cheeks", () => {
    expect(joint.glueArea).toBeCloseTo(4 * 16 * 26, 6);
  });

  it("each have their pegs", () => {
    const pegs = pegsOf(jointOf("tenon thick 8, long 26\ntwin gap 12\npeg 5"));
    expect(pegs?.middles.map((p) => Math.round(p[2]))).toEqual([402, 374]);
  });

  it("pass a tenon that goes between them", () => {
    // The front rail's tenon would meet one tenon of the side rail; between the two there is room for it.
    const low = frame({ joint: "tenon thick 8, long 26\nshoulders top 4, bottom 4\ntwin gap 24" })
      .replace("  mitre\n", "")
      .replace(/(rail seat-front \{\n {2}across front\n {2}section 22 x )60(\n {2}up )420/, "$120$2400");
    const own =
      low.replace(/(rail seat-front[^}]*)joined plain/, "$1joined narrow") +
      "joint narrow {\n  tenon thick 8, wide 14, long 26\n}\n";
    expect(messagesOf(own, "tenons-meet").join()).not.toContain("inside front");
    expect(messagesOf(own.replace("  twin gap 24\n", ""), "tenons-meet").join()).toContain("inside front");
  });
});

describe("dowels", () => {
  // Two of 10 over the 60 of the rail: at a quarter and three quarters; half of 50 in either part.
  const joint = jointOf("dowels 2 round 10 long 50");

  it("are spread evenly, half of each in the post", () => {
    expect(joint.long).toBe(25);
    const middles = heights(joint).map(([low, high]) => (low + high) / 2);
    expect(middles[0]).toBeCloseTo(420 - 60 + 15, 6);
    expect(middles[1]).toBeCloseTo(420 - 15, 6);
    expect(joint.volume).toBeCloseTo(2 * 25 * 25 * Math.PI, 9);
    // The prisms that stand for them have the circle's area.
    expect(joint.tenon.reduce((sum, solid) => sum + volume(solid), 0)).toBeCloseTo(joint.volume, 4);
  });

  it("glue over half their surface", () => {
    expect(joint.glueArea).toBeCloseTo((2 * Math.PI * 10 * 25) / 2, 9);
    expect(joint.mortiseWall).toBeCloseTo(15, 9);
  });

  it("hold a rail, and are judged as tenons are", () => {
    const text = frame({ joint: "dowels 2 round 10 long 72" });
    expect(messagesOf(text, "tenon-too-long")[0]).toMatch(
      /^Each dowel of seat-front into front is 72 mm long and goes in by 36 mm where .* 68 mm or less is allowed/,
    );
    expect(messagesOf(text, "member-without-joint")).toEqual([]);
    expect(messagesOf(frame({ joint: "dowels 2 round 10 long 30" }), "tenon-too-short")).toEqual([]);
    expect(studied(frame({ joint: "dowels 2 round 10 long 30" })).problems).toEqual([]);
  });
});

describe("a loose tenon", () => {
  // 22 thick: a third is 7.33. 60 less 10 and 6 are 44 wide. Half of 52 in either part.
  const joint = jointOf("loose-tenon thick 1/3 of rail, long 52\nshoulders top 10, bottom 6");

  it("is let half its length into the post and half into the end of the rail", () => {
    expect(joint).toMatchObject({ kind: "loose-tenon", long: 26 });
    expect(joint.thick).toBeCloseTo(22 / 3, 9);
    expect(joint.wide).toBeCloseTo(44, 9);
    expect(joint.volume).toBeCloseTo((22 / 3) * 44 * 26, 6);
    expect(joint.socket.reduce((sum, solid) => sum + volume(solid), 0)).toBeCloseTo(joint.volume, 6);
    // The shoulder lies in the post's back face: the mortise in front of it, the socket behind.
    const [face] = [joint.root[1]];
    expect(Math.max(...joint.tenon.flatMap(({ points }) => points.map((p) => p[1])))).toBeCloseTo(face, 6);
    expect(Math.min(...joint.socket.flatMap(({ points }) => points.map((p) => p[1])))).toBeCloseTo(face, 6);
  });

  it("is glued at its cheeks, and leaves the wood of the rail beside it", () => {
    expect(joint.glueArea).toBeCloseTo(2 * 44 * 26, 6);
    expect(joint.mortiseWall).toBeCloseTo((40 - 22 / 3) / 2, 6);
    // The side rail comes in a little aslant, and the tongue goes in square.
    expect(joint.socketWall).toBeLessThan(22 / 3);
    expect(joint.socketWall).toBeGreaterThan(5);
  });

  it("lies square to the shoulder, at any angle of the rail", () => {
    const splayed = studied(
      frame({
        joint: "loose-tenon thick 8, long 40",
        back: "section 40 x 40\nfoot out 150, back 420\nheight 430",
      }),
    ).chair;
    const aslant = splayed.joints.get("seat-side.left to front.left")!;
    const rail = splayed.rails.get("seat-side.left")!;
    expect(Math.abs(aslant.direction[1])).toBeCloseTo(1, 9);
    expect(Math.abs(rail.along[1])).toBeLessThan(0.995);
  });

  it("may be several, with a gap between as twins have, or as wide as they are", () => {
    const two = jointOf("loose-tenon count 2 thick 8, long 40\ntwin gap 12");
    expect(two.sections.map(({ wide }) => wide)).toEqual([
      [6, 22],
      [-22, -6],
    ]);
    const three = jointOf("loose-tenon count 3 thick 8, wide 50, long 40");
    expect(three.sections).toHaveLength(3);
    expect(three.volume).toBeCloseTo(3 * 8 * 10 * 20, 6);
  });

  it("tells the longest that the post allows, in its whole length, and it is the longest", () => {
    const text = (long: number) =>
      frame({ joint: `loose-tenon thick 8, long ${long}` }).replace("  mitre\n", "");
    const [told] = messagesOf(text(74), "tenon-too-long");
    expect(told).toMatch(
      /is 74 mm long and goes in by 37 mm where front is 40 mm deep.*68 mm or less is allowed/,
    );
    expect(messagesOf(text(68), "tenon-too-long")).toEqual([]);
    expect(messagesOf(text(69), "tenon-too-long")).not.toEqual([]);
  });

  it("has no mitre, haunch or through, and says so on that line", () => {
    for (const line of ["mitre", "haunch long 8", "through"]) {
      const text = frame({ joint: `loose-tenon thick 8, long 40\n${line}` }).replace(
        "  mitre\n",
        line === "mitre" ? "  mitre\n" : "",
      );
      expect(messagesOf(text, "cannot-be-built").join()).toContain(
        `a loose tenon has no ${line.split(" ")[0]};`,
      );
    }
  });

  it("gives way to a tenon of the end's own, and takes the place of the joint's", () => {
    const own = frame({ joint: "loose-tenon thick 8, long 40" }).replace(
      /(rail seat-front \{[^}]*)\}/,
      "$1  end left {\n    tenon thick 8, long 20\n  }\n}",
    );
    const { joints } = studied(own).chair;
    expect(joints.get("seat-front to front.left")?.kind).toBe("rectangular");
    expect(joints.get("seat-front to front.right")?.kind).toBe("loose-tenon");
  });

  it("needs its thickness and its length", () => {
    expect(messagesOf(frame({ joint: "loose-tenon thick 8" }), "incomplete")).not.toEqual([]);
    expect(messagesOf(frame({ joint: "loose-tenon long 40" }), "incomplete")).not.toEqual([]);
  });
});

describe("a fork over a post", () => {
  it("leaves a third of the rail between its tines, over the whole of the post", () => {
    const joint = jointOf("bridle\nshoulders top 0, bottom 0");
    expect(joint.long).toBe(40);
    expect(joint.tenon).toHaveLength(2);
    expect(joint.volume).toBeCloseTo(2 * (22 / 3) * 60 * 40, 6);
    // Both sides of both tines: the post is wider than the rail.
    expect(joint.glueArea).toBeCloseTo(4 * 60 * 40, 6);
    expect(joint.mortiseWall).toBeCloseTo((40 - 22) / 2, 6);
  });

  it("glues at its inner faces alone where the post is no wider than the rail", () => {
    const joint = jointOf(
      "bridle\nshoulders top 0, bottom 0",
      "section 22 x 40\nfoot out 200, back 20\nheight 430",
    );
    expect(joint.glueArea).toBeCloseTo(2 * 60 * 40, 6);
    expect(joint.mortiseWall).toBe(0);
  });

  it("takes the thickness that is given", () => {
    expect(jointOf("bridle\ntenon thick 10").volume).toBeCloseTo(12 * 44 * 40, 6);
  });

  it("cannot go over a rail that runs across its slot", () => {
    const across =
      "rail middle {\n  from seat-front at 1/2 to seat-back at 1/2\n  section 22 x 40\n  up 400\n  joined fork\n}\njoint fork {\n  bridle\n}\n";
    expect(
      messagesOf(frame({ joint: "tenon thick 8, long 21", more: across }), "cannot-be-built")[0],
    ).toContain("a fork here would cut through what it goes over");
  });
});

describe("other ways to cut a tenon", () => {
  it("through goes as deep as the post, and is never too long", () => {
    const joint = jointOf("tenon thick 8, long 20\nthrough wedged");
    expect(joint.long).toBeCloseTo(40, 9);
    expect(joint.volume).toBeCloseTo(8 * 44 * 40, 6);
    expect(messagesOf(frame({ joint: "tenon thick 8, long 20\nthrough wedged" }), "tenon-too-long")).toEqual(
      [],
    );
  });

  it("barefaced on one side has its shoulder on the other alone", () => {
    const { shoulders } = jointOf("tenon thick 8, long 20\nset 0 from outside");
    expect([shoulders.outside, shoulders.inside]).toEqual([0, 14]);
  });

  it("a sloped haunch is half of a plain one", () => {
    const [plain, sloped] = ["", " sloped"].map((how) =>
      jointOf(`tenon thick 8, long 20\nhaunch long 8${how}`),
    );
    expect(volume(plain!.haunch!)).toBeCloseTo(8 * 10 * 8, 6);
    expect(volume(sloped!.haunch!)).toBeCloseTo((8 * 10 * 8) / 2, 6);
  });

  it("a turned tenon is glued over half its surface", () => {
    expect(jointOf("round 16, long 24").glueArea).toBeCloseTo((Math.PI * 16 * 24) / 2, 6);
  });
});
