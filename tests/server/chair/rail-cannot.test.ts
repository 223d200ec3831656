import { describe, expect, it } from "vitest";
import { measureBody } from "../../../server/geometry/body.ts";
import { across, DEG, fromTo, post, type RailFacts } from "./fixtures.ts";
import { build, straight } from "./rails.ts";

describe("what cannot be", () => {
  it("a rail above its posts reaches nothing", () => {
    const { faults } = build({ course: across("front"), section: [20, 60], up: 520 });
    expect(faults).toHaveLength(2);
    expect(faults[0]).toMatchObject({
      is: "end-reaches-nothing",
      part: "it",
      end: "left",
      towards: "front.left",
    });
    expect(faults[0]!.is === "end-reaches-nothing" && faults[0]!.gap).toBeCloseTo(30, 9);
  });

  it("a rail whose shoulder runs past the top of its post is told by how much", () => {
    const { faults } = build({ course: across("front"), section: [20, 60], up: 437 });
    expect(faults[0]!.is === "rail-misses-post" && faults[0]!.by).toBeCloseTo(7, 9);
  });

  it("a flush plumb rail on a raked post stands off its face", () => {
    const raked = post("front", {
      section: [40, 40],
      place: { out: 200, back: 0 },
      height: 430,
      rake: 10 * DEG,
    });
    const { faults } = build(
      { course: across("front"), section: [20, 60], up: 400, face: "flush" },
      raked,
      straight("back", 200, 400),
    );
    // Going down from its top edge the post falls 60 tan 10° forward of it, inside the rail's face: nothing stands off there;
    expect(faults).toEqual([]);
    const back = post("front", {
      section: [40, 40],
      place: { out: 200, back: 0 },
      height: 430,
      rake: -10 * DEG,
    });
    const other = build(
      { course: across("front"), section: [20, 60], up: 400, face: "flush" },
      back,
      straight("back", 200, 400),
    );
    expect(other.faults[0]!.is === "rail-misses-post" && other.faults[0]!.by).toBeCloseTo(
      60 * Math.sin(10 * DEG),
      6,
    );
  });

  it("a shoulder on a curve or over a knee is told, and the heights", () => {
    const bent = (over: number) =>
      post("back", {
        section: [40, 40],
        place: { out: 200, back: 400 },
        height: 800,
        knees: [{ height: 370, stretch: "above", slope: 9 * DEG, over }],
      });
    const facts: RailFacts = { pair: true, course: fromTo("front", "back"), section: [20, 60], up: 400 };
    const knee = build(facts, straight("front", 200, 0), bent(0)).faults[0]!;
    expect(knee).toMatchObject({ is: "shoulder-over-knee", part: "it.left", end: "back" });
    expect(knee.is === "shoulder-over-knee" && [knee.height, knee.turn / DEG]).toEqual([
      expect.closeTo(370, 9),
      expect.closeTo(9, 6),
    ]);
    const curve = build(facts, straight("front", 200, 0), bent(40)).faults[0]!;
    expect(curve.is === "shoulder-on-curve" && [Math.round(curve.from), Math.round(curve.to)]).toEqual([
      350, 390,
    ]);
    // Across the back the side faces are flat through the bend.
    expect(
      build({ ...facts, pair: false, course: across("back") }, straight("front", 200, 0), bent(40)).faults,
    ).toEqual([]);
  });

  it("curves that no circle has are told and left out", () => {
    const wild = build({
      course: across("front"),
      section: [20, 60],
      up: 400,
      arches: [{ rise: 60, edge: "below" }],
      bow: { rise: 200, towards: "back" },
    });
    expect(wild.faults.map((fault) => fault.is)).toEqual(["no-room", "no-room"]);
    expect(measureBody(wild.rails.get("it")!.body).volume).toBeCloseTo(360 * 20 * 60, 6);
  });
});
