import { describe, expect, test } from "vitest";
import { movePoint } from "../../../server/geometry/motion.ts";
import { height } from "../../../server/geometry/plane.ts";
import { chairOf, DEGREES, value } from "./from-text.ts";

const posts = (more = "", front = "", back = "") => `
units mm
post front pair {
  section 40 x 40
  foot out 200, back 0
  height 440
  ${front}
}
post back pair {
  section 40 x 40
  foot out 180, back 400
  height 900
  ${back}
}
${more}
`;

describe("untrimmed", () => {
  test("it stands as drawn", () => {
    const chair = chairOf(posts());
    expect(chair.stance.shift).toEqual([0, 0, 0]);
    expect(chair.floor).toEqual({ normal: [0, 0, 1], offset: 0 });
    expect(chair.hanging.size).toBe(0);
    expect(value(chair, "front.left.foot-bevel")).toBeCloseTo(90, 12);
  });
});

describe("back feet trimmed", () => {
  const chair = chairOf(posts("trim back 10"));
  const tilt = Math.atan(10 / 400);

  test("front feet keep their place, and all ends of centre lines come to the floor", () => {
    for (const post of chair.posts.values()) expect(movePoint(chair.stance, post.foot)[2]).toBeCloseTo(0, 9);
    const front = movePoint(chair.stance, chair.posts.get("front.left")!.foot);
    expect(front[0]).toBeCloseTo(200, 9);
    expect(front[1]).toBeCloseTo(0, 9);
  });

  test("it tilts by the cut over the distance between the feet", () => {
    // Plumb posts as drawn lean back by atan(10 / 400) = 1.432° and their feet are cut as much off square.
    expect(value(chair, "back.left.foot-bevel")).toBeCloseTo(90 - tilt * DEGREES, 9);
    expect(value(chair, "front.left.foot-bevel")).toBeCloseTo(90 - tilt * DEGREES, 9);
    expect(value(chair, "back.left.length")).toBeCloseTo(890, 9);
    expect(value(chair, "front.left.length")).toBeCloseTo(440, 9);
  });

  test("feet are cut to the floor all over: no corner is below it, none above", () => {
    for (const post of chair.posts.values()) {
      const lowest = post.pieces[0]!.solid.points.slice(0, 4).map((p) => movePoint(chair.stance, p)[2]);
      for (const z of lowest) expect(z).toBeCloseTo(0, 9);
    }
  });

  test("heights are as it stands", () => {
    // A back post's top corner: 900 up less the turn. The back top edge at y = 420, z = 900 turns about the front feet's line:
    // z′ = (900 − 420 tan t) cos t … with the floor line from (0, 0) to (400, 10).
    const up = 900 * Math.cos(tilt) - 380 * Math.sin(tilt);
    expect(value(chair, "height")).toBeCloseTo(up, 9);
    expect(value(chair, "width")).toBeCloseTo(440, 9);
  });
});

describe("all feet trimmed", () => {
  test("alike, it comes straight down", () => {
    const chair = chairOf(posts("trim front 6\ntrim back 6"));
    expect(chair.floor.offset).toBeCloseTo(6, 12);
    expect(movePoint(chair.stance, [10, 20, 30])).toEqual([10, 20, 24]);
  });

  test("front feet alone: the chair tips forward", () => {
    const chair = chairOf(posts("trim front 8"));
    const front = movePoint(chair.stance, chair.posts.get("front.left")!.foot);
    expect(front[0]).toBeCloseTo(200, 9);
    expect(front[1]).toBeCloseTo(0, 9);
    expect(front[2]).toBeCloseTo(0, 9);
    const top = chair.posts.get("front.left")!.top;
    expect(movePoint(chair.stance, top)[1]).toBeLessThan(0);
  });

  test("a raked foot is cut along its centre line", () => {
    const chair = chairOf(posts("trim back 10", "", "rake 10deg"));
    const foot = chair.posts.get("back.left")!.foot;
    expect(foot[1]).toBeCloseTo(400 + 10 * Math.sin(10 / DEGREES), 9);
    expect(foot[2]).toBeCloseTo(10 * Math.cos(10 / DEGREES), 9);
  });
});

describe("feet out of one plane", () => {
  test("one short foot hangs by what it lacks, square to the floor", () => {
    const chair = chairOf(posts("trim back.left 4"));
    // It stands on the other three at z = 0.
    expect([...chair.hanging]).toEqual([["back.left", 4]]);
    expect(chair.floor.normal[2]).toBeCloseTo(1, 12);
  });

  test("half a millimetre is flat enough", () => {
    expect(chairOf(posts("trim back.left 0.5")).hanging.size).toBe(0);
    expect(chairOf(posts("trim back.left 0.6")).hanging.size).toBe(1);
  });

  test("no foot is ever under the floor", () => {
    const chair = chairOf(posts("trim front.left 12\ntrim back.right 3"));
    for (const post of chair.posts.values()) expect(height(chair.floor, post.foot)).toBeGreaterThan(-1e-9);
    expect(chair.hanging.size).toBe(1);
  });
});

describe("fewer feet", () => {
  const leg = (name: string, out: number, back: number, pair = "") => `
post ${name} ${pair} {
  section 30 x 30
  foot out ${out}, back ${back}
  height 450
}
`;
  test("three never rock", () => {
    const chair = chairOf(`units mm${leg("front", 150, 0, "pair")}${leg("rear", 0, 260)}trim rear 13`);
    expect(chair.hanging.size).toBe(0);
    // Falls back by atan(13 / 260).
    expect(value(chair, "rear.foot-bevel")).toBeCloseTo(90 - Math.atan(13 / 260) * DEGREES, 9);
  });

  test("one and two stand on what they have", () => {
    const one = chairOf(`units mm${leg("post", 0, 0)}trim post 20`);
    expect(one.floor.offset).toBeCloseTo(20, 12);
    const two = chairOf(`units mm${leg("post", 150, 0, "pair")}trim post.left 30`);
    // The floor holds the line through both feet: 30 in 300.
    expect(Math.acos(two.floor.normal[2])).toBeCloseTo(Math.atan(30 / 300), 9);
    expect(two.hanging.size).toBe(0);
  });

  test("none stand nowhere", () => {
    const chair = chairOf("units mm\n");
    expect(chair.values.get("joints")?.number).toBe(0);
    expect(chair.values.has("height")).toBe(false);
  });
});
