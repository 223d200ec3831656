import { describe, expect, it } from "vitest";
import { checkOf, messagesOf } from "../../check.ts";
import { backRail, frame, frontRail, sideRail } from "../../plain-frame.ts";

const check = checkOf("post-tied-one-way", "seat-ring-open", "member-without-joint");

const noSeat = "\n";
const stretcher = "rail low pair {\n  from front to back\n  section 18 x 36\n  up 160\n  joined plain\n}\n";

describe("post-tied-one-way", () => {
  it("finds posts that only cross rails hold, each pair once", () => {
    const text = frame({ rails: frontRail + backRail, seat: noSeat });
    check(
      text
        .replace(
          "post front pair {",
          "post front pair {\n#    ^^^^^ post-tied-one-way one direction … two directions",
        )
        .replace(
          "post back pair {",
          "post back pair {\n#    ^^^^ post-tied-one-way one direction … two directions",
        ),
    );
    expect(messagesOf(text, "post-tied-one-way")[0]).toBe(
      "The post front is tied across the chair only, by seat-front.",
    );
  });

  it("finds posts that only side rails hold, and posts that nothing holds", () => {
    expect(messagesOf(frame({ rails: sideRail, seat: noSeat }), "post-tied-one-way")[0]).toBe(
      "The post front is tied front to back only, by seat-side.",
    );
    const lone = "post middle {\n  section 30 x 30\n  foot out 0, back 200\n  height 400\n}\n";
    expect(messagesOf(frame({ more: lone }), "post-tied-one-way")).toEqual([
      "The post middle is held by nothing: no rail enters it or lies over it.",
    ]);
  });

  it("says nothing of a whole frame", () => {
    check(frame());
    check(frame({ rails: frontRail + backRail + stretcher, seat: noSeat }));
  });

  it("waits until the text is whole: a line that cannot be read may be the rail that is missing", () => {
    const text = frame({
      rails: frontRail + backRail + sideRail.replace("from front", "frm front"),
      seat: noSeat,
    });
    expect(messagesOf(text, "post-tied-one-way")).toEqual([]);
  });

  it("takes a limit, and can be accepted", () => {
    const text = frame({ rails: frontRail + backRail, seat: noSeat });
    check(`${text}accept post-tied-one-way because "screwed to the wall"\n`);
    check(`${text}limit post-tied-one-way to 0deg\n`);
  });
});

describe("seat-ring-open", () => {
  const seat = "seat board {\n  on seat-front, seat-side\n  thick 20\n}\n";
  const low = backRail.replace("seat-back", "low-back").replace("up 420", "up 150");

  it("finds the open side and names the gap", () => {
    const text = frame({ rails: frontRail + sideRail + low, seat });
    check(
      text.replace(
        "  on seat-front, seat-side\n",
        "  on seat-front, seat-side\n  #  ^^^^^^^^^^^^^^^^^^^^^ seat-ring-open open between back.left and back.right … a closed ring\n",
      ),
    );
    expect(messagesOf(text, "seat-ring-open")).toEqual([
      "The rails under the seat do not close: the gap is between back.left and back.right.",
    ]);
  });

  it("counts a rail that closes the ring without carrying the seat, within the limit", () => {
    const lower = backRail.replace("up 420", "up 360");
    check(frame({ rails: frontRail + sideRail + lower, seat }));
    const lowest = backRail.replace("up 420", "up 320");
    expect(messagesOf(frame({ rails: frontRail + sideRail + lowest, seat }), "seat-ring-open")).toHaveLength(
      1,
    );
    check(frame({ rails: frontRail + sideRail + lowest, seat, more: "limit seat-ring-open to 130\n" }));
  });

  it("can be accepted", () => {
    const text = frame({ rails: frontRail + sideRail + low, seat });
    check(`${text}accept seat-ring-open because "the board is dovetailed to the side rails"\n`);
  });
});

describe("member-without-joint", () => {
  it("finds a member that nothing is said to hold", () => {
    check(
      frame({
        more: stretcher
          .replace("  joined plain\n", "")
          .replace("rail low pair {", "rail low pair {\n#    ^^^ member-without-joint"),
      }),
    );
    expect(
      messagesOf(frame({ more: stretcher.replace("  joined plain\n", "") }), "member-without-joint"),
    ).toEqual(["The rail low has no joint at either end."]);
  });

  it("looks at each end by itself", () => {
    const oneEnd = stretcher.replace("  joined plain\n", "  end front {\n    joined plain\n  }\n");
    expect(messagesOf(frame({ more: oneEnd }), "member-without-joint")).toEqual([
      "The rail low has no joint at its end towards back.",
    ]);
    check(frame({ more: oneEnd.replace("  end front", "  end back {\n    joined plain\n  }\n  end front") }));
  });

  it("looks for what holds a rail that lies over posts", () => {
    const cap = "rail cap {\n  over back\n  section 40 x 30\n  up 460\n}\n";
    const over = "section 40 x 40\nfoot out 200, back 420";
    expect(messagesOf(frame({ back: over, more: cap }), "member-without-joint")).toEqual([
      "The rail cap has no joint at either end.",
    ]);
    check(
      frame({
        back: `${over}\ntop into cap with peg`,
        more: `${cap}joint peg {\n  tenon thick 12, wide 24, long 18\n}\n`,
      }),
    );
  });

  it("can be accepted", () => {
    check(
      frame({
        more: `${stretcher.replace("  joined plain\n", "")}accept member-without-joint on low because "nailed on for the trial"\n`,
      }),
    );
  });
});
