import { describe, expect, it } from "vitest";
import { ruleOf } from "../../../server/rules/index.ts";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { flushRails, frame } from "../../plain-frame.ts";

describe("mortise-wall-thin", () => {
  const check = checkOf("mortise-wall-thin");
  const flush = (set: number, mark = "") =>
    frame({ rails: flushRails, joint: `tenon thick 8, long 20\nset ${set} from outside${mark}` });

  it("finds little wood between a mortise and the face beside it", () => {
    check(flush(2, "\n#   ^ mortise-wall-thin 2 mm … 3 mm or more"));
    expect(messagesOf(flush(2), "mortise-wall-thin")).toEqual([
      "Beside the mortise for the tenon of seat-side into front only 2 mm of wood is left; 3 mm or more is needed.",
    ]);
    expect(fixed(flush(2), "mortise-wall-thin", "Set it 3mm from outside")).toBe(
      flush(2).replace("set 2 from", "set 3mm from"),
    );
    check(flush(3));
  });

  it("knows on which side the wood is thin", () => {
    // The rail lies from 18 to 40 in, its tenon from 30 to 38: 2 are left at the post's inside.
    const rails = flushRails.replace("face flush", "face inset 18");
    const text = frame({ rails, joint: "tenon thick 8, long 20\nset 12 from outside" });
    expect(messagesOf(text, "mortise-wall-thin")).toEqual([
      "Beside the mortise for the tenon of seat-side into front only 2 mm of wood is left; 3 mm or more is needed.",
    ]);
    const mended = fixed(text, "mortise-wall-thin", "Set it 11mm from outside");
    expect(messagesOf(mended, "mortise-wall-thin")).toEqual([]);
  });

  it("finds a thin web between two mortises, with the length that leaves enough", () => {
    // Each stops 15 from its face, where the other's near cheek lies 16 in: 1 mm both ways, √2 across the corners.
    const text = (long: number, mark = "") =>
      frame({ joint: `tenon thick 8, long ${long}${mark}` }).replace("  mitre\n", "");
    check(text(15, "\n#                   ^^ mortise-wall-thin 1.4 mm … 3 mm or more"));
    const [said] = messagesOf(text(15), "mortise-wall-thin");
    // 3 mm across the corners wants 3 / √2 each way: 16 − 2.12 = 13.88; half a tenth is not told apart.
    expect(said).toBe(
      "Between the mortises for seat-front and seat-side in front only 1.4 mm of wood is left; 3 mm or more is needed.",
    );
    check(text(13.9));
  });

  it("finds dowels and twin tenons that stand too near each other", () => {
    // 44 between the shoulders: three of 13 are 14.67 apart, middle to middle.
    expect(
      messagesOf(
        frame({ joint: "dowels 3 round 13 long 40\nshoulders top 10, bottom 6" }),
        "mortise-wall-thin",
      )[0],
    ).toBe("Between the dowels of seat-front in front only 1.7 mm of wood is left; 3 mm or more is needed.");
    expect(
      messagesOf(frame({ joint: "tenon thick 8, long 20\ntwin gap 2" }), "mortise-wall-thin")[0],
    ).toContain("only 2 mm of wood is left; 3 mm or more is needed.");
    expect(
      messagesOf(
        frame({ joint: "dowels 3 round 15 long 40\nshoulders top 10, bottom 6" }),
        "cannot-be-built",
      )[0],
    ).toContain("its dowels have no room side by side");
  });

  it("takes a limit, and can be accepted", () => {
    check(`${flush(2)}limit mortise-wall-thin to 2\n`);
    check(`${flush(2)}accept mortise-wall-thin because "a light stool"\n`);
  });
});

describe("mortise-near-end", () => {
  const check = checkOf("mortise-near-end");
  const high = (top: number, mark = "") =>
    frame({ joint: `tenon thick 8, long 21\nshoulders top ${top}, bottom 6${mark}` }).replaceAll(
      "up 420",
      "up 428",
    );

  it("finds a mortise near a post's top: the post is 430 high, the rails are at 428, the shoulder is 2", () => {
    check(high(2, "\n#             ^ mortise-near-end 4 mm … 8 mm or more"));
    expect(messagesOf(high(2), "mortise-near-end")).toEqual([
      "Between the mortise for the tenon of seat-front into front and the top of front only 4 mm of wood is left; 8 mm or more is needed.",
    ]);
    expect(fixed(high(2), "mortise-near-end", "Make the shoulder 6mm")).toBe(
      high(2).replace("top 2", "top 6mm"),
    );
    check(high(6));
  });

  it("finds one near the foot", () => {
    const low = "rail low {\n  across front\n  section 22 x 40\n  up 46\n  joined plain\n}\n";
    const text = frame({ joint: "tenon thick 8, long 21\nshoulders top 10, bottom 0", more: low });
    expect(messagesOf(text, "mortise-near-end")).toEqual([
      "Between the mortise for the tenon of low into front and the foot of front only 6 mm of wood is left; 8 mm or more is needed.",
    ]);
  });

  it("takes a limit, and can be accepted", () => {
    check(`${high(2)}limit mortise-near-end to 4\n`);
    check(`${high(2)}accept mortise-near-end because "the horn is cut off later"\n`);
  });
});

describe("haunch-missing", () => {
  const check = checkOf("haunch-missing");
  const top = (more = "", mark = "") =>
    frame({ joint: `tenon thick 8, long 21\nshoulders top 14, bottom 6${mark}${more}` }).replaceAll(
      "up 420",
      "up 430",
    );

  it("finds a wide shoulder at a post's end with nothing to hold it", () => {
    check(top("", "\n#             ^^ haunch-missing 14 mm … a haunch"));
    expect(messagesOf(top(), "haunch-missing")).toEqual([
      "14 mm of seat-front above the tenon of seat-front into front is held by nothing at the post's end; a haunch keeps it flat, usually a third of the tenon's length, 7 mm.",
    ]);
  });

  it("is mended by its fix, and by a sloped haunch", () => {
    const mended = fixed(top(), "haunch-missing", "Leave a haunch 7mm long");
    expect(mended).toContain("  haunch long 7mm\n  shoulders top 14, bottom 6\n");
    check(mended);
    check(top("\nhaunch long 7 sloped"));
  });

  it("says nothing of a narrow shoulder, nor of a rail well below the end", () => {
    check(top().replace("top 14", "top 8"));
    check(top().replaceAll("up 430", "up 420"));
  });

  it("takes a limit, and can be accepted", () => {
    check(`${top()}limit haunch-missing to 0.25\n`);
    check(`${top()}accept haunch-missing because "a cap goes over it"\n`);
    expect(ruleOf("haunch-missing")?.severity).toBe("information");
  });
});
