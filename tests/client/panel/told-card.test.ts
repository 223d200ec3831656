import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inOneBreath, placeCard, tellPart } from "../../../client/panel/webview/told-card.ts";
import type { Fault } from "../../../server/editor/faults.ts";

const fault: Fault = {
  letter: "B",
  severity: "error",
  code: "rail-misses-post",
  message: "The crest misses its post.",
  at: 0,
  parts: [{ part: "crest", towards: "back.left" }],
};
const told = [{ part: "crest", title: "rail crest", description: "Bowed.", lines: ["20 mm × 90 mm"] }];

describe("the card of a part", () => {
  it("has its name, its description and figures, and what is found wrong with it", () => {
    expect(tellPart("crest", told, [fault])).toEqual({
      title: "rail crest",
      lines: ["Bowed.", "20 mm × 90 mm"],
      faults: [{ severity: "error", words: "B · error: The crest misses its post." }],
    });
    expect(inOneBreath(tellPart("crest", told, [fault]))).toBe(
      "rail crest. B · error: The crest misses its post. Bowed. 20 mm × 90 mm.",
    );
  });

  it("of a part about which nothing is reported is its name", () => {
    expect(tellPart("arm", told, [fault])).toEqual({ title: "arm", lines: [], faults: [] });
  });

  it("stands right, left, below or above what it tells of, wherever it first fits", () => {
    const card = { width: 100, height: 40 };
    const room = { width: 600, height: 400 };
    const part = (left: number, top: number, width = 20, height = 20) => ({ left, top, width, height });
    expect(placeCard(part(50, 100), card, room)).toEqual({ left: 82, top: 90 });
    expect(placeCard(part(500, 100), card, room)).toEqual({ left: 388, top: 90 });
    expect(placeCard(part(20, 100, 560), card, room)).toEqual({ left: 250, top: 132 });
    expect(placeCard(part(20, 300, 560, 90), card, room)).toEqual({ left: 250, top: 248 });
    expect(placeCard(part(0, 0, 580, 400), card, room)).toEqual({ left: 496, top: 180 });
  });

  it("stays within the room wherever the part is, if it can", () => {
    const at = fc.integer({ min: -200, max: 800 });
    const size = fc.integer({ min: 0, max: 900 });
    fc.assert(
      fc.property(at, at, size, size, (left, top, width, height) => {
        const placed = placeCard(
          { left, top, width, height },
          { width: 200, height: 100 },
          { width: 600, height: 400 },
        );
        expect(placed.left).toBeGreaterThanOrEqual(4);
        expect(placed.top).toBeGreaterThanOrEqual(4);
        expect(placed.left + 200).toBeLessThanOrEqual(596);
        expect(placed.top + 100).toBeLessThanOrEqual(396);
      }),
    );
  });
});
