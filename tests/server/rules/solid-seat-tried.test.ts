/** What chairs on a solid seat are told when they are written as a maker would: one mistake once, the words of the part, the line that mends it. */
import { expect, it } from "vitest";
import { jointPlace } from "../../../server/rules/joints/joint-places.ts";
import { fixed, messagesOf, otherwiseOf, studied } from "../../check.ts";

const head = `units mm
timber white-ash moisture 9%
joint socket {
  round 24, long 30
}
joint stick-tenon {
  round 12, long 24
}
seat solid {
  up 440
  fall 0
  thick 46
  round 380
}
`;
const post = (lines: string) => `post back-post {
  stand on seat at out 0, back 335
  round 36
  height 800
  joined socket
${lines}}
`;
const crest = (course: string) => `rail crest {
  ${course}
  long 340
  section 40 x 70
}
`;

it("a crest carried by a post is said to lie over it, which mends it", () => {
  const text = `${head}${post("  top into crest with socket\n")}${crest("carried by back-post")}`;
  expect(messagesOf(text, "wrong-kind")).toEqual([
    "back-post is a post; a rail that lies on one is `over back-post`.",
  ]);
  const mended = fixed(text, "wrong-kind", "Write `over back-post`");
  expect(mended).toContain("\n  over back-post\n");
  expect(studied(mended).problems.filter(({ severity }) => severity === "error")).toEqual([]);
});

it("a back of a crest over one post leans as the post does, and is judged as a back", () => {
  const leaning = (rake: number) =>
    `${head}${post(`  rake ${rake}deg top back\n  top into crest with socket\n`)}${crest("over back-post")}`;
  const of = (rake: number) => studied(leaning(rake));
  expect(of(12).chair.values.get("backrest.rake")!.number).toBeCloseTo((12 * Math.PI) / 180, 9);
  expect(messagesOf(leaning(12), "rake-over-limit")).toEqual([]);
  expect(messagesOf(leaning(12), "back-lean-outside")).toEqual([]);
  expect(messagesOf(leaning(17), "back-lean-outside")).toHaveLength(1);
});

it("a crest that its post goes into by no joint is loose", () => {
  const text = `${head}${post("  top into crest\n")}${crest("over back-post")}`;
  expect(messagesOf(text, "member-without-joint")).toEqual([
    "The rail crest has no joint at its end towards back-post.",
  ]);
});

it("a thickness that was misread says nothing of the hollow and the bevel", () => {
  const inches = `units in
seat solid {
  up 17
  thick 1-3/4
  round 15
  hollow 1/2 over 4, rim 2
  bevel 1 x 1/2 below
}
`;
  expect(studied(inches).problems.map(({ code }) => code)).toEqual(["minus-spacing"]);
  expect(messagesOf(inches.replace("1-3/4", "1/4"), "impossible-size")).toHaveLength(2);
});

it("a stick that runs off an arm bow is told as a stick", () => {
  const text = `${head}bow arm-bow {
  hands out 220, back 150
  lie up 700
  rise 260
  section 22 x 34
}
stick side-stick pair {
  from seat to arm-bow
  at out 60, back 250
  heads margin 60
  round 14
  joined stick-tenon
}
`;
  expect(messagesOf(text, "rail-misses-post")).toHaveLength(1);
  expect(otherwiseOf(text, "rail-misses-post")).toEqual([
    "The stick would have to meet arm-bow more nearly square or be thinner there, or arm-bow be stouter.",
  ]);
});

it("what is wrong with a post's joint in the seat stands at that joint, not at the one in its crest", () => {
  const text = `${head}${post("  top into crest with stick-tenon\n")}${crest("over back-post")}`;
  const { chair } = studied(text);
  const joint = [...chair.joints.values()].find(
    ({ entered, part }) => entered.kind === "seat" && part === "back-post",
  )!;
  const { start, end } = jointPlace(chair, joint);
  expect(text.slice(start, end)).toBe("socket");
});
