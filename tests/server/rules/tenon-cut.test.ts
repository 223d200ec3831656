import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf, otherwiseOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

describe("tenon-too-short", () => {
  const check = checkOf("tenon-too-short");
  const short = (long: number, mark = "") => frame({ joint: `tenon thick 8, long ${long}${mark}` });

  it("finds a tenon that goes less than halfway into its post", () => {
    check(short(14, "\n#                   ^^ tenon-too-short 14 mm … 20 mm or more"));
    expect(messagesOf(short(14), "tenon-too-short")).toEqual([
      "The tenon of seat-front into front goes 14 mm into 40 mm of front; 20 mm or more is needed.",
    ]);
    expect(fixed(short(14), "tenon-too-short", "Make it 20mm")).toBe(short(14).replace("14", "20mm"));
    check(short(20));
  });

  it("says nothing of through tenons, nor where another tenon comes from the far side", () => {
    check(frame({ joint: "tenon thick 8\nthrough" }));
    const middle = "post mid {\n  section 40 x 40\n  foot out 0, back 20\n  height 430\n}\n";
    const rails =
      "rail half pair {\n  from front to mid\n  section 22 x 60\n  up 300\n  joined stub\n}\njoint stub {\n  tenon thick 8, long 16\n}\n";
    const found = messagesOf(frame({ more: middle + rails }), "tenon-too-short");
    expect(found).toHaveLength(1);
    expect(found[0]).toContain("the tenon of half into front".replace("the", "The"));
  });

  it("takes a limit, and can be accepted", () => {
    check(`${short(14)}limit tenon-too-short to 0.35\n`);
    check(`${short(14)}accept tenon-too-short because "a plate behind it"\n`);
  });
});

describe("shoulder-too-narrow", () => {
  const check = checkOf("shoulder-too-narrow");
  const set = (from: number, mark = "") =>
    frame({ joint: `tenon thick 8, long 21\nset ${from} from outside${mark}` });

  it("finds a sliver at the outside, and the fix widens it", () => {
    check(set(1, "\n#   ^ shoulder-too-narrow 1 mm … 1.5 mm or more"));
    expect(messagesOf(set(1), "shoulder-too-narrow")).toEqual([
      "The tenon of seat-front into front has a shoulder of only 1 mm at its outside; 1.5 mm or more is needed, or none.",
    ]);
    expect(fixed(set(1), "shoulder-too-narrow", "Make it 1.5mm")).toBe(set(1).replace("set 1", "set 1.5mm"));
  });

  it("finds one at the top", () => {
    const top = (mark = "") => frame({ joint: `tenon thick 8, long 21\nshoulders top 1, bottom 6${mark}` });
    check(top("\n#             ^ shoulder-too-narrow 1 mm … 1.5 mm or more"));
    expect(fixed(top(), "shoulder-too-narrow", "Make it 1.5mm")).toBe(top().replace("top 1,", "top 1.5mm,"));
  });

  it("says nothing of a barefaced tenon: a shoulder left out is not a narrow one", () => {
    check(set(0));
    check(
      frame({
        joint: "tenon thick full, long 20",
        front: "section 50 x 50\nfoot out 200, back 20\nheight 430",
        back: "section 50 x 50\nfoot out 200, back 420\nheight 430",
      }),
    );
  });

  it("takes a limit, and can be accepted", () => {
    check(`${set(1)}limit shoulder-too-narrow to 1\n`);
    check(`${set(1)}accept shoulder-too-narrow because "veneered over"\n`);
  });
});

describe("tenon-short-grain", () => {
  const check = checkOf("tenon-short-grain");
  // The side rails run in 50 over 400: 1 in 8.
  const square = (mark = "", narrow = 150) =>
    frame({
      joint: `tenon thick 8, long 21\ntenon square${mark}`,
      back: `section 40 x 40\nfoot out ${narrow}, back 420\nheight 430`,
    });

  it("finds a square tenon on a rail that comes in at 1 in 8", () => {
    check(square("\n#     ^^^^^^ tenon-short-grain 1:8 … 1:10 or less"));
    expect(messagesOf(square(), "tenon-short-grain")).toEqual([
      "The grain runs out of the tenon of seat-side into front at 1:8 (7.1°); 1:10 or less is allowed.",
    ]);
    expect(Math.round((Math.atan(50 / 400) * 1800) / Math.PI) / 10).toBe(7.1);
    check(fixed(square(), "tenon-short-grain", "Cut it in line"));
  });

  it("is an error beyond 1 in 5", async () => {
    const { studied } = await import("../../check.ts");
    const worst = (narrow: number) =>
      studied(square("", narrow)).problems.find(({ code }) => code === "tenon-short-grain")?.severity;
    expect([worst(150), worst(110)]).toEqual(["warning", "error"]);
  });

  it("says nothing of 1 in 11, and takes a limit and a reason", () => {
    check(square("", 164));
    check(`${square()}limit tenon-short-grain to 0.13\n`);
    check(`${square()}accept tenon-short-grain because "riven on the skew"\n`);
  });
});

