import { describe, expect, it } from "vitest";
import { choicesOf, edited, exactly, rewrite, stepped } from "../../../server/range/choice.ts";
import { choiceIn, plain, samples, studied } from "./files.ts";

const mess = samples["boathouse-mess-chair.chair"] ?? "";
const stool = samples["joined-stool.chair"] ?? "";

describe("the figures that may be moved", () => {
  it("are known by where they stand, each once", () => {
    const { tree, design } = studied(mess);
    const names = choicesOf(tree, design).map(({ name }) => name);
    expect(names).toEqual(
      expect.arrayContaining([
        "seat-height",
        "back.height",
        "back.foot.back",
        "trim.back",
        "back.kick",
        "side-stretcher.up",
      ]),
    );
    expect(new Set(names).size).toBe(names.length);
  });

  it("leave out sums, which a figure would lose", () => {
    const { tree, design } = studied(plain());
    const choices = choicesOf(tree, design);
    expect(choices.map(({ name }) => name)).not.toContain("front.height");
    expect(choiceIn(stool, "rail-top").plain).toBe(false);
  });

  it("have the range of the text, else half to twice the figure", () => {
    expect(choiceIn(mess, "seat-height")).toMatchObject({
      low: 420,
      high: 470,
      now: 440,
      unit: "mm",
      bounded: true,
    });
    expect(choiceIn(mess, "back.height")).toMatchObject({ low: 465, high: 1860, bounded: false });
    expect(choiceIn(mess, "back-lean")).toMatchObject({ now: 6.5, unit: "deg", low: 3.25, high: 13 });
  });

  it("are written as the file writes them", () => {
    const inch = choiceIn(stool, "stool-height");
    expect(stepped(inch, 17.55, 1 / 16)).toBe("17 9/16");
    expect(stepped(choiceIn(mess, "back-lean"), 6.74, 0.1)).toBe("6.7deg");
    expect(exactly(choiceIn(mess, "seat-height"), 441.25)).toBe("441.25");
    const moved = edited(mess, [rewrite(choiceIn(mess, "trim.back"), "15")]);
    expect(moved).toContain("trim back 15 ");
    expect(choiceIn(moved, "trim.back").now).toBe(15);
  });

  it("read a slope as the angle it is", () => {
    // 1 in 10 is 5.71°.
    expect(choiceIn(stool, "lean-out")).toMatchObject({
      unit: "deg",
      now: expect.closeTo(5.7106, 4),
      plain: true,
    });
  });
});
