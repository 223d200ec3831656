import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("mortise-too-wide");

const narrow = "section 26 x 40\nfoot out 200, back 20\nheight 430";
const broken = { joint: "tenon thick 14, long 20", front: narrow };

describe("mortise-too-wide", () => {
  it("finds a mortise that takes more than half of a post", () => {
    check(
      frame({ ...broken, joint: `${broken.joint}\n#           ^^ mortise-too-wide 14 mm … 13 mm or less` }),
    );
    expect(messagesOf(frame(broken), "mortise-too-wide")).toEqual([
      "The tenon of seat-side into front is 14 mm thick where front is 26 mm wide; 13 mm or less is allowed.",
    ]);
  });

  it("measures turned posts at the mortise", () => {
    const turned = "round 30\nfoot out 200, back 20\nheight 430";
    check(
      frame({
        front: turned,
        joint: "round 16, long 20\n#     ^^ mortise-too-wide 16 mm … 15 mm or less",
      }).replaceAll("22 x 60", "18 x 60"),
    );
  });

  it("says nothing of half", () => {
    check(frame({ ...broken, joint: "tenon thick 13, long 20" }));
  });

  it("is mended by the most that is allowed", () => {
    expect(fixed(frame(broken), "mortise-too-wide", "Make it 13mm")).toBe(
      frame({ ...broken, joint: "tenon thick 13mm, long 20" }),
    );
  });

  it("takes a limit, and can be accepted", () => {
    check(frame({ ...broken, more: "limit mortise-too-wide to 55%\n" }));
    check(frame({ ...broken, more: 'accept mortise-too-wide on front because "banded with brass"\n' }));
  });
});
