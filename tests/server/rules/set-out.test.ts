import { describe, expect, it } from "vitest";
import { setOutOrLess, setOutOrMore } from "../../../server/rules/machinery/say.ts";

describe("a figure that mends what is found", () => {
  it.each([
    // 38.5 mm is 1.516 in, 8.4 mm is 0.331 in.
    [38.5, "1 1/2in", "1 9/16in"],
    [8.4, "5/16in", "3/8in"],
    [25.4, "1in", "1in"],
    // Up to a quarter of an inch a sixteenth less would be too coarse: 15/64 in is 5.95 mm.
    [6, "15/64in", "1/4in"],
  ])("is set out by sixteenths of an inch on its safe side: %s mm", (mm, less, more) => {
    expect(setOutOrLess(mm, "in")).toBe(less);
    expect(setOutOrMore(mm, "in")).toBe(more);
  });

  it("is to a tenth of a millimetre in a metric file", () => {
    // What is nearer than 0.05 mm is the same length.
    expect([setOutOrLess(38.54, "mm"), setOutOrMore(38.56, "mm")]).toEqual(["38.5mm", "38.6mm"]);
  });
});
