import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { backFrame } from "../../plain-frame.ts";

const check = checkOf("rake-over-limit", "rake-under-limit");

const asked = "angle back-rake {\n  between seat, back above 500\n  limit 5deg to 7deg\n}\n";

describe("rake-over-limit", () => {
  it("finds a back that leans too far for a grown sitter", () => {
    check(backFrame("rake 9deg above 450\n#    ^^^^ rake-over-limit 9° … 7° or less"));
    expect(messagesOf(backFrame("rake 9deg above 450"), "rake-over-limit")).toEqual([
      "The post back leans 9° from square to the seat; 7° or less is allowed.",
    ]);
  });

  it("takes the seat's slope from its rails, which takes up as much, and not the trim, which leans both alike", () => {
    const falling = backFrame("rake 8deg above 450")
      .replace(
        "rail seat-back {\n  across back\n  section 22 x 60\n  up 420",
        "rail seat-back {\n  across back\n  section 22 x 60\n  up 406",
      )
      .replace(
        "rail seat-side pair {\n  from front to back\n  section 22 x 60\n  up 420",
        "rail seat-side pair {\n  from front to back\n  section 22 x 60\n  up 420\n  fall 14",
      );
    check(falling);
    check(backFrame("rake 8deg above 450\n#    ^^^^ rake-over-limit", "trim back 14\n"));
  });

  it("leaves children's chairs, stools and other angles alone", () => {
    check(`sitter child 5 to 7\n${backFrame("rake 9deg above 450")}`);
  });

  it("is mended where the figure stands, in the post or in its let", () => {
    expect(fixed(backFrame("rake 9deg above 450"), "rake-over-limit", "Make it 7deg")).toBe(
      backFrame("rake 7deg above 450"),
    );
    const lean = "let back-lean = 9deg within 4deg to 10deg\n";
    expect(
      fixed(lean + backFrame("rake back-lean above 450"), "rake-over-limit", "Make back-lean 7deg"),
    ).toBe(lean.replace("9deg", "7deg") + backFrame("rake back-lean above 450"));
  });

  it("takes a limit, and can be accepted on the post", () => {
    check(backFrame("rake 9deg above 450", "limit rake-over-limit to 9.5deg\n"));
    check(
      backFrame("rake 9deg above 450", 'accept rake-over-limit on back because "for the stove corner"\n'),
    );
  });

  it("gives way to an angle of the file's own, and names it", () => {
    check(backFrame("rake 9deg above 450", asked.replace("7deg", "10deg")));
    const broken = backFrame("rake 9deg above 450", asked);
    expect(messagesOf(broken, "rake-over-limit")).toEqual([
      "The post back leans 9° from square to the seat; 7° or less is allowed by back-rake.",
    ]);
    const { problems } = check(backFrame("rake 9deg above 450\n#    ^^^^ rake-over-limit", asked));
    expect(problems[0]?.related?.[0]?.message).toBe("the limit stands here");
    check(
      backFrame("rake 9deg above 450", `${asked}accept rake-over-limit on back-rake because "a trial"\n`),
    );
  });
});

describe("rake-under-limit", () => {
  it("finds a back that is too upright", () => {
    check(backFrame("rake 3deg above 450\n#    ^^^^ rake-under-limit 3° … 5° or more"));
    expect(messagesOf(backFrame("rake 3deg above 450"), "rake-under-limit")).toEqual([
      "The post back leans 3° from square to the seat; 5° or more is allowed.",
    ]);
  });

  it("stands on the post's place when nothing leans it, and on its name when that is all there is", () => {
    check(
      backFrame("").replace(
        "  foot out 200, back 420\n  height 900",
        "  foot out 200, back 420\n  #        ^^^^^^^^^^^^^ rake-under-limit 0° … 5° or more\n  height 900",
      ),
    );
  });

  it("says nothing of tall posts beside the sitter, as the side posts of a corner chair are", () => {
    const beside = (back: number) => `${backFrame("rake 6deg above 450")}
post stand pair {
  section 40 x 40
  foot out 260, back ${back}
  height 700
}
`;
    for (const back of [200, 240, 300]) check(beside(back));
    check(
      beside(415).replace(
        "  foot out 260, back 415",
        "$&\n  #        ^^^^^^^^^^^^^ rake-under-limit 0° … 5° or more",
      ),
    );
  });

  it("says nothing from 5° to 7°", () => {
    for (const lean of ["5deg", "6deg", "7deg", "1:9"]) check(backFrame(`rake ${lean} above 450`));
  });

  it("is mended, limited, accepted", () => {
    expect(fixed(backFrame("rake 3deg above 450"), "rake-under-limit", "Make it 5deg")).toBe(
      backFrame("rake 5deg above 450"),
    );
    check(backFrame("rake 3deg above 450", "limit rake-under-limit at least 2deg\n"));
    check(
      backFrame("rake 3deg above 450", 'accept rake-under-limit because "a hall chair, not sat in long"\n'),
    );
  });
});
