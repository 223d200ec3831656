import { describe, expect, it } from "vitest";
import { bodyOf } from "../../../server/sitter/body.ts";
import { type Pose, poseOf, type SidePlace } from "../../../server/sitter/pose.ts";
import { sampleNames, studiedSample } from "../samples.ts";

const apart = (a: SidePlace, b: SidePlace) => Math.hypot(a[0] - b[0], a[1] - b[1]);

describe("a sitter in each sample has the measures of the survey", () => {
  it.each(sampleNames)("%s", (name) => {
    const { chair } = studiedSample(name);
    const body = bodyOf(chair.design.sitter.value);
    const { measures, shoes } = body;
    const pose = poseOf(chair, body) as Pose;
    // Buttock to the hollow of the knee, along the seat.
    expect(apart(pose.seated, pose.kneeHollow)).toBeCloseTo(measures["buttock-popliteal-length"], 6);
    // Feet rest on the floor or hang; the leg from the hollow of the knee to the sole is never longer than it is.
    const leg = measures["popliteal-height"] + shoes;
    expect(pose.heel[1]).toBe(pose.hangs);
    if (pose.hangs > 0) expect(pose.kneeHollow[1] - pose.heel[1]).toBeCloseTo(leg, 6);
    else expect(pose.kneeHollow[1]).toBeLessThanOrEqual(leg + 1e-9);
    // The knee is never behind the front edge of the seat.
    expect(pose.kneeHollow[0]).toBeLessThanOrEqual(chair.seat!.front.middle[1] + 0.5);
    expect(pose.elbow[1] - pose.seated[1]).toBeGreaterThan(measures["elbow-rest-height"] - 1);
    expect(apart(pose.seated, pose.head)).toBeLessThan(measures["sitting-height"]);
  });
});