describe("peg-misplaced", () => {
  const check = checkOf("peg-misplaced");
  const pegged = (peg: string, mark = "") => frame({ joint: `tenon thick 8, long 21\npeg ${peg}${mark}` });

  it("finds a peg at the end of its tenon: mitred at 20 on its middle, 20 − 16 − 4 = 0", () => {
    check(pegged("8 draw 1 setback 16", "\n#   ^ peg-misplaced 0 mm … 5 mm or more"));
    expect(messagesOf(pegged("8 draw 1 setback 16"), "peg-misplaced")).toEqual([
      "The peg through the tenon of seat-front into front leaves 0 mm of wood to the end of the tenon; 5 mm or more is needed.",
    ]);
    check(fixed(pegged("8 draw 1 setback 16"), "peg-misplaced", "Set it 10mm from the shoulder"));
  });

  it("finds one at the post's edge, and adds a setback where none was given", () => {
    expect(messagesOf(pegged("8 setback 6"), "peg-misplaced")[0]).toContain(
      "leaves 2 mm of wood to the edge of the member",
    );
    check(pegged("8 draw 1"));
  });

  it("finds pegs that crowd each other: 44 / 4 / 2 − 4 = 1.5", () => {
    expect(messagesOf(pegged("8 count 4"), "peg-misplaced")[0]).toMatch(
      /leaves 1\.5 mm of wood to the next peg .*; 5 mm or more is needed\.$/,
    );
    check(pegged("8 count 2"));
  });

  it("takes a limit, and can be accepted", () => {
    check(`${pegged("8 setback 6")}limit peg-misplaced to 2\n`);
    check(`${pegged("8 setback 6")}accept peg-misplaced because "bound with wire"\n`);
  });
});

describe("peg-draws-too-far", () => {
  const check = checkOf("peg-draws-too-far");
  const drawn = (draw: number, mark = "") =>
    frame({ joint: `tenon thick 8, long 21\npeg 6 draw ${draw}${mark}` });

  it("finds holes bored too far apart", () => {
    check(drawn(4, "\n#   ^ peg-draws-too-far 4 mm … 3 mm or less"));
    expect(messagesOf(drawn(4), "peg-draws-too-far")).toEqual([
      "The peg through the tenon of seat-front into front is drawn 4 mm; 3 mm or less is allowed, and about 1 mm is usual at the size of chairs.",
    ]);
  });

  it("says nothing of the usual draw, and takes a limit and a reason", () => {
    check(drawn(1));
    check(drawn(3));
    check(`${drawn(4)}limit peg-draws-too-far to 4\n`);
    check(`${drawn(4)}accept peg-draws-too-far because "green oak"\n`);
  });
});

describe("post-weakened", () => {
  const check = checkOf("post-weakened");
  const limited = (joint: string, limit: number, mark = "") =>
    `${frame({ joint: joint + mark })}limit post-weakened to ${limit}\n`;

  // Two tenons 8 thick, each mitred to 20 on its middle, in 40 by 40: 1 − 2 · 8 · 20 / 1600 = 80 %. The rails lie from 360 to 420, the
  // tenons from 366 to 410: the middle is 388 up.
  it("finds rails at one height that leave too little of the post", () => {
    check(limited("tenon thick 8, long 26", 0.85, "\n#           ^ post-weakened 80 % … 85 % or more"));
    expect(messagesOf(limited("tenon thick 8, long 26", 0.85), "post-weakened")).toEqual([
      "Of front only 80 % is left 388 mm up, where seat-front and seat-side come in at one height; 85 % or more is needed.",
    ]);
  });

  it("says nothing when enough is left, or when the rails pass each other", () => {
    check(limited("tenon thick 8, long 26", 0.8));
    const stepped = limited("tenon thick 8, long 26", 0.85).replace(
      /(rail seat-side pair \{\n.*\n.*\n {2}up )420/,
      "$1370",
    );
    check(stepped);
  });

  it("by default half is enough, and it can be accepted", () => {
    const stout = "tenon thick 14, long 26";
    // 1 − 2 · 14 · 20 / 1600 = 65 %.
    check(frame({ joint: stout }));
    check(limited(stout, 0.65));
    check(`${limited(stout, 0.7)}accept post-weakened because "the seat ties it"\n`);
  });
});

describe("cannot-be-assembled", () => {
  const check = checkOf("cannot-be-assembled");

  /** Side rails in 35 over 400 whose tenons are square, and stretchers in line: the two want to go in along different lines. */
  const locked = (stretcher = "", fit = "") =>
    frame({
      joint: "tenon thick 12, long 34",
      back: "section 40 x 40\nfoot out 165, back 420\nheight 430",
      rails: frame()
        .slice(frame().indexOf("rail"), frame().indexOf("seat board"))
        .replaceAll("22 x 60", "34 x 60")
        .replace(
          /(rail seat-side[^}]*)\}/,
          "$1  end front {\n    tenon square\n  }\n  end back {\n    tenon square\n  }\n}",
        ),
      more: `rail stretcher pair {\n  from front to back\n  section 34 x 60\n  up 200\n  joined plain\n${stretcher}}\n${fit}`,
    });
  const squared = "  end front {\n    tenon square\n  }\n  end back {\n    tenon square\n  }\n";

  it("finds tenons that lock each other out, by how many degrees and how far", () => {
    const [said] = messagesOf(locked(), "cannot-be-assembled");
    // atan(35 / 400) = 5°, over 34 square to the face: 34 · tan 5° = 3 along the face.
    expect(said).toMatch(/^No order closes stretcher to front and stretcher to back: .* strays 3 mm \(5°\)/);
    expect(Math.round(34 * Math.sin(Math.atan(35 / 400)) * 10) / 10).toBe(3);
    expect(otherwiseOf(locked(), "cannot-be-assembled")).toEqual([
      "`tenon square` at stretcher to front and stretcher to back frees them.",
    ]);
  });

  it("is freed by the way out that it names", () => {
    check(locked(squared));
  });

  it("can be accepted", () => {
    check(locked("", 'accept cannot-be-assembled because "the posts are sprung"\n'));
  });
});
