import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf, otherwiseOf } from "../../check.ts";
import { flushRails, frame } from "../../plain-frame.ts";
import { studied } from "../range/files.ts";

const check = checkOf("tenons-meet");
const unmitred = (text: string) => text.replace("  mitre\n", "");
const meeting = unmitred(frame());

/** Narrow at the back, so that square tenons of the side rails point outward there. */
const tapered = (joint: string) =>
  unmitred(frame({ joint, back: "section 40 x 40\nfoot out 130, back 420\nheight 430" }));

describe("tenons-meet", () => {
  // Tenons 8 thick and 26 long from two faces of a post of 40 share 8 x 8 mm in plan, from 10 below the top of the rails to 6
  // above their lower edge: 60 − 16 = 44 high. Each must stop 16 from its face, where the other's cheek begins: (40 − 8) / 2.
  it("finds two tenons in one place, with the ways out", () => {
    check(
      unmitred(
        frame({ joint: "tenon thick 8, long 26\n#                   ^^ tenons-meet 2816 mm³ … none" }),
      ),
    );
    expect(8 * 8 * 44).toBe(2816);
    expect(messagesOf(meeting, "tenons-meet")).toEqual([
      "The tenons of seat-front and seat-side meet inside front: 2816 mm³ of both are in one place.",
    ]);
  });

  it("is mended by each of its fixes, and by a rail put lower", () => {
    for (const title of ["Mitre them", "Make them 16mm long"]) {
      expect(messagesOf(fixed(meeting, "tenons-meet", title), "tenons-meet"), title).toEqual([]);
    }
    expect(messagesOf(meeting.replace("long 26", "long 17"), "tenons-meet")).toHaveLength(1);
    const lower = (by: number) => meeting.replace(/(rail seat-side[^}]*up )420/, `$1${420 - by}`);
    expect(messagesOf(lower(43), "tenons-meet")[0]).toContain(`${8 * 8} mm³`);
    expect(messagesOf(lower(44), "tenons-meet")).toEqual([]);
  });

  it("names the set that passes, and the fix takes it", () => {
    const square = tapered("tenon thick 8, long 16.5\ntenon square\nset 7 from outside");
    const [said] = otherwiseOf(square, "tenons-meet");
    const further = /set both ([\d.]+) mm further out/.exec(said ?? "")?.[1];
    expect(Number(further)).toBeGreaterThan(0);
    const set = Math.floor((7 - Number(further)) * 10 + 0.5) / 10;
    const mended = fixed(square, "tenons-meet", `Set them ${set}mm from outside`);
    expect(mended).toContain(`set ${set}mm from outside`);
    expect(messagesOf(mended, "tenons-meet")).toEqual([]);
  });

  it("names the left of two twins, whose figures differ by rounding alone", () => {
    const leaning = (back: number, rake: number) =>
      `section 45 x 40\nat 400 out 184, back ${back}\nheight 560\nsplay -4deg\nrake ${rake}deg`;
    const text = unmitred(
      frame({
        joint: "tenon thick 8, long 26",
        front: leaning(20, -7),
        back: leaning(400, 7),
      }),
    );
    const named = [420, 419.3, 417.77, 411.1, 409.95, 401.03].flatMap((up) =>
      studied(text.replace(/(rail seat-side[^}]*up )420/, `$1${up}`)).problems.flatMap(
        ({ code, subject = "" }) => (code === "tenons-meet" ? [subject.endsWith(".left")] : []),
      ),
    );
    expect(named).toEqual(Array.from({ length: 6 }, () => true));
  });

  it("names a tenon that would pass if it were cut square", () => {
    const text = (line: string) =>
      frame({
        joint: `tenon thick 8, long 22\ntenon ${line}`,
        back: "section 40 x 40\nfoot out 110, back 420\nheight 430",
        rails: flushRails,
      }).replace("  mitre\n", "");
    const [said] = messagesOf(text("in-line"), "tenons-meet");
    expect(said).toContain("meet inside back");
    expect(otherwiseOf(text("in-line"), "tenons-meet")[0]).toContain(
      "cut that of seat-side square to the post",
    );
    expect(messagesOf(text("square"), "tenons-meet")).toEqual([]);
  });

  it("names the sides where the two rails are a pair", () => {
    const text = `joint plain {
  tenon thick 10, long 25
  shoulders top 8, bottom 6
}
post front pair {
  section 45 x 45
  foot out 250, back 0
  height 440
}
post back {
  section 45 x 45
  foot out 0, back 420
  turn 45deg
  height 440
}
rail side pair {
  from front to back
  section 22 x 60
  up 420
  joined plain
}
`;
    expect(messagesOf(text, "tenons-meet")[0]).toMatch(
      /^The tenons of side\.(left and side\.right|right and side\.left) meet inside back:/,
    );
  });

  it("says nothing of mitred tenons, nor of those that stop short", () => {
    check(frame());
    check(unmitred(frame({ joint: "tenon thick 8, long 16" })));
  });

  it("can be accepted", () => {
    check(`${meeting}accept tenons-meet because "halved over each other"\n`);
  });
});
