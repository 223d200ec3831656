/**
 * Nested outlines against closed forms, and blanks against solids of another library.
 */
import { describe, expect, test } from "vitest";
import { boardFeet } from "../../../server/boards/measure.ts";
import { nestOf, pitch } from "../../../server/boards/nest.ts";
import { areaOf, grown, laid, lineAt, type Outline, type Spot } from "../../../server/boards/outline.ts";
import { stockList } from "../../../server/boards/plan.ts";
import { studied } from "../../check.ts";
import { studiedSample } from "../samples.ts";

/** Arcs of one middle between ±half, the inner of a radius, as broad as said, in fine chords. */
function arch(radius: number, broad: number, half: number): Outline {
  const chords = 400;
  const line = (r: number): Spot[] => {
    // Both lines over the same length: the inner is run on along its radius' circle as far as the outer needs.
    const to = (radius + broad) * Math.sin(half);
    return Array.from({ length: chords + 1 }, (_, k): Spot => {
      const x = -to + (2 * to * k) / chords;
      return [x, Math.sqrt(r * r - x * x)];
    });
  };
  return { low: line(radius), high: line(radius + broad) };
}

describe("curved parts in each other", () => {
  test.each([
    [900, 36, 0.3, 7],
    [700, 20, 0.45, 5],
    [1500, 50, 0.2, 3],
  ])("arcs of %d mm, %d broad, to %d rad, %d apart", (radius, broad, half, gap) => {
    // The inner arc of the upper, s higher, stays the gap from the outer arc of the lower: nearest at its ends.
    const outline = arch(radius, broad, half);
    const x = (radius + broad) * Math.sin(half);
    const cos = Math.sqrt(1 - (x / radius) ** 2);
    const reach = radius + broad + gap;
    const s = -radius * cos + Math.sqrt(reach ** 2 - x ** 2);
    expect(pitch(outline, outline, gap)).toBeCloseTo(s, 2);
  });

  test.each([
    [6.5, 36, 5],
    [12, 30, 3],
  ])("straight knees of %d°, %d broad, %d apart", (degrees, broad, gap) => {
    // The steeper leg decides: broad and gap square to it, up the board.
    const lean = (degrees * Math.PI) / 180;
    const up = broad / Math.cos(lean);
    const leg = (x: number) => 400 * Math.tan(lean) - Math.abs(x) * Math.tan(lean);
    const line = (lift: number): Spot[] => [-400, 0, 400].map((x): Spot => [x, leg(x) + lift]);
    const outline = { low: line(0), high: line(up) };
    expect(pitch(outline, outline, gap)).toBeCloseTo((broad + gap) / Math.cos(lean), 6);
  });

  test("wedges lie head to tail", () => {
    const wedge: Outline = {
      low: [
        [0, 0],
        [400, 0],
      ],
      high: [
        [0, 40],
        [400, 20],
      ],
    };
    const two = nestOf(wedge, 2, 3);
    expect(two.pieces.map(({ way }) => way)).not.toEqual(["as it is", "as it is"]);
    expect(two.wide).toBeCloseTo(60 + 3 * Math.hypot(1, 20 / 400), 3);
    expect(areaOf(laid(wedge, "half round"))).toBeCloseTo(areaOf(wedge), 6);
  });

  test("planing grows an outline square to its edges", () => {
    const outline = arch(900, 36, 0.3);
    const full = grown(outline, 2);
    expect(lineAt(full.high, 0)).toBeCloseTo(938, 2);
    expect(lineAt(full.low, 0)).toBeCloseTo(898, 2);
  });
});

describe("grain", () => {
  const post = (lines: string) =>
    studied(`post p { section 36 x 36; foot out 0, back 0; height 900; ${lines} }\n`).chair;

  test("turned in the board a knee runs half its bend to the grain", () => {
    const { values } = post("rake 7deg above 450 over 90; kick 3deg below 120 over 60");
    expect((values.get("p.grain-slope")!.number * 180) / Math.PI).toBeCloseTo(5, 6);
    expect(post("rake 7deg").values.has("p.grain-slope")).toBe(false);
  });

  test("a bend out of plumb seen from the front as well is measured in its own plane", () => {
    const { values } = post("splay 4deg; rake 8deg above 450");
    const bend = (() => {
      const [s, r] = [Math.tan((4 * Math.PI) / 180), Math.tan((8 * Math.PI) / 180)];
      return Math.acos((s * s + 1) / (Math.hypot(s, 1) * Math.hypot(s, r, 1)));
    })();
    expect(values.get("p.grain-slope")!.number).toBeCloseTo(bend / 2, 9);
  });
});

describe("stock list", () => {
  const stock = stockList(studiedSample("boathouse-mess-chair").chair);
  const line = (name: string) => stock.lines.find((each) => each.name === name)!;

  test("straight, square-cut rails: shoulders and both tenons, 2 mm off each face and edge", () => {
    const front = line("seat-front");
    expect(front.finished.thick).toBeCloseTo(22, 2);
    expect(front.finished.wide).toBeCloseTo(70, 2);
    expect(front.finished.long).toBeCloseTo(426, 0);
    expect(front.blank.thick - front.finished.thick).toBeCloseTo(4, 6);
    expect(front.blank.wide - front.finished.wide).toBeCloseTo(4, 6);
    expect(front.blank.long).toBe(front.finished.long);
  });

  test("a curved post's blank holds its outline and is narrower than its box on the floor", () => {
    const back = line("back");
    expect(back.number).toBe(2);
    expect(back.outline).toBeDefined();
    expect(back.blank.wide).toBeGreaterThan(40);
    expect(back.blank.wide).toBeLessThan(100);
  });

  test("board feet: 1 x 6 x 96 in is 4, 1 x 9 x 96 is 6, 1 1/2 x 9 x 96 is 9; under an inch counts as an inch (NHLA Rule Book, through summaries, not seen itself)", () => {
    const feet = (thick: number, wide: number, long: number) =>
      boardFeet({ thick: thick * 25.4, wide: wide * 25.4, long: long * 25.4 });
    expect([feet(1, 6, 96), feet(1, 9, 96), feet(1.5, 9, 96), feet(0.5, 6, 96)]).toEqual(
      [4, 6, 9, 4].map((n) => expect.closeTo(n, 9)),
    );
  });
});
