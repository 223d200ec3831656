import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("tenon-too-wide-for-thickness");
// Rails of 60 with shoulders of 4: 52 wide, 6 thick.
const broad = (mark = "", more = "") =>
  frame({ joint: `tenon thick 6, long 26${mark}\nshoulders top 4, bottom 4${more}` });

describe("tenon-too-wide-for-thickness", () => {
  it("finds a tenon many times as wide as it is thick, and doubles it", () => {
    check(broad("\n#           ^ tenon-too-wide-for-thickness 8.7 times … 8 times or less"));
    expect(Math.round((52 / 6) * 10) / 10).toBe(8.7);
    expect(messagesOf(broad(), "tenon-too-wide-for-thickness")).toEqual([
      "The tenon of seat-front into front is 52 mm wide and 6 mm thick, 8.7 times as wide; 8 times or less is allowed.",
    ]);
    const mended = fixed(broad(), "tenon-too-wide-for-thickness", "Make two of it");
    expect(mended).toContain("  twin gap 17.3mm\n  tenon thick 6, long 26\n");
    check(mended);
  });

  it("looks at each of twin tenons", () => {
    check(broad("", "\ntwin gap 4"));
    check(
      broad("", "\ntwin gap 4\nfit 0")
        .replace("thick 6", "thick 2.5")
        .replace("twin gap 4", "twin gap 4\n#          ^ tenon-too-wide-for-thickness 9.6 times"),
    );
  });

  it("takes a limit, and can be accepted", () => {
    check(`${broad()}limit tenon-too-wide-for-thickness to 9\n`);
    check(`${broad()}accept tenon-too-wide-for-thickness because "quarter-sawn, and it hardly moves"\n`);
    check(
      `${frame({ joint: "tenon thick 8, long 26\n#           ^ tenon-too-wide-for-thickness 5.5 times … 5 times or less" })}limit tenon-too-wide-for-thickness to 5\n`,
    );
  });
});
