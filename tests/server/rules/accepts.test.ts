import { describe, expect, it } from "vitest";
import { covers, merged } from "../../../server/rules/machinery/accepts.ts";
import type { Finding } from "../../../server/rules/machinery/say.ts";

const finding = (subject: string, badness: number, more: Partial<Finding> = {}): Finding => ({
  code: "tenon-too-thin",
  severity: "warning",
  message: `${subject} ${badness}`,
  start: 3,
  end: 8,
  subject,
  badness,
  ...more,
});

describe("findings of one rule on one place", () => {
  it("become the worst of them, wherever it stands", () => {
    const [low, high, middle] = [finding("a", 1), finding("b", 3), finding("c", 2)];
    for (const order of [
      [low, high, middle],
      [high, low, middle],
      [middle, low, high],
    ])
      expect(merged(order)).toEqual([{ finding: high, others: order.map(({ subject }) => subject) }]);
  });

  it("keep the first of those that are as bad but for rounding", () => {
    const [first, second] = [finding("a", 1), finding("b", 1 + 1e-9)];
    expect(merged([first, second])[0]?.finding).toBe(first);
    // Of a volume in mm³ the rounding is larger.
    const [left, right] = [finding("a", 8242.409347), finding("b", 8242.409351)];
    expect(merged([left, right])[0]?.finding).toBe(left);
    const worse = finding("c", 8243);
    expect(merged([left, worse])[0]?.finding).toBe(worse);
  });

  it("are kept apart by their rule and by both ends of their place", () => {
    const all = [
      finding("a", 1),
      finding("a", 2, { code: "tenon-too-thick" }),
      finding("a", 3, { start: 2 }),
      finding("a", 4, { end: 9 }),
    ];
    expect(merged(all).map((each) => each.finding)).toEqual(all);
  });
});

describe("what an accept names", () => {
  it.each([
    ["seat-side", "seat-side.left to front.left", true],
    ["front", "seat-side.left to front.left", true],
    ["seat-side to front", "seat-side.left to front.left", true],
    ["front.left", "seat-side.left to front.left", true],
    ["front.right", "seat-side.left to front.left", false],
    ["seat-side to back", "seat-side.left to front.left", false],
    ["seat", "seat-side.left", false],
    ["b", "a and b", true],
  ])("%s covers %s: %s", (named, subject, does) => {
    expect(covers(named, subject)).toBe(does);
  });
});
