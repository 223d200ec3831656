import { describe, expect, it } from "vitest";
import { lettersOf, placeFlags } from "../../../client/panel/webview/flag-places.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import type { Point, View } from "../../../server/drawing/sheet.ts";
import { type Fault, letterOf } from "../../../server/editor/faults.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { address, plainView } from "../../server/editor/view.ts";

const samples = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
const files = Object.fromEntries(samples.map((path) => [path.slice("samples/".length), read(path)]));
const drawn = samples.filter((path) => plainView(read(path), address, files).study.chair.posts.size > 0);
const sheetOf = (path: string) => drawSheet(plainView(read(path), address, files).study.chair);

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

describe("flags of faulty parts", () => {
  it.each(drawn)("of %s stand on what can be seen of their part", (path) => {
    for (const view of sheetOf(path).views) {
      const parts = [...new Set(view.areas.map(({ part }) => part))];
      const flags = placeFlags(
        view,
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

  it.each(drawn)("of %s are clear of parts, figures and each other while there are few", (path) => {
    for (const view of sheetOf(path).views) {
      const parts = [...new Set(view.areas.map(({ part }) => part))].slice(-4);
      const flags = placeFlags(
        view,
        parts.map((part, index) => fault(letterOf(index), [{ part }])),
      );
      for (const [index, { at }] of flags.entries()) {
        expect(view.areas.filter(({ points }) => inside(at, points))).toEqual([]);
        for (const { labelAt } of view.dimensions) expect(apart(at, labelAt)).toBeGreaterThan(24);
        for (const other of flags.slice(index + 1)) expect(apart(at, other.at)).toBeGreaterThan(44);
      }
    }
  });

  it("point to the end at fault", () => {
    const view = sheetOf("samples/boathouse-mess-chair.chair").views.find(
      ({ name }) => name === "side",
    ) as View;
    const [flag] = placeFlags(view, [fault("A", [{ part: "seat-side.left", towards: "back.left" }])]);
    const rail = view.areas.find(({ part }) => part === "seat-side.left")!;
    const xs = rail.points.map(([x]) => x);
    // The back is to the right.
    expect(flag?.anchor[0]).toBeGreaterThan((Math.min(...xs) + Math.max(...xs)) / 2);
  });

  it("are one a part, the gravest finding first, with a sign when there are more than two", () => {
    const view = sheetOf("samples/boathouse-mess-chair.chair").views[0] as View;
    const parts = [{ part: "crest" }];
    const faults = [fault("A", parts), fault("B", parts), fault("C", parts, "error")];
    const flags = placeFlags(view, faults);
    expect(flags).toHaveLength(1);
    expect(flags[0]?.faults.map(({ letter }) => letter)).toEqual(["C", "A", "B"]);
    expect(lettersOf(flags[0]?.faults ?? [])).toBe("C A…");
  });

  it("are none for parts that are not drawn", () => {
    const view = sheetOf("samples/boathouse-mess-chair.chair").views[0] as View;
    expect(placeFlags(view, [fault("A", [{ part: "arm" }]), fault("B", [])])).toEqual([]);
  });
});

const apart = ([a, b]: Point, [c, d]: Point) => Math.hypot(a - c, b - d);
