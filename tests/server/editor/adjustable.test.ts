import { describe, expect, it } from "vitest";
import { adjustables } from "../../../server/editor/adjustable.ts";
import { at } from "./frame.ts";

describe("values to try", () => {
  it("each let with a range, in the file's unit, with where its figure stands", () => {
    const text = [
      "units in",
      "# How high they sit.",
      "let high = 17 1/2 within 16 to 18",
      "let lean = 6.5deg within 4deg to 7deg",
      "let fixed = 3",
      "let sum = high - 1 within 15 to 17",
      "post leg { section 1 1/2 x 1 1/2; foot out sum, back 0; height high }",
      "",
    ].join("\n");
    const found = adjustables(at(text, text).view);
    expect(
      found.map(({ name, value, low, high, unit, plain }) => [name, value, low, high, unit, plain]),
    ).toEqual([
      ["high", 17.5, 16, 18, "in", true],
      ["lean", 6.5, 4, 7, "deg", true],
      ["sum", 16.5, 15, 17, "in", false],
    ]);
    expect(text.slice(found[0]!.at.start, found[0]!.at.end)).toBe("17 1/2");
    expect(found[0]!.description).toBe("How high they sit.");
  });

  it("in broken text those that can be read", () => {
    expect(
      adjustables(
        at("", "let a = 440 within 420 to\nlet b = 5 within 3 to 8\npost x {\n height b\n").view,
      ).map((one) => one.name),
    ).toEqual(["b"]);
  });
});
