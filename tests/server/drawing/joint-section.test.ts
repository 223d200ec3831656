import { describe, expect, it } from "vitest";
import { jointPicture } from "../../../server/drawing/joint-picture.ts";
import { sectionsOfJoint } from "../../../server/drawing/joint-section.ts";
import type { Point } from "../../../server/drawing/sheet.ts";
import { studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";
import { frame } from "../../plain-frame.ts";

const cut = (joint: string, name = "seat-front to front.left") => {
  const { chair } = studied(frame({ joint }));
  const sections = sectionsOfJoint(chair, chair.joints.get(name)!);
  if (!sections) throw new Error("no section");
  return sections;
};

const span = (rings: readonly Point[][], axis: 0 | 1): [number, number] => {
  const values = rings.flat().map((point) => point[axis]);
  return [Math.min(...values), Math.max(...values)];
};
const near = ([a, b]: [number, number], [c, d]: [number, number]) => {
  expect(a).toBeCloseTo(c, 6);
  expect(b).toBeCloseTo(d, 6);
};

describe("a joint in section", () => {
  it("shows the post from its shoulder to its far side, 40 by 40, and the tenon as long as it is", () => {
    const { thick, wide } = cut("tenon thick 8, long 26");
    near(span(thick.entered, 0), [0, 40]);
    near(span(thick.entered, 1), [-20, 20]);
    near(span(wide.entered, 0), [0, 40]);
    // Mitred at a corner of the two middles, 20 in; the outer corner of the mitre is 4 further.
    expect(span(thick.part, 0)[1]).toBeCloseTo(24, 6);
    const tenon = thick.part.filter((ring) => span([ring], 0)[1] > 1);
    near(span(tenon, 1), [-4, 4]);
  });

  it("shows shoulders above and below, and both of twin tenons", () => {
    const { wide } = cut("tenon thick 8, long 26\ntwin gap 12\nshoulders top 10, bottom 6");
    const tenons = wide.part.filter((ring) => span([ring], 0)[1] > 1).map((ring) => span([ring], 1));
    expect(tenons).toHaveLength(2);
    // y down from the middle of the 44: 22 up to 6 up, 6 down to 22 down.
    near(tenons[0]!, [-22, -6]);
    near(tenons[1]!, [6, 22]);
  });

  it("shows the other tenon in the post, and the pegs where they go through", () => {
    const { thick, wide } = cut("tenon thick 8, long 26\npeg 6 setback 9");
    expect(thick.others.length).toBeGreaterThan(0);
    expect(wide.pegs).toHaveLength(1);
    expect(wide.pegs[0]!.at[0]).toBeCloseTo(9, 6);
    expect(wide.pegs[0]!.at[1]).toBeCloseTo(0, 6);
  });

  it("is nothing where nothing is cut", () => {
    const { chair } = studied(frame({ joint: "glue pva" }));
    expect(sectionsOfJoint(chair, chair.joints.get("seat-front to front.left")!)).toBeUndefined();
  });
});

describe("its picture", () => {
  it.each(["boathouse-mess-chair", "ladder-back", "mess-armchair", "harbour-chair"])(
    "of every joint of %s is small, whole and fetches nothing",
    (name) => {
      const files = Object.fromEntries(
        ["boathouse-joints.chair", `${name}.chair`].map((file) => [file, read(`samples/${file}`)]),
      );
      const { chair } = studied(files[`${name}.chair`]!, files);
      for (const joint of chair.joints.values()) {
        if (joint.tenon.length === 0) continue;
        const picture = jointPicture(chair, joint);
        expect(picture, joint.name).toBeDefined();
        expect(picture).toMatch(/^<svg .*<\/svg>$/);
        expect(picture).not.toMatch(/NaN|Infinity|href|undefined/);
        const [, width, height] = /width="([\d.]+)" height="([\d.]+)"/.exec(picture!)!;
        expect(Number(width), joint.name).toBeLessThanOrEqual(381);
        expect(Number(height), joint.name).toBeLessThanOrEqual(191);
        expect(Number(width)).toBeGreaterThan(60);
        expect(picture!.length).toBeLessThan(16_000);
      }
    },
  );
});
