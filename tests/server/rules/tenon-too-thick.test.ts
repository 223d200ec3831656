import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("tenon-too-thick");

const thick = "tenon thick 16, long 26";
const marked = `${thick}\n#           ^^ tenon-too-thick 16 mm … 14.7 mm or less`;

describe("tenon-too-thick", () => {
  it("finds shoulders that are slivers", () => {
    check(frame({ joint: marked }));
    expect(messagesOf(frame({ joint: thick }), "tenon-too-thick")).toEqual([
      "The tenon of seat-front into front is 16 mm thick on wood 22 mm thick, which leaves a shoulder of 3 mm; 14.7 mm or less is allowed.",
    ]);
  });

  it("says nothing of two thirds, of a bare-faced tenon, of a turned one", () => {
    check(frame({ joint: "tenon thick 14.7, long 26" }));
    check(frame({ joint: "tenon thick full, long 15" }).replaceAll("22 x 60", "16 x 60"));
    check(frame({ joint: "round 18, long 26" }));
  });

  it("is mended by the most that is allowed", () => {
    expect(fixed(frame({ joint: thick }), "tenon-too-thick", "Make it 14.7mm")).toBe(
      frame({ joint: "tenon thick 14.7mm, long 26" }),
    );
  });

  it("takes a limit, and can be accepted", () => {
    check(frame({ joint: thick, more: "limit tenon-too-thick to 3/4 of rail\n" }));
    check(
      frame({ joint: thick, more: 'accept tenon-too-thick because "shoulders only hide the mortise"\n' }),
    );
  });
});
