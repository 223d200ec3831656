import { describe, expect, it } from "vitest";
import { flaggedIn, flagLabel, lettersOf } from "../../../client/panel/webview/flag-places.ts";
import { createTable, place } from "../../../client/panel/webview/lettering/search.ts";
import type { Point, View } from "../../../server/drawing/sheet.ts";
import { type Fault, letterOf } from "../../../server/editor/faults.ts";
import { chairs, sheetOf } from "./sample-sheets.ts";

const drawn = chairs.map(([path]) => path);

const fault = (letter: string, parts: Fault["parts"], severity: Fault["severity"] = "warning"): Fault => {
  return { letter, severity, code: "made-up", message: "", at: 0, parts };
};

/** Whether a place is inside an outline, by the turns that the outline makes round it: another way than the code's own. */
function inside([x, y]: Point, points: readonly Point[]): boolean {
  let turns = 0;
  points.forEach(([bx, by], index) => {
    const [ax, ay] = points[(index + points.length - 1) % points.length]!;
    const [ux, uy, vx, vy] = [ax - x, ay - y, bx - x, by - y];
    turns += Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  });
  return Math.abs(turns) > Math.PI;
}

/** The parts that lie uppermost somewhere on a grid over the view. */
function seen({ areas }: View): Set<string> {
  const xs = areas.flatMap(({ points }) => points.map(([x]) => x));
  const ys = areas.flatMap(({ points }) => points.map(([, y]) => y));
  const along = (values: number[], k: number) => {
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return low + ((high - low) * (k + 0.5)) / GRID;
  };
  const found = new Set<string>();
  for (let i = 0; i < GRID; i++) {
    for (let j = 0; j < GRID; j++) {
      const place: Point = [along(xs, i), along(ys, j)];
      const top = areas.filter(({ points }) => inside(place, points)).at(-1);
      if (top) found.add(top.part);
    }
  }
  return found;
}

const GRID = 24;

/** Pixels to the millimetre, as in half of a screen. */
const SCALE = 0.4;

describe("flags of faulty parts", () => {
  it.each(drawn)("of %s stand on what can be seen of their part", (path) => {
    for (const view of sheetOf(path).views) {
      const parts = [...new Set(view.areas.map(({ part }) => part))];
      const flags = flaggedIn(
        view.areas,
        parts.map((part, index) => fault(letterOf(index), [{ part }])),
      );
      // A board seat may cover all below it from above: then there is no more to flag.
      expect(flags.length).toBeGreaterThanOrEqual(Math.min(4, seen(view).size));
      for (const { part, anchor } of flags) {
        const top = view.areas.filter(({ points }) => inside(anchor, points)).at(-1);
        expect(top?.part).toBe(part);
      }
    }
  });

  it.each(drawn)("of %s are clear of parts and of each other while there are few", (path) => {
    const { width, height, views } = sheetOf(path);
    const px = ([x, y]: Point): Point => [x * SCALE, y * SCALE];
    for (const seen of views) {
      const view = { ...seen, areas: seen.areas.map((area) => ({ ...area, points: area.points.map(px) })) };
      const parts = [...new Set(view.areas.map(({ part }) => part))].slice(-4);
      const faults = parts.map((part, index) => fault(letterOf(index), [{ part }]));
      const table = createTable({ left: 0, top: 0, right: width * SCALE, foot: height * SCALE });
      const flags = place(
        table,
        flaggedIn(view.areas, faults).map((flag) => flagLabel(flag, flag.anchor, view.areas, view.name)),
      );
      for (const [index, { at }] of flags.entries()) {
        expect(view.areas.filter(({ points }) => inside(at, points))).toEqual([]);
        for (const other of flags.slice(index + 1)) expect(apart(at, other.at)).toBeGreaterThan(18);
      }
    }
  });

  it("point to the end at fault", () => {
    const view = sheetOf("samples/boathouse-mess-chair.chair").views.find(
      ({ name }) => name === "side",
    ) as View;
    const [flag] = flaggedIn(view.areas, [fault("A", [{ part: "seat-side.left", towards: "back.left" }])]);
    const rail = view.areas.find(({ part }) => part === "seat-side.left")!;
    const xs = rail.points.map(([x]) => x);
    // The back is to the right.
    expect(flag?.anchor[0]).toBeGreaterThan((Math.min(...xs) + Math.max(...xs)) / 2);
  });

  it("are one a part, the gravest finding first, with a sign when there are more than two", () => {
    const view = sheetOf("samples/boathouse-mess-chair.chair").views[0] as View;
    const parts = [{ part: "crest" }];
    const faults = [fault("A", parts), fault("B", parts), fault("C", parts, "error")];
    const flags = flaggedIn(view.areas, faults);
    expect(flags).toHaveLength(1);
    expect(flags[0]?.faults.map(({ letter }) => letter)).toEqual(["C", "A", "B"]);
    expect(lettersOf(flags[0]?.faults ?? [])).toBe("C A…");
  });

  it("are none for parts that are not drawn", () => {
    const view = sheetOf("samples/boathouse-mess-chair.chair").views[0] as View;
    expect(flaggedIn(view.areas, [fault("A", [{ part: "arm" }]), fault("B", [])])).toEqual([]);
  });
});

const apart = ([a, b]: Point, [c, d]: Point) => Math.hypot(a - c, b - d);
