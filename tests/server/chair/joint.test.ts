import { describe, expect, test } from "vitest";
import type { Joint } from "../../../server/chair/chair.ts";
import { volume } from "../../../server/geometry/convex.ts";
import { chairOf, value } from "./from-text.ts";

/** Two pairs of plumb posts 40 x 40, 300 apart at the front, with one rail in front and one at each side. */
const frame = (lines: { joint: string; face?: string; side?: string; back?: string }) => `
units mm
joint plain {
  ${lines.joint}
}
post front pair {
  section 40 x 40
  foot out 170, back 20
  height 450
}
post back pair {
  section 40 x 40
  foot out ${lines.back ?? "170"}, back 420
  height 800
}
rail apron {
  across front
  section 24 x 60
  up 440
  face flush
  joined plain
}
rail side pair {
  from front to back
  section 24 x 60
  up 400
  face ${lines.face ?? "flush"}
  joined plain
  ${lines.side ?? ""}
}
`;

const jointOf = (text: string, name: string): Joint => {
  const joint = chairOf(text).joints.get(name);
  if (!joint) throw new Error(`no joint ${name}`);
  return joint;
};

describe("a square tenon in plumb posts", () => {
  const text = frame({ joint: "tenon thick 1/3 of rail, long 25\nshoulders top 12, bottom 8" });
  const joint = jointOf(text, "apron to front.left");

  test("is a third of the rail thick, the rail less its shoulders wide, and as deep as it says", () => {
    // 24 / 3 = 8; 60 − 12 − 8 = 40.
    expect(joint.thick).toBeCloseTo(8, 12);
    expect(joint.wide).toBeCloseTo(40, 12);
    expect(joint.long).toBe(25);
    expect(joint.shoulders).toEqual({ outside: 8, inside: 8, top: 12, bottom: 8 });
    // 8 × 40 × 25.
    expect(joint.volume).toBeCloseTo(8000, 9);
    expect(volume(joint.tenon[0]!)).toBeCloseTo(8000, 6);
  });

  test("lies where its shoulders put it", () => {
    // Flush with the posts' front faces at y = 0: the middle of the rail's 24 is 12 back. Its top at 440 − 12, so its middle is at 408.
    expect(joint.root[0]).toBeCloseTo(150, 9);
    expect(joint.root[1]).toBeCloseTo(12, 9);
    expect(joint.root[2]).toBeCloseTo(408, 9);
    expect(joint.direction[0]).toBeCloseTo(1, 12);
  });

  test("leaves the wood beside its mortise, and behind it", () => {
    // Outside cheek 8 mm behind the front face; inside cheek 16, so 24 to the back face: the least is 8.
    expect(joint.mortiseWall).toBeCloseTo(8, 9);
    expect(joint.depthThere).toBeCloseTo(40, 9);
  });

  test("glues by its two cheeks", () => {
    // 2 × 40 × 25: the edges meet end grain.
    expect(joint.glueArea).toBeCloseTo(2000, 9);
    expect(value(chairOf(text), "apron.right.glue-area")).toBeCloseTo(2000, 9);
  });
});

