import { describe, expect, it } from "vitest";
import { gravity, loadedOf } from "../../../server/floor/loaded.ts";
import data from "../../../server/floor/loads.json" with { type: "json" };
import { balanceOf } from "../../../server/floor/tips.ts";
import { movePoint } from "../../../server/geometry/motion.ts";
import { between } from "../../../server/geometry/vec.ts";
import { bodyOf } from "../../../server/sitter/body.ts";
import { childWeight } from "../../../server/sitter/child-weight.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";
import { studiedSample } from "../samples.ts";

describe("a child leaning over the back of the mess chair", () => {
  const { chair } = studiedSample("boathouse-mess-chair");
  const { beyond, weight } = balanceOf(chair);
  const child = beyond.find(({ kind }) => kind === "child")!;

  it("is in balance with itself: what it presses down is its weight, and its pushes cancel", () => {
    const [, knees, crest] = child.loads;
    expect(-(knees!.force[2] + crest!.force[2])).toBeCloseTo(childWeight(8)[2] * gravity, 9);
    expect(knees!.force[1] + crest!.force[1]).toBeCloseTo(0, 12);
  });

  it("rests the data's share of its weight on the crest, and pushes it by the data's share backwards", () => {
    const [, knees, crest] = child.loads;
    const { crestShare, push } = data.kneelingChild;
    const pressing = childWeight(8)[2] * gravity;
    expect(crest!.force).toEqual([0, push.value * pressing, -crestShare.value * pressing]);
    expect(knees!.force[2]).toBeCloseTo(-(1 - crestShare.value) * pressing, 9);
  });

  it("by moments about the back feet, added up as statics has it", () => {
    const [own, knees, crest] = child.loads;
    const line = child.line.from[1];
    // What holds the chair down presses inside the line or pushes forwards; what lifts it is the rest: margin = holding / lifting.
    const moments = [own!, knees!, crest!].flatMap(({ at, force }) => [
      -force[2] * (line - at[1]),
      -force[1] * at[2],
    ]);
    const sum = (some: number[]) => some.reduce((total, each) => total + each, 0);
    const holding = sum(moments.filter((moment) => moment > 0));
    const lifting = -sum(moments.filter((moment) => moment < 0));
    expect(child.margin).toBeCloseTo(holding / lifting, 9);
    expect(own!.force[2]).toBeCloseTo(-weight.mass * gravity, 9);
  });
});

describe("what the chair is loaded by", () => {
  const { chair } = studiedSample("boathouse-mess-chair");

  it("sits lower by as much as the seat gives under a sitter", () => {
    const loaded = loadedOf(chair, weigh(chair))!;
    const [, , z] = movePoint(chair.stance, between(chair.seat!.front.middle, chair.seat!.back.middle, 0.5));
    expect(chair.seat?.design.sag?.value).toBe(15);
    expect(loaded.unloadedHeight).toBeCloseTo(z, 9);
    expect(loaded.seatHeight).toBeCloseTo(z - 15, 9);
  });

  it("has no weight as long as the timber of a part is not known", () => {
    const { chair: unknown } = studied(frame());
    expect(weigh(unknown).unknown.length).toBeGreaterThan(0);
    expect(unknown.values.has("weight")).toBe(false);
    expect(chair.values.get("weight")?.number).toBeCloseTo(weigh(chair).mass, 9);
  });
});

describe("the middle sitter", () => {
  // ANSUR II medians, read off the table by hand.
  it("has the survey's medians, halfway between women and men when both are meant", () => {
    expect(bodyOf({ is: "adult", group: "women" }).measures.stature).toBe(1626);
    expect(bodyOf({ is: "adult", group: "women" }).measures["popliteal-height"]).toBe(387);
    const both = bodyOf({ is: "adult" }).measures.stature;
    expect(both).toBeCloseTo((1626 + bodyOf({ is: "adult", group: "men" }).measures.stature) / 2, 9);
  });

  it("a named one keeps the measures given and has the others in proportion", () => {
    const given = (value: number) => ({ value, at: { start: 0, end: 0 } });
    const { measures } = bodyOf({
      is: "named",
      measures: new Map([
        ["stature", given(1900)],
        ["popliteal-height", given(470)],
      ]),
    });
    expect(measures["popliteal-height"]).toBe(470);
    const middle = bodyOf({ is: "adult" }).measures;
    expect(measures["sitting-height"] / middle["sitting-height"]).toBeCloseTo(1900 / middle.stature, 9);
  });

  // EN 1729-1 size mark 2: stature 1080 to 1210, popliteal 280 to 315 (seen).
  it("a child has the middle of its size mark", () => {
    const { measures, shoes } = bodyOf({ is: "school-mark", mark: 2 });
    expect(measures.stature).toBe(1145);
    expect(measures["popliteal-height"]).toBe(297.5);
    expect(shoes).toBe(20);
  });
});
