import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("tenon-too-wide");

const bare = "shoulders top 0, bottom 0";

describe("tenon-too-wide", () => {
  it("finds a tenon wider than its rail", () => {
    const wide = `tenon thick 8, wide 66, long 26`;
    check(frame({ joint: `${wide}\n#                   ^^ tenon-too-wide 66 mm … 60 mm or less\n${bare}` }));
    expect(messagesOf(frame({ joint: `${wide}\n${bare}` }), "tenon-too-wide")).toEqual([
      "The tenon of seat-front into front is 66 mm wide and stands 6 mm out of wood that is 60 mm wide; 60 mm or less is allowed.",
    ]);
    expect(fixed(frame({ joint: `${wide}\n${bare}` }), "tenon-too-wide", "Make it 60mm")).toBe(
      frame({ joint: `tenon thick 8, wide 60mm, long 26\n${bare}` }),
    );
  });

  it("counts the shoulders that are given", () => {
    check(
      frame({
        joint: `tenon thick 8, wide 50, long 26
#                   ^^ tenon-too-wide 50 mm … 45 mm or less
shoulders top 15`,
      }),
    );
  });

  it("finds a tenon set past a face, and one thicker than its rail", () => {
    check(
      frame({
        joint: `tenon thick 8, long 26
set 16 from outside
#   ^^ tenon-too-wide 8 mm … within 22 mm
shoulders top 10, bottom 6`,
      }),
    );
    check(
      frame({
        joint: `tenon thick 24, long 15\n#           ^^ mortise-too-wide\n#           ^^ tenon-too-wide`,
      }).replaceAll("40 x 40", "42 x 42"),
    );
  });

  it("says nothing of a tenon as wide as its rail", () => {
    check(frame({ joint: `tenon thick 8, wide 60, long 26\n${bare}` }));
  });

  it("has no figure to change, and can be accepted", () => {
    const joint = `tenon thick 8, wide 66, long 26\n${bare}`;
    check(
      frame({
        joint: `tenon thick 8, wide 66, long 26\n#                   ^^ tenon-too-wide\n${bare}`,
        more: "limit tenon-too-wide to 70\n#     ^^^^^^^^^^^^^^ limit-does-not-fit\n",
      }),
    );
    check(frame({ joint, more: 'accept tenon-too-wide because "the rail is made up with a strip"\n' }));
  });
});