describe("sizes", () => {
  test("a part of the post it enters", () => {
    const joint = jointOf(
      frame({ joint: "tenon thick 1/4 of post, long 1/2 of post" }),
      "apron to front.left",
    );
    // A quarter of 40, and half of the 40 behind the shoulder.
    expect(joint.thick).toBeCloseTo(10, 9);
    expect(joint.long).toBeCloseTo(20, 9);
  });

  test("a width of its own lies in the middle, or by the shoulder given", () => {
    const middle = jointOf(frame({ joint: "tenon thick 8, wide 30, long 20" }), "apron to front.left");
    expect(middle.shoulders).toMatchObject({ top: 15, bottom: 15 });
    const low = jointOf(
      frame({ joint: "tenon thick 8, wide 30, long 20\nshoulders top 20" }),
      "apron to front.left",
    );
    expect(low.shoulders).toMatchObject({ top: 20, bottom: 10 });
  });

  test("full is as thick as the rail, set is from the outside face", () => {
    const full = jointOf(frame({ joint: "tenon thick full, long 20" }), "apron to front.left");
    expect(full.thick).toBeCloseTo(24, 9);
    expect(full.shoulders).toMatchObject({ outside: 0, inside: 0 });
    const set = jointOf(
      frame({ joint: "tenon thick 8, long 20\nset 5 from outside" }),
      "apron to front.left",
    );
    expect(set.shoulders).toMatchObject({ outside: 5, inside: 11 });
    // The outside cheek lies 5 mm behind the post's front face.
    expect(set.mortiseWall).toBeCloseTo(5, 9);
  });

  test("through goes as far as there is wood", () => {
    const joint = jointOf(frame({ joint: "tenon thick 8\nthrough wedged" }), "apron to front.left");
    expect(joint.long).toBeCloseTo(40, 9);
    // 8 × 60 × 40.
    expect(joint.volume).toBeCloseTo(19200, 6);
  });

  test("a mortise that breaks out has less than no wall", () => {
    const joint = jointOf(
      frame({ joint: "tenon thick 10, long 20\nset 3 from outside", face: "inset -5" }),
      "side.left to front.left",
    );
    // The rail stands 5 outside the post, its tenon 3 further in: 2 mm outside.
    expect(joint.mortiseWall).toBeCloseTo(-2, 9);
  });

  test("an end's own facts win over the joint's", () => {
    const text = frame({ joint: "tenon thick 8, long 25", side: "end back { tenon thick 6, long 18 }" });
    expect(jointOf(text, "side.left to front.left")).toMatchObject({ thick: 8, long: 25 });
    expect(jointOf(text, "side.left to back.left")).toMatchObject({ thick: 6, long: 18 });
  });
});

describe("haunches", () => {
  test("fill the top shoulder beside the tenon", () => {
    const joint = jointOf(
      frame({ joint: "tenon thick 8, long 25\nshoulders top 12\nhaunch long 10" }),
      "apron to front.left",
    );
    // Tenon 8 × 48 × 25 and haunch 8 × 12 × 10.
    expect(joint.volume).toBeCloseTo(9600 + 960, 6);
    expect(Math.max(...joint.haunch!.points.map((p) => p[2]))).toBeCloseTo(440, 9);
  });

  test("may be narrower, or run out at the rail's edge", () => {
    const narrow = jointOf(
      frame({ joint: "tenon thick 8, long 25\nshoulders top 12\nhaunch long 10 wide 9" }),
      "apron to front.left",
    );
    expect(narrow.volume).toBeCloseTo(9600 + 720, 6);
    const sloped = jointOf(
      frame({ joint: "tenon thick 8, long 25\nshoulders top 12\nhaunch long 10 sloped" }),
      "apron to front.left",
    );
    // Half of 8 × 12 × 10: a wedge.
    expect(sloped.volume).toBeCloseTo(9600 + 480, 6);
  });
});

describe("a side rail in a chair that narrows to the back", () => {
  // The posts stand 40 further in at the back over 400: flush with both, the rail runs in by atan(40 / 360) between its shoulders
  // 360 apart, as both arrises lie on the outside faces at the shoulders.
  const angle = Math.atan(40 / 360);
  const joint = "tenon thick 8, long 25\nshoulders top 10, bottom 10";

  test("in line, its tenon leans across the post and is longer than it is deep", () => {
    const inLine = jointOf(frame({ joint, back: "130" }), "side.left to back.left");
    const run = 25 / Math.cos(angle);
    expect(inLine.long).toBe(25);
    // 8 × 40 × 25 / cos.
    expect(inLine.volume).toBeCloseTo(8 * 40 * run, 6);
    expect(inLine.glueArea).toBeCloseTo(2 * 40 * run, 6);
    // All of its end is 25 mm behind the post's front face at y = 400.
    expect(Math.max(...inLine.tenon[0]!.points.map((p) => p[1]))).toBeCloseTo(425, 9);
  });

  test("square, it goes straight into the face", () => {
    const square = jointOf(
      frame({ joint, back: "130", side: "end back { tenon square }" }),
      "side.left to back.left",
    );
    expect(square.direction[1]).toBeCloseTo(1, 12);
    expect(square.volume).toBeCloseTo(8 * 40 * 25, 6);
    // Its middle stays where the rail's gauge lines meet the shoulder: half of 24 in, measured square to the rail.
    const inward = 12 / Math.cos(angle);
    expect(square.root[0]).toBeCloseTo(150 - inward, 9);
    expect(square.mortiseWall).toBeCloseTo(inward - 4, 9);
  });
});

