/**
 * The sticks and the hollow of the slip chair against figures worked apart from the program (as the language's description of it gives
 * them), and against distances and integrals worked out here from the text alone.
 */
import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { measureBody } from "../../../server/geometry/body.ts";
import { studied } from "../../check.ts";
import { hull, type Solid, sweepSolids, together } from "../solids/manifold.ts";

const text = readFileSync(new URL("../../../samples/slip-chair.chair", import.meta.url), "utf8");
const { chair: found, problems } = studied(text);
const chair = found!;
const value = (name: string) => chair.values.get(name)!.number;
const far = (a: readonly number[], b: readonly number[]) => Math.hypot(...a.map((v, k) => v - b[k]!));

describe("the slip chair's sticks", () => {
  it("is without errors", () => {
    expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  it("stand 56.3 apart along the seat's edge", () => {
    const feet = [...chair.sticks.values()].map(({ start }) => start);
    expect(feet).toHaveLength(7);
    // Behind, the line is an arc: that of the back edge, 34 inside it (R = c²/8s + s/2 with 300 and 48 of the text).
    const radius = 300 ** 2 / (8 * 48) + 48 / 2 - 34;
    for (const k of [2, 3]) {
      const chord = far(feet[k]!, feet[k + 1]!);
      expect(Math.abs(2 * radius * Math.asin(chord / 2 / radius) - 56.3)).toBeLessThan(0.06);
    }
    for (const [k, foot] of feet.slice(1).entries()) expect(far(foot, feet[k]!)).toBeLessThan(56.35);
  });

  it.each([
    [1, 488.5],
    [2, 479.4],
    [3, 475.0],
    [4, 473.5],
    [5, 475.0],
    [6, 479.4],
    [7, 488.5],
  ])("stick %i is %d long between the seat and the crest", (n, long) => {
    expect(Math.abs(value(`back-stick.${n}.length`) - long)).toBeLessThan(0.06);
  });

  it("are as long as from a foot on the parallel of the outline to an even place on the crest's lower edge", () => {
    const ends = [...chair.sticks.values()].map(({ start, end }) => ({ start, end }));
    // The crest's lower edge, by its own circle: chord 430, rise 55 outside, 22 thick; bent first, then leaned 14° about the middle.
    const [chord, rise, thick, lean] = [430, 55, 22, (14 * Math.PI) / 180];
    const radius = (chord * chord) / (8 * rise) + rise / 2;
    const half = Math.asin(chord / 2 / radius);
    const mean = radius - thick / 2;
    const margin = 48 / mean;
    for (const [k, { end }] of ends.entries()) {
      const turn = half - margin - ((2 * (half - margin)) / 6) * k;
      const behind = mean * (Math.cos(turn) - 1);
      const place = [mean * Math.sin(turn), 474 + behind * Math.cos(lean), 880 - behind * Math.sin(lean)];
      expect(far(place, end)).toBeLessThan(0.02);
    }
  });

  it("leans its back as the middle stick does, from square to the seat", () => {
    const { start, end } = chair.sticks.get("back-stick.4")!;
    const lean = Math.atan2(end[1] - start[1], end[2] - start[2]);
    expect(value("backrest.rake")).toBeCloseTo(lean - Math.asin(12 / 400), 6);
  });
});

describe("its seat", () => {
  afterAll(sweepSolids);

  const { seat } = chair;
  const { ring } = seat!.plan!;

  /** Distance to the outline, by every stretch of it; less than 0 outside. */
  function inside(x: number, y: number): number {
    let least = Number.POSITIVE_INFINITY;
    let within = false;
    for (const [k, a] of ring.entries()) {
      const b = ring[(k + 1) % ring.length]!;
      const run = [b[0] - a[0], b[1] - a[1]] as const;
      const t = ((x - a[0]) * run[0] + (y - a[1]) * run[1]) / (run[0] ** 2 + run[1] ** 2);
      const held = Math.min(1, Math.max(0, t));
      least = Math.min(least, Math.hypot(x - a[0] - run[0] * held, y - a[1] - run[1] * held));
      if (a[1] > y !== b[1] > y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])) within = !within;
    }
    return within ? least : -least;
  }

  it("loses to its hollow and its bevel what an integral over its face gives", () => {
    const step = 2;
    let [area, hollow, bevel] = [0, 0, 0];
    for (let x = -225 + step / 2; x < 225; x += step) {
      for (let y = step / 2; y < 402; y += step) {
        const d = inside(x, y);
        if (d < 0) continue;
        const cell = step * step;
        area += cell;
        hollow += cell * 12 * Math.sin((Math.PI / 2) * Math.min(1, Math.max(0, (d - 50) / 100))) ** 2;
        bevel += cell * 14 * Math.max(0, 1 - d / 25);
      }
    }
    const { volume } = measureBody(seat!.body);
    expect(area / 1e6).toBeCloseTo(0.1537, 3);
    expect(volume / (area * 44 - hollow - bevel)).toBeCloseTo(1, 3);
  });

  it("is of pieces that touch and do not overlap", () => {
    const solids = seat!.body.pieces.map(({ points }): Solid => hull(points.map((p) => [...p])));
    const sum = solids.reduce((total, solid) => total + solid.volume(), 0);
    expect(together(solids).volume() / sum).toBeCloseTo(1, 5);
  });

  it("is lowest where the hollow and its fall say", () => {
    let low = Number.POSITIVE_INFINITY;
    for (let y = 0; y < 400; y += 0.25) {
      const depth = 12 * Math.sin((Math.PI / 2) * Math.min(1, Math.max(0, (inside(0, y) - 50) / 100))) ** 2;
      const sine = 12 / 400;
      low = Math.min(low, 430 - y * sine - depth * Math.sqrt(1 - sine * sine));
    }
    expect(value("seat.low")).toBeCloseTo(low, 1);
  });
});

