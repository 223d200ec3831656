/**
 * The whole-chair pages: what they set out against the chair's own text, their scales against ISO 5455, their symbol against the definition
 * of the projections (ISO 5456-2).
 */
import { describe, expect, it } from "vitest";
import { sectionSheet } from "../../../../server/drawing/arrangement/section-sheet.ts";
import { levelCut, middleCut, seatRailsHeight } from "../../../../server/drawing/arrangement/sections.ts";
import { type Stop, setOutOf } from "../../../../server/drawing/arrangement/set-out.ts";
import { arrangement } from "../../../../server/drawing/arrangement/sheet.ts";
import { viewsOf } from "../../../../server/drawing/arrangement/views.ts";
import { Figures } from "../../../../server/drawing/markout/figures.ts";
import { piecesAsked } from "../../../../server/drawing/markout/pages.ts";
import { studied } from "../../../check.ts";
import { sampleChair } from "../chairs.ts";

/** Untrimmed, so that it stands as it is drawn. */
const plain = `chair "Plain"
units mm
timber oak
joint plain {
  tenon thick 8, long 20
  shoulders top 8, bottom 8
}
post front pair {
  section 40 x 40
  foot out 200, back 20
  height 440
  splay 2deg
}
post back pair {
  section 36 x 36
  foot out 180, back 430
  height 900
  rake 6deg above 470
}
rail seat-front {
  across front
  section 20 x 60
  up 430
  joined plain
}
rail seat-side pair {
  from front to back
  section 20 x 60
  up 430
  joined plain
}
rail seat-back {
  across back
  section 20 x 60
  up 430
  joined plain
}
seat board {
  on seat-front, seat-side, seat-back
  thick 18
}
`;

const { chair } = studied(plain);
const figures = new Figures("mm");
const told = ({ part, says }: { part: string; says: string }): string => `${part} ${says}`;
const stop = (stops: readonly Stop[], name: string): number[] =>
  stops
    .find(({ of }) => of.some(({ part, what }) => `${part} ${what}`.trim() === name))!
    .at.map((mm) => Math.round(mm * 10) / 10);

describe("what is set out", () => {
  const { front, side, plan, middle, origin } = setOutOf(chair);

  it("has both edges of each rail over the floor", () => {
    expect(stop(front.left, "seat-front")).toEqual([370, 430]);
    expect(stop(side.left, "seat-side")).toEqual([370, 430]);
    expect(stop(middle.right, "seat-back")).toEqual([370, 430]);
  });

  it("has posts from the middle and from the front feet", () => {
    expect(stop(front.below, "front foot")).toEqual([200]);
    expect(stop(front.below, "back foot")).toEqual([180]);
    // 440 up at 2 degrees goes 15.4 in.
    expect(stop(front.above, "front top")).toEqual([
      Math.round((200 - 440 * Math.tan(Math.PI / 90)) * 10) / 10,
    ]);
    expect(origin).toBeCloseTo(20, 6);
    expect(stop(side.below, "back foot")).toEqual([430]);
    expect(stop(side.above, "back top")).toEqual([
      Math.round((430 + 430 * Math.tan(Math.PI / 30)) * 10) / 10,
    ]);
  });

  it("has the lean of each straight of a post, and the seat's", () => {
    expect(front.saidRight.map(told)).toEqual(["front splays 2°", "back plumb"]);
    expect(side.saidLeft.map(told)).toEqual(["front plumb"]);
    expect(side.saidRight.map(told)).toEqual(["back plumb", "back leans back 6°", "seat level"]);
  });

  it("has how far rails and seat lie from the front feet", () => {
    // Centred rails of 20 on posts whose line at 430 up is where the foot is, seen from the side.
    expect(stop(plan.right, "seat-front face")).toEqual([10]);
    // A board seat lies flush with its rails' outside faces.
    expect(stop(plan.right, "seat front")).toEqual([10]);
    expect(stop(plan.right, "seat-back face")).toEqual(stop(plan.right, "seat back"));
  });
});

