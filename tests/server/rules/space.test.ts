import { describe, expect, it } from "vitest";
import { checkOf, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("parts-pass-through", "foot-hangs", "no-room", "cannot-be-built", "angle-not-met");

const short = "tenon thick 8, long 16";
const across = "rail across-middle {\n  across seat-side at 1/2\n  section 22 x 60\n  joined plain\n}\n";
const along = (at: string) =>
  `rail along-middle {\n  from seat-front at ${at} to seat-back at ${at}\n  section 22 x 60\n  joined plain\n}\n`;

describe("parts-pass-through", () => {
  it("finds two rails in one place and says how much they share", () => {
    const more = across + along("1/2");
    check(
      frame({
        joint: short,
        more: more.replace(
          "rail along-middle {",
          "rail along-middle {\n#    ^^^^^^^^^^^^ parts-pass-through 29040 mm³ … no shared wood",
        ),
      }),
    );
    expect(messagesOf(frame({ joint: short, more }), "parts-pass-through")).toEqual([
      "The rail along-middle and across-middle pass through each other: they share 29040 mm³.",
    ]);
  });

  it("tells of both sides of a pair once", () => {
    const low = "rail low pair {\n  from front to back\n  section 18 x 40\n  up 160\n  joined plain\n}\n";
    const through = "rail through {\n  across front\n  section 18 x 40\n  up 160\n  joined plain\n}\n";
    const struts = "post strut pair {\n  section 24 x 24\n  foot out 200, back 220\n  height 300\n}\n";
    expect(messagesOf(frame({ more: low + through + struts }), "parts-pass-through")).toHaveLength(1);
  });

  it("names left and right when a pair meets itself", () => {
    const legs = "post leg pair {\n  section 30 x 30\n  foot out 10, back 200\n  height 300\n}\n";
    expect(messagesOf(frame({ more: legs }), "parts-pass-through")).toEqual([
      "The post leg.right and leg.left pass through each other: they share 90000 mm³.",
    ]);
  });

  it("says nothing of tenons in their mortises, nor of rails that pass clear", () => {
    check(frame({ joint: short, more: across }));
    check(frame({ joint: short, more: along("1/3") }));
    check(frame());
  });

  it("can be accepted, by either part", () => {
    const more = across + along("1/2");
    check(
      frame({
        joint: short,
        more: `${more}accept parts-pass-through on across-middle because "halved together"\n`,
      }),
    );
  });
});

describe("foot-hangs", () => {
  it("finds the foot that hangs when the feet are trimmed unlike", () => {
    check(frame({ more: "trim back.left 6\n#              ^ foot-hangs 6 mm … 0.5 mm or less\n" }));
    expect(messagesOf(frame({ more: "trim back.left 6\n" }), "foot-hangs")).toEqual([
      "The foot of back.left hangs 6 mm above the floor while the others stand; 0.5 mm or less is allowed.",
    ]);
  });

  it("says nothing of pairs trimmed alike", () => {
    check(frame({ more: "trim back 6\n" }));
    check(frame({ more: "trim front.left, back.left 6\n" }));
  });

  it("takes a limit, and can be accepted", () => {
    check(frame({ more: "trim back.left 0.8\nlimit foot-hangs to 1\n" }));
    check(
      frame({
        more: 'trim back.left 6\naccept foot-hangs on back.left because "that corner of the floor is high"\n',
      }),
    );
  });
});

describe("no-room", () => {
  const back = "section 40 x 40\nfoot out 200, back 420\nheight 800\nrake 6deg above 450";
  const slats = (count: number) =>
    `rail crest {\n  across back\n  section 20 x 60\n  up 790\n  stand with posts\n  joined plain\n}\nslat back-slat {\n  from seat-back to crest\n  count ${count} even\n  #     ^^ no-room\n  section 9 x 40\n  joined thin\n}\njoint thin {\n  tenon thick 6, long 12\n}\n`;

  it("finds more slats than there is room for", () => {
    check(frame({ back, more: slats(12) }));
    expect(messagesOf(frame({ back, more: slats(12) }), "no-room")).toEqual([
      "The slat back-slat: 12 slats take up 480 mm side by side, and there are 360 mm between the posts.",
    ]);
  });

  it("says nothing of slats that fit", () => {
    check(frame({ back, more: slats(4).replace(/ {2}# .*\n/, "") }));
  });
});

describe("cannot-be-built", () => {
  it("tells what a joint lacks once, on the joint", () => {
    check(
      frame({ joint: "tenon thick 8" }).replace(
        "joint plain {",
        "joint plain {\n#     ^^^^^ cannot-be-built",
      ),
    );
    expect(messagesOf(frame({ joint: "tenon thick 8" }), "cannot-be-built")).toEqual([
      "The rail seat-front: its tenon has no length: say `long` in the joint.",
    ]);
  });
});

describe("angle-not-met", () => {
  const lean = (limit: string) => `angle leg-lean {\n  between floor, front\n  limit ${limit}\n}\n`;

  it("finds an angle outside its limit", () => {
    check(frame({ more: lean("2deg to 5deg\n  #     ^^^^^^^^^^^^ angle-not-met 0° … from 2° to 5°") }));
    expect(messagesOf(frame({ more: lean("at least 2deg") }), "angle-not-met")).toEqual([
      "The angle leg-lean is 0°, and must be at least 2°.",
    ]);
  });

  it("says nothing within it, and can be accepted", () => {
    check(frame({ more: lean("at most 1deg") }));
    check(
      frame({
        more: `${lean("at least 2deg")}accept angle-not-met on leg-lean because "plumb for this one"\n`,
      }),
    );
  });
});