describe("a stick over the hollow", () => {
  // At the middle of a round seat the hollow is level: 12 deep.
  const over = (hollow: string) => `units mm
timber white-ash moisture 9%
joint stick-tenon {
  round 12, long 24
}
seat solid {
  up 430
  thick 44
  round 380
  ${hollow}
}
stick prop {
  from seat to crest
  at out 0, back 190
  round 14
  joined stick-tenon
}
rail crest {
  carried by prop
  up 800
  back 190
  rake 0deg
  long 300
  section 24 x 70
}
`;

  it("has its tenon in the wood from the hollow down", () => {
    const [flat, hollowed] = [over(""), over("hollow 12 over 90, rim 40")].map(
      (text) => studied(text).chair!,
    );
    const joint = (chair: typeof flat) => chair!.joints.get("prop to seat")!;
    expect(joint(flat).overHollow).toBeUndefined();
    expect(joint(hollowed).overHollow).toBeCloseTo(12, 9);
    // Half of a bore's wall is long grain: 24 deep on a flat seat, 12 under the hollow.
    expect(joint(flat).glueArea).toBeCloseTo((Math.PI * 12 * 24) / 2, 6);
    expect(joint(hollowed).glueArea).toBeCloseTo((Math.PI * 12 * 12) / 2, 6);
    expect(joint(hollowed).depthThere).toBeCloseTo(44, 6);
  });

  it("is told, and not when it stands on the rim", () => {
    const told = (hollow: string) =>
      studied(over(hollow)).problems.filter(({ code }) => code === "foot-over-hollow");
    expect(told("hollow 12 over 90, rim 40").map(({ message }) => message)).toEqual([
      expect.stringContaining(
        "The shoulder of prop stands 12 mm above the hollow at its foot, which leaves that much less of its tenon of 24 mm in the wood; 1 mm is allowed.",
      ),
    ]);
    expect(told("hollow 12 over 90, rim 190")).toEqual([]);
  });

  it("has no socket at all where its tenon ends above the wood", () => {
    const { problems } = studied(over("hollow 28 over 90, rim 40"));
    const told = problems.filter(({ code }) => code === "socket-too-shallow").map(({ found }) => found);
    expect(told).toEqual(["0 mm"]);
  });
});
