import { describe, expect, test } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { WORDS } from "../../../server/drawing/label-room.ts";
import type { DimensionLine, Point, Sheet, View } from "../../../server/drawing/sheet.ts";
import { chairOf, sampleChair, sampleNames, sampleText } from "./chairs.ts";

const viewOf = (sheet: Sheet, name: View["name"]): View => sheet.views.find((view) => view.name === name)!;
const lengthOf = ({ line: [a, b] }: DimensionLine): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const floorOf = (view: View): number => view.strokes.find(({ is }) => is === "floor")!.points[0]![1];
const value = (chair: Chair, name: string): number => chair.values.get(name)!.number;
const partPoints = (view: View): Point[] =>
  view.strokes.filter(({ part }) => part).flatMap(({ points }) => points);
const reach = (values: number[]): number => Math.max(...values) - Math.min(...values);

describe.each(sampleNames)("the sheet of %s", (name) => {
  const chair = sampleChair(name);
  const sheet = drawSheet(chair);
  const [front, side, plan] = [viewOf(sheet, "front"), viewOf(sheet, "side"), viewOf(sheet, "plan")];

  test("views are as wide, deep and high as the chair says it is", () => {
    const points = { front: partPoints(front), side: partPoints(side), plan: partPoints(plan) };
    for (const view of ["front", "plan"] as const) {
      expect(reach(points[view].map(([x]) => x))).toBeCloseTo(value(chair, "width"), 1);
    }
    expect(reach(points.side.map(([x]) => x))).toBeCloseTo(value(chair, "depth"), 1);
    expect(reach(points.plan.map(([, y]) => y))).toBeCloseTo(value(chair, "depth"), 1);
    const top = Math.min(...points.front.map(([, y]) => y));
    expect(floorOf(front) - top).toBeCloseTo(value(chair, "height"), 1);
  });

  test("front and side share the floor line; plan stands over the front", () => {
    expect(floorOf(front)).toBe(floorOf(side));
    const [over] = plan.strokes.filter(({ is }) => is === "centre");
    const [under] = front.strokes.filter(({ is }) => is === "centre");
    expect(over!.points[0]![0]).toBe(under!.points[0]![0]);
    expect(plan.bounds.y + plan.bounds.height).toBeLessThan(front.bounds.y);
    expect(front.bounds.x + front.bounds.width).toBeLessThan(side.bounds.x);
  });

  test("feet stand on the floor line", () => {
    const lowest = Math.max(...partPoints(front).map(([, y]) => y));
    expect(lowest).toBeCloseTo(floorOf(front), 1);
  });

  test("dimension lines are as long as what they tell", () => {
    const lines = sheet.views.flatMap(({ dimensions }) => dimensions);
    const straight = lines.filter(({ arc }) => !arc);
    expect(straight.map((line) => line.name)).toEqual(
      expect.arrayContaining(["height", "width", "depth", "seat.height"]),
    );
    for (const line of straight) {
      const true_ = value(chair, line.name);
      // Seen from above a seat that slopes is a little shorter than along its slope.
      expect(Math.abs(lengthOf(line) - true_)).toBeLessThan(line.name === "seat.depth" ? 2 : 0.06);
    }
  });

  test("everything lies on the sheet", () => {
    const points = sheet.views.flatMap(({ strokes, areas, dimensions, captionAt }) => [
      captionAt,
      ...strokes.flatMap((stroke) => stroke.points),
      ...areas.flatMap((area) => area.points),
      ...dimensions.flatMap(({ line, extensions, labelAt }) => [...line, ...extensions.flat(), labelAt]),
    ]);
    for (const [x, y] of points) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(sheet.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(sheet.height);
    }
  });

  test("every part has an area in every view, its lines within it", () => {
    for (const view of sheet.views) {
      const named = new Set(view.areas.map(({ part }) => part));
      for (const part of [...chair.posts.keys(), ...chair.rails.keys(), ...chair.slats.keys()]) {
        expect(named).toContain(part);
      }
      for (const { part, points } of view.strokes) {
        if (!part) continue;
        const outlines = view.areas.filter((area) => area.part === part).map((area) => area.points);
        const [x, y] = [(points[0]![0] + points[1]![0]) / 2, (points[0]![1] + points[1]![1]) / 2];
        expect(outlines.some((outline) => outsideBy(outline, [x, y]) < 0.2)).toBe(true);
      }
    }
  });

  test("labels stand apart", () => {
    for (const { dimensions } of sheet.views) {
      for (const [k, a] of dimensions.entries()) {
        for (const b of dimensions.slice(k + 1)) {
          const apart = Math.hypot(a.labelAt[0] - b.labelAt[0], a.labelAt[1] - b.labelAt[1]);
          expect(apart).toBeGreaterThan(30);
        }
      }
    }
  });
});

/** How far a place is outside a closed outline, mm; zero within. */
function outsideBy(outline: readonly Point[], [x, y]: Point): number {
  let inside = false;
  let nearest = Infinity;
  for (const [k, b] of outline.entries()) {
    const a = outline[(k + outline.length - 1) % outline.length]!;
    if (a[1] > y !== b[1] > y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])) inside = !inside;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const share = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)));
    nearest = Math.min(nearest, Math.hypot(x - a[0] - dx * share, y - a[1] - dy * share));
  }
  return inside ? 0 : nearest;
}