describe("the arrangement drawing", () => {
  const rooms = { level: { wide: 271, high: 162 }, upright: { wide: 184, high: 227 } };

  it.each(["first", "third"] as const)(
    "in %s-angle projection keeps views in line at a preferred scale",
    (angle) => {
      const { items, scale, upright } = arrangement(chair, piecesAsked(chair), figures, rooms, angle);
      // ISO 5455:1979, reductions.
      expect([1, 2, 5, 10, 20, 50, 100]).toContain(scale);
      const room = upright ? rooms.upright : rooms.level;
      const place = (text: string) => {
        const found = items.find((item) => item.is === "words" && item.text.startsWith(text));
        if (found?.is !== "words") throw new Error(`no "${text}"`);
        return found.at;
      };
      for (const item of items) {
        for (const [x, y] of item.is === "line" ? item.points : [item.at]) {
          expect(x > -0.01 && x < room.wide + 0.01 && y > -0.01 && y < room.high + 0.01).toBe(true);
        }
      }
      // Third angle: what is seen from the left is on the right, where the sitter's left is; first angle the other way. The plan over or under.
      const [front, side, plan] = [place("Front"), place("Side"), place("Plan")];
      expect(side[0] > front[0]).toBe(angle === "third");
      expect(plan[1] < front[1]).toBe(angle === "third");
      expect(Math.abs(front[1] - side[1])).toBeLessThan(25);
    },
  );

  it("dashes what other wood hides and the tenons", () => {
    const hidden = viewsOf(chair).front.strokes.filter(({ is }) => is === "hidden");
    const corners = hidden.flatMap(({ points }) => points);
    // The front rail's tenons reach 20 into the front posts, whose inside faces lie 180 out less the splay at that height.
    const inside = (height: number) => 200 - height * Math.tan(Math.PI / 90) - 20 / Math.cos(Math.PI / 90);
    const near = corners.filter(([x, y]) => Math.abs(x - inside(400) - 20) < 2 && y > 370 && y < 430);
    expect(near.length).toBeGreaterThan(1);
    // Straights that are seen are not dashed too: the front posts' foot lines are not among them.
    expect(hidden.some(({ points }) => points.every(([, y]) => Math.abs(y) < 0.01))).toBe(false);
  });

  it("has a preferred scale on every paper for every kind of chair", () => {
    // A bench of 1182 with what is told beside it is too wide and high for A4 at 1:20.
    const most = { "ladder-back": 20, "slab-chair": 20, "landing-bench": 50 };
    for (const [name, last] of Object.entries(most)) {
      const sample = sampleChair(name);
      const { scale } = arrangement(sample, piecesAsked(sample), figures, rooms, "first");
      expect([2, 5, 10, 20, 50].filter((each) => each <= last)).toContain(scale);
    }
  });
});

describe("sections", () => {
  it("cut the parts that lie there, to their own sizes", () => {
    const across = middleCut(chair);
    expect(across.map(({ part }) => part).sort()).toEqual(["seat", "seat-back", "seat-front"]);
    const [rail] = across.find(({ part }) => part === "seat-front")!.outlines;
    const span = (axis: 0 | 1) =>
      Math.max(...rail!.map((p) => p[axis])) - Math.min(...rail!.map((p) => p[axis]));
    expect([span(0), span(1)].map((mm) => Math.round(mm * 10) / 10)).toEqual([20, 60]);
    expect(seatRailsHeight(chair)).toBeCloseTo(400, 6);
    const level = levelCut(chair, 400);
    expect(level.map(({ part }) => part)).toEqual(
      expect.arrayContaining(["front.left", "back.right", "seat-side.left", "seat-front"]),
    );
    const post = level.find(({ part }) => part === "back.left")!.outlines[0]!;
    const xs = post.map(([x]) => x);
    expect([Math.min(...xs), Math.max(...xs)].map((x) => Math.round(x))).toEqual([162, 198]);
  });

  it("are drawn with their heights and scales", () => {
    const items = sectionSheet(chair, piecesAsked(chair), figures, { wide: 271, high: 162 })!;
    const texts = items.flatMap((item) => (item.is === "words" ? [item.text] : [])).join(" ");
    expect(texts).toMatch(/Level, 400 over the floor, from above, 1:\d/);
    expect(texts).toContain("370 – 430 seat-front");
    expect(items.filter(({ is }) => is === "line").length).toBeGreaterThan(50);
  });
});
