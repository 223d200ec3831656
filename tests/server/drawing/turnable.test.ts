import { describe, expect, test } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { chainsOf } from "../../../server/drawing/chains.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { see } from "../../../server/drawing/hidden-lines.ts";
import { eyes } from "../../../server/drawing/pictorial/eye.ts";
import { captionOf, framed } from "../../../server/drawing/pictorial/framed.ts";
import { withCornerPicture } from "../../../server/drawing/pictorial/in-corner.ts";
import { lookAt, middleSeen, roomOf } from "../../../server/drawing/pictorial/look.ts";
import { withPicture } from "../../../server/drawing/pictorial/on-sheet.ts";
import { packedSteps, unpacked } from "../../../server/drawing/pictorial/packed.ts";
import { drawPictorial } from "../../../server/drawing/pictorial/pictorial.ts";
import { turnableSteps } from "../../../server/drawing/pictorial/turnable.ts";
import { pictureGrid } from "../../../server/drawing/picture-grid.ts";
import { sceneOf } from "../../../server/drawing/scene.ts";
import type { Point } from "../../../server/drawing/sheet.ts";
import { motionInto, sights } from "../../../server/drawing/sight.ts";
import { sheetToSvg } from "../../../server/drawing/svg.ts";
import { framesOf } from "../../../server/joinery/frames.ts";
import { seeded } from "../../grammar/fixtures/random.ts";
import { sampleChair, sampleNames } from "./chairs.ts";

const ready = (name: string, bench = false) => finish(turnableSteps(sampleChair(name), bench));

/** Places along the lines, a thousandth of a millimetre fine, whatever way round they run. */
const pointsIn = (lines: readonly { points: readonly Point[] }[]) =>
  lines.flatMap(({ points }) => points).sort((a, b) => a[0] - b[0] || a[1] - b[1]);

