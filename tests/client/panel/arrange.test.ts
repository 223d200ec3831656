import { describe, expect, it } from "vitest";
import { arranged, type Laid } from "../../../client/panel/webview/arrange.ts";
import type { Point, View } from "../../../server/drawing/sheet.ts";
import { chairs, sheetOf } from "./sample-sheets.ts";

const sheets = chairs.map(([path]) => [path, sheetOf(path)] as const);

/** All that a view draws, where it is laid. */
function pointsOf({ moved }: Laid, view: View): Point[] {
  const [right, down] = moved[view.name] ?? [0, 0];
  return [
    ...view.strokes.flatMap(({ points }) => points),
    ...view.areas.flatMap(({ points }) => points),
    ...view.dimensions.flatMap(({ line, extensions }) => [...line, ...extensions.flat()]),
  ].map(([x, y]): Point => [x + right, y + down]);
}

function span(points: readonly Point[]) {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), foot: Math.max(...ys) };
}

const rooms = [
  { width: 360, height: 640 },
  { width: 640, height: 400 },
  { width: 1400, height: 500 },
  { width: 400, height: 1400 },
];

describe("the views in the panel", () => {
  it.each(sheets)("of %s lie on the sheet, clear of each other, front and side on one floor", (_, sheet) => {
    const ways = new Set<string>();
    for (const room of rooms) {
      const laid = arranged(sheet, { room });
      ways.add(laid.way);
      expect(laid.width * laid.scale).toBeLessThanOrEqual(room.width + 1e-6);
      expect(laid.height * laid.scale).toBeLessThanOrEqual(room.height + 1e-6);
      const spans = laid.views.map((view) => span(pointsOf(laid, view)));
      for (const [k, { left, right, top, foot }] of spans.entries()) {
        expect(left).toBeGreaterThan(0);
        expect(right).toBeLessThan(laid.width);
        expect(top).toBeGreaterThan(0);
        expect(foot).toBeLessThan(laid.height);
        for (const other of spans.slice(k + 1))
          expect(other.left > right || other.right < left || other.top > foot || other.foot < top).toBe(true);
      }
      if (laid.way !== "inColumn") expect(laid.moved.front?.[1]).toBe(laid.moved.side?.[1]);
    }
    expect(ways.has("inRow")).toBe(true);
    expect(ways.size).toBeGreaterThan(1);
  });

  it("fill one side of the room with the largest drawing there is", () => {
    for (const room of rooms) {
      const laid = arranged(sheets[0]![1], { room });
      const [across, down] = [
        (laid.width * laid.scale) / room.width,
        (laid.height * laid.scale) / room.height,
      ];
      expect(Math.max(across, down)).toBeGreaterThan(0.999);
    }
  });

  it("are no stamps in the low room that is left over the boards or how hard the joints work", () => {
    const pictorial = { width: 760, height: 1250 };
    for (const [, sheet] of sheets) {
      const room = { width: 740, height: 260 };
      // A fifth of the room is the chair's height at least, or with the pictorial view an eighth.
      const tall = (laid: Laid) => {
        const { top, foot } = laid.drawn.front!;
        return ((foot - top) * laid.scale) / room.height;
      };
      expect(tall(arranged(sheet, { room }))).toBeGreaterThan(1 / 5);
      expect(tall(arranged(sheet, { room, pictorial }))).toBeGreaterThan(1 / 8);
    }
  });

  it("leave their neighbours out where one is looked at, and are larger then", () => {
    const sheet = sheets[0]![1];
    const room = { width: 700, height: 700 };
    for (const look of ["front", "side", "plan"] as const) {
      const laid = arranged(sheet, { room, look });
      expect(laid.views.map(({ name }) => name)).toEqual([look]);
      expect(laid.scale).toBeGreaterThan(arranged(sheet, { room }).scale * 1.4);
      expect(laid.block).toBeUndefined();
    }
  });

  it.each(sheets)("of %s leave room for a pictorial view, on the sheet and clear of all else", (_, sheet) => {
    const size = { width: 760, height: 1250 };
    const ways = new Set<string>();
    for (const room of [...rooms, { width: 900, height: 700 }]) {
      const laid = arranged(sheet, { room, pictorial: size });
      const { x, y, width, height } = laid.pictorial!;
      ways.add(laid.way.split(" ")[1]!);
      expect({ width, height }).toEqual(size);
      expect(x).toBeGreaterThan(0);
      expect(y).toBeGreaterThan(0);
      expect(x + width).toBeLessThan(laid.width);
      expect(y + height).toBeLessThan(laid.height);
      for (const [u, v] of laid.views.flatMap((view) => pointsOf(laid, view)))
        expect(u < x || u > x + width || v < y || v > y + height).toBe(true);
    }
    expect(ways).toEqual(new Set(["beside", "below"]));
  });
});
