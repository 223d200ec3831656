import { describe, expect, it } from "vitest";
import { applyEdits } from "../../../grammar/format.ts";
import { studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";

const mess = read("samples/boathouse-mess-chair.chair");

function asked(subject: string) {
  const text = `${mess}require ${subject} > 10mm\n`;
  const found = studied(text).problems.find(({ start }) => start >= mess.length);
  return { text, found };
}

describe("a value asked for under part of its name", () => {
  it.each([
    ["seat-side.left.tenon-long", ["seat-side.left.front.tenon-long", "seat-side.left.back.tenon-long"]],
    ["seat-side.tenon-long", ["seat-side.left.front.tenon-long", "seat-side.left.back.tenon-long"]],
  ])("%s is offered as those that the chair has", (subject, meant) => {
    const { text, found } = asked(subject);
    expect(found).toMatchObject({
      code: "requirement-not-judged",
      message: `There is no value ${subject}.`,
      fixes: meant.map((name) => ({ title: `Change to ${name}` })),
    });
    for (const { edits } of found?.fixes ?? [])
      expect(studied(applyEdits(text, edits)).problems.filter(({ start }) => start >= mess.length)).toEqual(
        [],
      );
  });

  it("is not a value that a part of its kind never has", () => {
    expect(asked("front.left.strip-length").found).toMatchObject({
      code: "unknown-name",
      message:
        "front is a post and has no value called strip-length. It may have length, lean, sight-line, bore-depth, edge-wood, hollow-wood, demand, foot-bevel and grain-slope, and at each end demand, tenon-thick, tenon-wide, tenon-long, mortise-wall and glue-area.",
    });
    expect(asked("seat-side.left.foot-bevel").found?.code).toBe("unknown-name");
    expect(asked("front.left.foot-bevel").found?.code).toBe("wrong-unit");
  });

  it("is told as before where the chair has none like it", () => {
    expect(asked("front.tenon-long").found?.message).toBe(
      "front.tenon-long cannot be worked out from what the file says, so this requirement is not judged.",
    );
  });
});