describe("a chair that can be turned", () => {
  test.each(sampleNames)(
    "%s turned to the front, the left and from above is the three views, line by line",
    (name) => {
      const chair = sampleChair(name);
      const turnable = ready(name);
      const bodies = sceneOf(chair).map(({ body }) => body);
      for (const [eye, sight] of [
        ["front", sights.front],
        ["left", sights.side],
        ["above", sights.plan],
      ] as const) {
        const view = chainsOf(see(bodies, motionInto(sight, chair.stance)).lines);
        const turned = lookAt(turnable, { eye: eyes[eye]! }).strokes;
        expect(turned.map(({ is, points }) => ({ is, points }))).toEqual(
          view.map(({ is, points }) => ({ is, points })),
        );
      }
    },
  );

  test.each(["boathouse-mess-chair", "ladder-back"])("%s is the same picture after it was sent", (name) => {
    const turnable = ready(name);
    const sent = unpacked(JSON.parse(JSON.stringify(finish(packedSteps(turnable, false)))));
    for (const eye of [eyes["front-left"]!, { round: 2.3, above: 0.7 }]) {
      const [here, there] = [lookAt(turnable, { eye, joints: true }), lookAt(sent, { eye, joints: true })];
      const length = (lines: readonly { points: readonly Point[] }[]) =>
        lines.reduce((sum, { points }) => {
          for (let k = 1; k < points.length; k++)
            sum += Math.hypot(points[k]![0] - points[k - 1]![0], points[k]![1] - points[k - 1]![1]);
          return sum;
        }, 0);
      expect(Math.abs(length(there.strokes) / length(here.strokes) - 1)).toBeLessThan(1e-3);
      const [a, b] = [pointsIn(here.tenons), pointsIn(there.tenons)];
      expect(b.length).toBe(a.length);
    }
  });

  test("stays within its room from everywhere, together and apart", () => {
    const next = seeded(13);
    for (const apart of [0, 1]) {
      const turnable = ready("boathouse-mess-chair", apart > 0);
      const room = roomOf(turnable, { apart: apart > 0 });
      for (let k = 0; k < 12; k++) {
        const eye = { round: next() * 2 * Math.PI, above: (next() - 0.5) * Math.PI };
        const [x, y] = middleSeen(room, eye);
        for (const [u, v] of pointsIn(lookAt(turnable, { eye, apart, joints: true }).strokes)) {
          expect(Math.abs(u - x)).toBeLessThanOrEqual(room.width / 2 + 0.01);
          expect(Math.abs(v - y)).toBeLessThanOrEqual(room.height / 2 + 0.01);
        }
      }
    }
  });

  test("shows each glue-up alone, with its own parts, and says of it what the order of gluing up says", () => {
    const chair = sampleChair("boathouse-mess-chair");
    const turnable = ready("boathouse-mess-chair", true);
    const { frames } = framesOf(chair);
    expect(turnable.glueUps.length).toBe(frames.length);
    for (const [glueUp, frame] of frames.entries()) {
      const { shapes } = lookAt(turnable, { eye: eyes["front-left"]!, glueUp, apart: 1 });
      expect(shapes.map(({ part }) => part).sort()).toEqual([...frame.parts].sort());
      const told = turnable.glueUps[glueUp]!.lines.join(" ");
      expect(told).toContain(frame.way);
      for (const caution of frame.cautions) expect(told).toContain(caution);
    }
    expect(turnable.glueUps[0]!.lines.join(" ")).toMatch(/Closes \d+ joints, glued with [a-z]/);
    const [whole, alone] = [roomOf(turnable, { apart: true }), roomOf(turnable, { apart: true, glueUp: 0 })];
    expect(alone.height).toBeLessThan(whole.height);
    expect(captionOf(turnable, { eye: eyes.front!, glueUp: 1, apart: 1 })).toBe(
      `From the front, glue-up 2 of ${frames.length}.`,
    );
  });

  test("says where joints are put together without glue", () => {
    const [first] = ready("ladder-back", true).glueUps;
    expect(first!.lines).toContain("Closes 6 joints, without glue.");
  });

  test("what a glue-up closes comes together along its line: apart by longest tenon and 60 mm, closed as it is drawn", () => {
    const turnable = ready("joined-stool", true);
    const eye = eyes["front-left"]!;
    const last = turnable.glueUps.length - 1;
    const closed = lookAt(turnable, { eye, glueUp: last, apart: 0 });
    const open = lookAt(turnable, { eye, glueUp: last, apart: 1 });
    const wide = ({ strokes }: typeof closed) => {
      const xs = pointsIn(strokes).map(([x]) => x);
      return Math.max(...xs) - Math.min(...xs);
    };
    expect(wide(open)).toBeGreaterThan(wide(closed) + 60 * Math.SQRT1_2);
  });

  test.each(sampleNames)(
    "%s has a place in the free corner of its sheet, clear of all that is there",
    (name) => {
      const chair = sampleChair(name);
      const sheet = drawSheet(chair);
      const { picture } = withCornerPicture(sheet, drawPictorial(chair, { eye: eyes["front-left"]! }));
      const side = sheet.views.find((view) => view.name === "side")!;
      const { x, width } = sheet.titleAt!;
      for (const [u, v] of pointsIn(picture!.strokes)) {
        expect(u).toBeGreaterThan(x);
        expect(u).toBeLessThan(x + width);
        expect(v).toBeGreaterThan(sheet.scaleBar.at[1] + 10);
        expect(v).toBeLessThan(picture!.captionAt[1]);
      }
      expect(picture!.noteAt![1]).toBeLessThan(side.bounds.y);
    },
  );

  test("is put beside the views, on the sheet, with its caption", () => {
    const chair = sampleChair("harbour-chair");
    const look = { eye: eyes["back-right"]!, joints: true };
    const turnable = ready("harbour-chair");
    const sheet = drawSheet(chair);
    const both = withPicture(sheet, framed(lookAt(turnable, look), captionOf(turnable, look)));
    for (const [x, y] of pointsIn(both.picture!.strokes)) {
      expect(x).toBeGreaterThan(sheet.width - 50);
      expect(x).toBeLessThan(both.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(both.height);
    }
    const svg = sheetToSvg(both);
    expect(svg).toContain("From the back right, 25° above level.</text>");
    expect(svg).toContain('class="tenon"');
    expect(withPicture(sheet, undefined)).toBe(sheet);
  });
});

test("a grid finds every line that comes near another, whichever way it runs", () => {
  const next = seeded(7);
  const at = (): Point => [next() * 1000, next() * 600];
  const lines = Array.from({ length: 300 }, () => {
    const [x, y] = at();
    return [[x, y] as Point, [x + (next() - 0.5) * 300, y + (next() - 0.5) * 300] as Point] as const;
  });
  const xs = lines.flat().map(([x]) => x);
  const ys = lines.flat().map(([, y]) => y);
  const grid = pictureGrid(300, {
    left: Math.min(...xs),
    right: Math.max(...xs),
    low: Math.min(...ys),
    high: Math.max(...ys),
  });
  for (const [a, b] of lines) grid.put(a, b);
  let crossings = 0;
  for (const [k, [a, b]] of lines.entries()) {
    const near = new Set(grid.near(a, b, 0.02));
    for (const [other, [c, d]] of lines.entries()) {
      if (!cross(a, b, c, d)) continue;
      crossings++;
      expect(near.has(other), `${k} and ${other}`).toBe(true);
    }
  }
  expect(crossings).toBeGreaterThan(500);
});

function cross(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}
