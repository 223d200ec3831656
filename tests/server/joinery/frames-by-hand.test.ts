import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { assemblyOf } from "../../../server/joinery/assembly.ts";
import type { Fitting } from "../../../server/joinery/fitting.ts";
import { framesOf } from "../../../server/joinery/frames.ts";
import { orderOf } from "../../../server/joinery/order.ts";
import { messagesOf, otherwiseOf, studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const glueUps = (text: string) => framesOf(studied(text).chair);

/** Front posts splayed, back posts plumb and nearer together: seat rails and stretchers run in at different angles. */
const tapered = (line: string): string => `joint plain {
  tenon thick 12, long 26
  tenon ${line}
  shoulders top 8, bottom 8
}
joint cross {
  tenon thick 12, long 18
  shoulders top 8, bottom 8
}
post front pair {
  section 44 x 44
  top out 190, back 20
  height 440
  splay 9deg
}
post back pair {
  section 44 x 44
  foot out 160, back 420
  height 440
}
${["front", "back"].map((post) => `rail cross-${post} {\n  across ${post}\n  section 34 x 50\n  up 330\n  joined cross\n}\n`).join("")}${[
  430, 160,
]
  .map(
    (up, k) =>
      `rail side-${k} pair {\n  from front to back\n  section 34 x 50\n  up ${up}\n  joined plain\n}\n`,
  )
  .join("")}`;

describe("frames with a known answer", () => {
  it("a plain box: front and back frames, then the sides in one go", () => {
    const { frames, locked } = glueUps(frame());
    expect(locked).toEqual([]);
    expect(frames.map(({ name, way }) => [name, way])).toEqual([
      ["front frame", "straight side to side"],
      ["back frame", "straight side to side"],
      ["whole chair", "straight front to back"],
    ]);
    expect(frames[2]?.closes).toHaveLength(4);
  });

  it("tapered, with tenons in line: it locks, by an angle worked by hand", () => {
    const { chair } = studied(tapered("in-line"));
    const { locked } = orderOf(chair);
    expect(locked.length).toBeGreaterThan(0);
    const joints = locked.flatMap(({ joints: some }) => some);
    expect(joints.length).toBeGreaterThan(0);
    for (const { name, angle, strays, slack } of joints) {
      expect(strays, name).toBeGreaterThan(slack);
      expect(strays).toBeCloseTo(chair.joints.get(name)!.long * Math.sin(angle), 0);
    }
    // Front posts lean out 9°: 270 lower down the stretchers start 43 further out, over a run of some 356: about 6° apart.
    const [seat, low] = ["side-0.left", "side-1.left"].map((part) => chair.rails.get(part)!.along);
    const apart = Math.acos(seat![0] * low![0] + seat![1] * low![1] + seat![2] * low![2]);
    expect((apart * 180) / Math.PI).toBeCloseTo(
      (Math.atan((270 * Math.tan((9 * Math.PI) / 180)) / 400) * 180) / Math.PI,
      0,
    );
    expect(otherwiseOf(tapered("in-line"), "cannot-be-assembled")[0]).toContain("tenon square");
  });

  it("the same with square tenons closes, front to back", () => {
    const { frames, locked } = glueUps(tapered("square"));
    expect(locked).toEqual([]);
    expect(frames.at(-1)).toMatchObject({ name: "whole chair", way: "straight front to back" });
    expect(messagesOf(tapered("square"), "cannot-be-assembled")).toEqual([]);
  });

  // Drawing any of the three posts off would have to take two tenons out of it along lines that lie far apart.
  const tripod = (third: boolean): string => `joint plain {
  tenon thick 12, long 24
  shoulders top 8, bottom 8
}
post front pair {
  section 44 x 44
  foot out 180, back 20
  height 440
}
post back {
  section 44 x 44
  foot out 0, back 330
  height 440
}
rail side pair {
  from front to back
  section 34 x 50
  up 430
  joined plain
}
${third ? "rail cross {\n  across front\n  section 34 x 50\n  up 360\n  joined plain\n}\n" : ""}`;

  it("three legs in a V go together leg by leg", () => {
    const { frames, locked } = glueUps(tripod(false));
    expect(locked).toEqual([]);
    expect(frames.flatMap(({ closes }) => closes)).toHaveLength(4);
  });

  it("one rail too many closes the ring, and nothing closes that", () => {
    const { locked } = glueUps(tripod(true));
    expect(locked.map(({ parts }) => parts.length)).toEqual([6]);
    const [said] = messagesOf(tripod(true), "cannot-be-assembled");
    // The sides run in 180 over 310.
    expect(Math.round((Math.atan(180 / 310) * 1800) / Math.PI) / 10).toBe(30.1);
    expect(said).toMatch(/^No order closes side to front and side to back: .*\(30\.1°\)/);
    // Cut square to the posts, all four of the sides' tenons lie fore and aft; the finding says so, and it does.
    expect(otherwiseOf(tripod(true), "cannot-be-assembled")).toEqual([
      "`tenon square` at side to front and side to back frees them.",
    ]);
    const squared = tripod(true).replace("shoulders", "tenon square\n  shoulders");
    expect(messagesOf(squared, "cannot-be-assembled")).toEqual([]);
  });
});

describe("a frame of forty parts", () => {
  /** A lattice of posts with rails both ways: 40 parts, 48 joints. */
  function lattice(columns: number, rows: number, lean: number) {
    const parts: string[] = [];
    const joints: Fitting[] = [];
    const post = (i: number, j: number) => `p${i}.${j}`;
    const fitting = (part: string, into: string, direction: Vec3): Fitting => ({
      name: `${part} to ${into}`,
      part,
      into,
      direction,
      long: 26,
      slack: 0.3,
    });
    for (let i = 0; i < columns; i++) for (let j = 0; j < rows; j++) parts.push(post(i, j));
    for (let i = 0; i < columns; i++)
      for (let j = 0; j < rows; j++) {
        const turn = lean * (i + j);
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        if (i + 1 < columns) {
          const rail = `x${i}.${j}`;
          parts.push(rail);
          joints.push(fitting(rail, post(i, j), [-c, -s, 0]), fitting(rail, post(i + 1, j), [c, s, 0]));
        }
        if (j + 1 < rows) {
          const rail = `y${i}.${j}`;
          parts.push(rail);
          joints.push(fitting(rail, post(i, j), [s, -c, 0]), fitting(rail, post(i, j + 1), [-s, c, 0]));
        }
      }
    return { parts, joints };
  }

  it("closes row by row along its posts, then all rows at once across them", () => {
    const { parts, joints } = lattice(4, 4, 0);
    expect(parts).toHaveLength(40);
    const { glueUps, locked } = assemblyOf(parts, joints);
    expect(locked).toEqual([]);
    expect(glueUps.map(({ direction }) => direction)).toEqual([...Array(4).fill([1, 0, 0]), [0, 1, 0]]);
    expect(glueUps.map(({ closes }) => closes.length)).toEqual([6, 6, 6, 6, 24]);
  });

  it("is locked where each row turns against the next, by a tenon's length times the sine of the turn", () => {
    const { parts, joints } = lattice(4, 4, 0.05);
    const { glueUps, locked } = assemblyOf(parts, joints);
    expect(glueUps).toEqual([]);
    expect(locked[0]!.joints.length).toBeGreaterThan(0);
    for (const { angle, strays } of locked[0]!.joints) expect(strays).toBeCloseTo(26 * Math.sin(angle), 9);
  });
});
