import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf, studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("tenon-too-long");

const long = "tenon thick 8, long 36";
const marked = `${long}\n#                   ^^ tenon-too-long 36 mm … 34 mm or less`;

describe("tenon-too-long", () => {
  it("finds too little wood beyond a blind tenon", () => {
    check(frame({ joint: marked }));
    expect(messagesOf(frame({ joint: long }), "tenon-too-long")).toEqual([
      "The tenon of seat-front into front is 36 mm long where front is 40 mm deep, which leaves 4 mm beyond it; 34 mm or less is allowed.",
    ]);
  });

  it("finds one that comes out, which may be meant", () => {
    const out = "tenon thick 8, long 44";
    expect(messagesOf(frame({ joint: out }), "tenon-too-long")).toEqual([
      "The tenon of seat-front into front is 44 mm long where front is 40 mm deep and comes out at the other side; 34 mm or less is allowed unless it says `through`.",
    ]);
    check(frame({ joint: `${out}\nthrough wedged` }));
  });

  it("says nothing of one that leaves as much as it must", () => {
    check(frame({ joint: "tenon thick 8, long 34" }));
    check(frame({ joint: "round 16, long 34" }));
  });

  it("is mended by the most that is allowed", () => {
    expect(fixed(frame({ joint: long }), "tenon-too-long", "Make it 34mm long")).toBe(
      frame({ joint: "tenon thick 8, long 34mm" }),
    );
  });

  it("is made shorter to a sixteenth of an inch in an inch file", () => {
    const inches = read("samples/joined-stool.chair").replace("long 1 1/8", "long 2");
    const [fix] = studied(inches).problems.find(({ code }) => code === "tenon-too-long")?.fixes ?? [];
    expect(fix?.title).toMatch(/^Make it \d( \d+\/(2|4|8|16))?in long$/);
  });

  it("takes another least, and can be accepted", () => {
    check(frame({ joint: long, more: "limit tenon-too-long to 4\n" }));
    check(
      frame({
        joint: "tenon thick 8, long 33\n#                   ^^ tenon-too-long 33 mm … 32 mm or less",
        more: "limit tenon-too-long at least 8\n",
      }),
    );
    check(
      frame({
        joint: long,
        more: 'accept tenon-too-long on front because "bored, not chopped"\naccept tenon-too-long on back because "bored, not chopped"\n',
      }),
    );
  });
});
