import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Change, createPartPlaces, shift } from "../../../client/panel/part-places.ts";
import type { Sheet } from "../../../server/drawing/sheet.ts";

function sheetOf(parts: Record<string, [start: number, end: number]>): Sheet {
  const areas = Object.entries(parts).map(([part, [start, end]]) => ({
    part,
    at: { start, end },
    points: [],
  }));
  const view = { name: "front" as const, caption: "Front", captionAt: [0, 0] as const, strokes: [], areas };
  return {
    title: "",
    views: [{ ...view, bounds: { x: 0, y: 0, width: 1, height: 1 }, dimensions: [] }],
    width: 1,
    height: 1,
    scaleBar: { at: [0, 0], length: 1, label: "", divisions: 1 },
  };
}

describe("where parts stand", () => {
  it("follows the text that has changed since the drawing", () => {
    const places = createPartPlaces();
    places.drawn({ version: 1, stale: false, sheet: sheetOf({ front: [10, 15], back: [40, 44] }) });
    places.changed(2, [{ offset: 20, length: 0, text: "twelve chars" }]);
    expect(places.of("front")).toEqual({ start: 10, end: 15 });
    expect(places.of("back")).toEqual({ start: 52, end: 56 });
    expect(places.at(53)).toEqual(["back"]);
    expect(places.at(30)).toEqual([]);
  });

  it("counts only changes after the version drawn", () => {
    const places = createPartPlaces();
    places.drawn({ version: 1, stale: false, sheet: sheetOf({ back: [40, 44] }) });
    places.changed(2, [{ offset: 0, length: 0, text: "ab" }]);
    places.changed(3, [{ offset: 0, length: 0, text: "cde" }]);
    places.drawn({ version: 2, stale: false, sheet: sheetOf({ back: [42, 46] }) });
    expect(places.of("back")).toEqual({ start: 45, end: 49 });
  });

  it("keeps the places of the last good version while the drawing is out of date", () => {
    const places = createPartPlaces();
    places.drawn({ version: 1, stale: false, sheet: sheetOf({ back: [40, 44] }) });
    places.changed(2, [{ offset: 0, length: 2, text: "" }]);
    places.drawn({ version: 2, stale: true, sheet: sheetOf({ back: [40, 44] }) });
    expect(places.of("back")).toEqual({ start: 38, end: 42 });
  });

  it("leaves what stands in another file where it is, and finds it at no place of this text", () => {
    const places = createPartPlaces();
    const sheet = sheetOf({ crest: [12, 17], back: [40, 44] });
    sheet.views[0]!.areas[0]!.file = "file:///shop/mess-chair.chair";
    places.drawn({ version: 1, stale: false, sheet });
    places.changed(2, [{ offset: 0, length: 0, text: "ab" }]);
    expect(places.of("crest")).toEqual({ start: 12, end: 17, file: "file:///shop/mess-chair.chair" });
    expect(places.at(15)).toEqual([]);
    expect(places.at(43)).toEqual(["back"]);
  });

  it("knows no part that is not drawn", () => {
    expect(createPartPlaces().of("arm")).toBeUndefined();
  });

  it("finds the same words again after any change elsewhere", () => {
    const word = "post-name";
    const pieces = fc.record({ before: fc.string(), after: fc.string(), text: fc.string() });
    fc.assert(
      fc.property(pieces, fc.nat(), fc.nat(), fc.boolean(), ({ before, after, text }, a, b, early) => {
        const whole = before + word + after;
        const span = { start: before.length, end: before.length + word.length };
        const room = early ? before : after;
        const at = room.length ? a % (room.length + 1) : 0;
        const length = Math.min(b, room.length - at);
        const offset = early ? at : span.end + at;
        const change: Change = { offset, length, text };
        const edited = whole.slice(0, offset) + text + whole.slice(offset + length);
        const { start, end } = shift(span, change);
        // Text typed exactly before the word may count as outside or inside of it; the word is there either way.
        expect(edited.slice(start, end)).toContain(word);
      }),
    );
  });
});
