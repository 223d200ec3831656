import { describe, expect, it } from "vitest";
import { summary } from "../../../server/editor/summary.ts";
import { at, changed } from "./frame.ts";

describe("a chair in a few words", () => {
  it("has its seat height in the file's units, and no back lean where there is no back", () => {
    const { seatHeight, backLean } = summary(at("chair").view);
    expect(seatHeight).toBe("428 mm");
    expect(backLean === undefined || /^-?\d+(\.\d)?°$/.test(backLean)).toBe(true);
  });

  it("counts what is found in broken text", () => {
    expect(summary(changed("section", "sectoin").view).errors).toBeGreaterThan(0);
  });
});
