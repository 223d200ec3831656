import { describe, expect, it } from "vitest";
import { checkOf, messagesOf } from "../../check.ts";
import { flushRails, frame } from "../../plain-frame.ts";

const check = checkOf("mortise-breaks-out");

const narrowBack = "section 40 x 40\nfoot out 150, back 420\nheight 430";
const broken = { back: narrowBack, rails: flushRails, joint: "tenon thick 8, long 26\nset 0 from outside" };

describe("mortise-breaks-out", () => {
  it("finds a tenon that runs out of the side of its post", () => {
    check(
      frame({
        ...broken,
        joint: `${broken.joint}\n#   ^ mortise-breaks-out 3.6 mm outside … within the wood`,
      }),
    );
    expect(messagesOf(frame(broken), "mortise-breaks-out")).toEqual([
      "The mortise for the tenon of seat-side into front breaks 3.6 mm out of the side of front.",
    ]);
  });

  it("says nothing when it is set further in, or square to the post", () => {
    check(frame({ ...broken, joint: "tenon thick 8, long 26\nset 6 from outside" }));
    check(frame({ ...broken, joint: `${broken.joint}\ntenon square` }));
  });

  it("does not tell of a rail that misses its post a second time", () => {
    const off = flushRails.replace("face flush", "face inset -12");
    const text = frame({ ...broken, rails: off });
    expect(messagesOf(text, "rail-misses-post")).toHaveLength(1);
    expect(messagesOf(text, "mortise-breaks-out")).toEqual([]);
  });

  it("can be accepted", () => {
    check(
      frame({
        ...broken,
        more: 'accept mortise-breaks-out on seat-side because "a loose tongue, let in from outside"\n',
      }),
    );
  });
});