test("labels are in the file's units", () => {
  const inInches = drawSheet(sampleChair("joined-stool"));
  const labels = inInches.views.flatMap(({ dimensions }) => dimensions.map(({ label }) => label));
  expect(labels.length).toBeGreaterThan(4);
  for (const label of labels)
    expect(label).toMatch(/^(\d+( \d+\/\d+)?|\d+\/\d+) in$|° from (square to the seat|plumb)$/);
  expect(inInches.scaleBar).toMatchObject({ label: "8 in", length: 203.2 });
  const seat = viewOf(drawSheet(sampleChair("boathouse-mess-chair")), "side").dimensions.find(
    ({ name }) => name === "seat.height",
  );
  // On its strips the frame begins 13 behind the middle of the front rail, on a seat that falls by 1.4°.
  expect(seat!.label).toBe("439.7 mm");
});

test("a declared back rake is shown with its value, its legs at that angle", () => {
  const chair = sampleChair("boathouse-mess-chair");
  const lean = viewOf(drawSheet(chair), "side").dimensions.find(({ arc }) => arc)!;
  expect(lean.name).toBe("back-rake");
  const bearing = ([a, b]: [Point, Point]) => Math.atan2(a[1] - b[1], b[0] - a[0]);
  // Seen from the side; the posts also splay a little, so the true lean differs by hundredths of a degree.
  const between = bearing(lean.extensions[0]!) - bearing(lean.line);
  expect(between).toBeCloseTo(value(chair, "back-rake"), 2);
  expect(lean.label).toBe("back 6.5° from square to the seat");
  expect(lean.lines?.join(" ")).toBe(lean.label);
});

test.each(["boathouse-mess-chair", "mess-armchair", "landing-bench", "ladder-back", "harbour-chair"])(
  "what is said of the lean of %s stands to the right of its legs and on the sheet, in words half as large again",
  (name) => {
    const sheet = drawSheet(sampleChair(name));
    const { lines, labelAt, line, extensions } = viewOf(sheet, "side").dimensions.find(({ arc }) => arc)!;
    for (const [x] of [...line, ...extensions.flat()]) expect(labelAt[0]).toBeGreaterThan(x);
    const longest = Math.max(...lines!.map((each) => each.length));
    // Letters of Helvetica are 0.56 as wide as high on average (from memory).
    expect(labelAt[0] + longest * WORDS * 1.5 * 0.56).toBeLessThan(sheet.width);
  },
);

test("left and right are the sitter's: seen from the front the left stands to the right", () => {
  const front = viewOf(drawSheet(sampleChair("boathouse-mess-chair")), "front");
  const middle = (part: string) => {
    const [area] = front.areas.filter((each) => each.part === part);
    return area!.points.reduce((sum, [x]) => sum + x, 0) / area!.points.length;
  };
  expect(middle("front.left")).toBeGreaterThan(middle("front.right"));
});

test("nearer parts take the click: their areas come later", () => {
  const { areas } = viewOf(drawSheet(sampleChair("boathouse-mess-chair")), "front");
  const order = areas.map(({ part }) => part);
  expect(order.indexOf("front.left")).toBeGreaterThan(order.indexOf("back.left"));
  expect(order.indexOf("seat-front")).toBeGreaterThan(order.indexOf("seat-back"));
});

test("a click on a part goes to its name in the text", () => {
  const text = sampleText("boathouse-mess-chair");
  const { areas } = viewOf(drawSheet(chairOf(text)), "side");
  const name = (part: string) => {
    const { at } = areas.find((area) => area.part === part)!;
    return text.slice(at.start, at.end);
  };
  expect(name("back.left")).toBe("back");
  expect(name("side-stretcher.left")).toBe("side-stretcher");
});

test("the arched front rail is drawn with its arch", () => {
  // Untrimmed it stands plumb, so that nothing is seen behind its lower arris.
  const chair = chairOf(sampleText("boathouse-mess-chair").replace(/^trim back.*$/m, ""));
  const { strokes } = viewOf(drawSheet(chair), "front");
  const rail = strokes.filter(({ part }) => part === "seat-front").flatMap(({ points }) => points);
  const low = Math.max(...rail.map(([, y]) => y));
  const middle = (rail.reduce((sum, [x]) => Math.max(sum, x), 0) + Math.min(...rail.map(([x]) => x))) / 2;
  const crown = rail.filter(([x, y]) => Math.abs(x - middle) < 12 && y > low - 40).map(([, y]) => y);
  expect(low - Math.min(...crown)).toBeCloseTo(14, 1);
});

test("the same chair gives the same sheet; an empty one gives an empty sheet", () => {
  expect(drawSheet(sampleChair("joined-stool"))).toEqual(drawSheet(sampleChair("joined-stool")));
  const empty = drawSheet(chairOf(""));
  expect(empty.views.every(({ areas }) => areas.length === 0)).toBe(true);
  expect(Number.isFinite(empty.width) && Number.isFinite(empty.height)).toBe(true);
});

test("a chair half built is drawn as far as it goes", () => {
  const sheet = drawSheet(
    chairOf(
      'chair "x"\npost leg pair {\n  section 40 x 40\n  foot out 200, back 0\n  height 400\n}\nrail r {\n  across leg\n}\n',
    ),
  );
  expect(
    viewOf(sheet, "front")
      .areas.map(({ part }) => part)
      .sort(),
  ).toEqual(["leg.left", "leg.right"]);
});

test("what a file takes over from another is known to stand there, what it says anew stands here", () => {
  const { views } = drawSheet(sampleChair("mess-chairs-from-boards"));
  const of = (part: string) => views.flatMap(({ areas }) => areas).find((area) => area.part === part)!;
  expect(of("crest").file).toMatch(/\/boathouse-mess-chair\.chair$/);
  const text = sampleText("boathouse-mess-chair");
  expect(text.slice(of("crest").at.start, of("crest").at.end)).toContain("crest");
  expect(of("back.left").file).toBeUndefined();
});