describe("round work", () => {
  const text = `
units mm
joint turned { round 15, long 22 }
post leg pair {
  round 38
  foot out 180, back 0
  height 420
}
post rear pair {
  round 38
  foot out 180, back 400
  height 420
}
rail rung {
  across leg
  round 20
  up 150
  joined turned
}
rail stretcher pair {
  from leg to rear
  section 18 x 40
  up 300
  joined tongue
}
joint tongue {
  tenon thick 9, long 25
  shoulders top 5, bottom 5
}
`;

  test("a turned tenon has the circle's volume and half its skin for glue", () => {
    const joint = jointOf(text, "rung to leg.left");
    expect(joint.shape).toBe("round");
    expect(joint.volume).toBeCloseTo(Math.PI * 7.5 ** 2 * 22, 6);
    expect(joint.glueArea).toBeCloseTo((Math.PI * 15 * 22) / 2, 6);
    expect(joint.shoulders).toEqual({ outside: 2.5, inside: 2.5, top: 2.5, bottom: 2.5 });
    // The flats' solid has the circle's area too.
    expect(volume(joint.tenon[0]!)).toBeCloseTo(joint.volume, 6);
    expect(joint.depthThere).toBeCloseTo(38, 6);
  });

  test("in turned posts the wall is where the mortise is nearest the axis", () => {
    // The rung goes in 22 from the tangent, past the axis at 19: 19 − 7.5.
    expect(jointOf(text, "rung to leg.left").mortiseWall).toBeCloseTo(11.5, 6);
    // The tongue's 9 mm across the post: 19 − 4.5.
    expect(jointOf(text, "stretcher.left to leg.left").mortiseWall).toBeCloseTo(14.5, 6);
  });
});

describe("a post's top in a rail over it", () => {
  test("is thick across the rail and wide along it", () => {
    const chair = chairOf(`
units mm
joint stub {
  tenon thick 12, long 20
  shoulders top 8, bottom 4
}
post front pair {
  section 40 x 30
  foot out 200, back 0
  height 440
  top into crest with stub
}
rail crest {
  over front
  overhang 60
  section 30 x 50
}
`);
    const joint = chair.joints.get("front.left to crest");
    expect(joint).toMatchObject({ shape: "rectangular", end: "top", thick: 12, long: 20 });
    // Along the rail the post is 40 wide: 40 − 8 − 4.
    expect(joint!.wide).toBeCloseTo(28, 6);
    expect(joint!.volume).toBeCloseTo(12 * 28 * 20, 4);
    expect(joint!.depthThere).toBeCloseTo(50, 6);
    // Across the rail's 30: (30 − 12) / 2.
    expect(joint!.mortiseWall).toBeCloseTo(9, 6);
    expect(value(chair, "front.left.top.tenon-wide")).toBeCloseTo(28, 6);
  });
});

describe("what is left out", () => {
  test("a tenon without a length is told and not cut", () => {
    const chair = chairOf(frame({ joint: "tenon thick 8" }));
    expect(chair.joints.get("apron to front.left")).toMatchObject({ shape: "none", volume: 0, tenon: [] });
    const told = chair.faults.filter((fault) => fault.is === "not-buildable");
    expect(told.map((fault) => fault.message)).toContain("its tenon has no length: say `long` in the joint");
  });

  test("shoulders that leave nothing", () => {
    const chair = chairOf(frame({ joint: "tenon thick 8, long 20\nshoulders top 30, bottom 30" }));
    expect(chair.joints.get("apron to front.left")?.shape).toBe("none");
    expect(chair.faults[0]).toMatchObject({ message: "its shoulders leave no width for a tenon" });
  });
});
