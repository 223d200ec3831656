import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { box } from "../../../server/geometry/convex.ts";
import { grainShare, jointStrength, repeatedShare } from "../../../server/strength/resistance.ts";
import { sectionAt, torsionOf } from "../../../server/strength/section.ts";
import { sharesOf } from "../../../server/strength/spread.ts";
import { type Strength, strengthSteps } from "../../../server/strength/strength.ts";
import { outOfBalance } from "../../outside/strength/balance.ts";
import { movesByLibrary } from "../../outside/strength/dense.ts";
import { plain, samples, studied } from "../range/files.ts";

const strengthOf = (text: string, level?: "domestic" | "severe"): Strength =>
  finish(strengthSteps(studied(text).chair, level));

const mess = samples["boathouse-mess-chair.chair"] ?? "";
const found = strengthOf(mess);
const solvedCases = found.cases.flatMap((one) =>
  one.solution.is === "solved" ? [{ ...one, solution: one.solution }] : [],
);

describe("the mess chair's frame", () => {
  it("is solved in every case, at three stiffnesses", () => {
    expect(solvedCases).toHaveLength(found.cases.length);
    expect(new Set(found.cases.map(({ load }) => load.name))).toEqual(
      new Set([
        "seat-and-back",
        "front-edge",
        "leg-forward",
        "leg-sideways",
        "repeated-sitting",
        "sitter",
        "rocking",
      ]),
    );
  });

  it("stands in equilibrium: what the floor gives is what was put on it", () => {
    for (const { load, solution, share } of solvedCases) {
      for (const way of [0, 1, 2]) {
        const on = load.loads.reduce((sum, { v }) => sum + (way < 2 ? share : 1) * (v[way] ?? 0), 0);
        const floor = solution.reactions.reduce((sum, { v }) => sum + (v[way] ?? 0), 0);
        expect(on + floor).toBeCloseTo(0, 5);
      }
      // Feet push and never pull.
      for (const { v } of solution.reactions) expect(v[2] ?? 0).toBeGreaterThanOrEqual(-1e-6);
    }
  });

  it("moves as ml-matrix says, to 1e-9 of the largest movement", () => {
    const one = solvedCases.find(({ load }) => load.name === "leg-sideways");
    if (!one) throw new Error("no such case");
    const { frame, load, solution, share } = one;
    const held = new Set(
      solution.reactions.flatMap(({ node, state }) =>
        state === "lifted"
          ? []
          : (load.supports.find((each) => each.node === node)?.held ?? []).flatMap((is, way) =>
              is ? [node * 6 + way] : [],
            ),
      ),
    );
    const loads = load.loads.map(({ node, v }) => ({
      node,
      v: v.map((value, way) => (way < 2 ? share : 1) * value),
    }));
    const u = movesByLibrary(frame, loads, held);
    for (const ways of [
      [0, 1, 2],
      [3, 4, 5],
    ]) {
      const most = Math.max(...u.flatMap((each) => ways.map((way) => Math.abs(each[way] ?? 0))));
      for (const [node, each] of u.entries())
        for (const way of ways)
          expect(Math.abs((solution.displacements[node]?.[way] ?? 0) - (each[way] ?? 0))).toBeLessThan(
            most * 1e-9,
          );
    }
  });

  it("is in equilibrium at every node and as a whole, to 1e-9 of its loads", () => {
    for (const { frame, load, solution, share } of solvedCases) {
      const loads = load.loads.map(({ node, v }) => ({
        node,
        v: v.map((value, way) => (way < 2 ? share : 1) * value),
      }));
      const { nodes, whole } = outOfBalance(frame, solution, loads);
      expect(nodes).toBeLessThan(1e-9);
      expect(whole).toBeLessThan(1e-9);
    }
  });

  it("works alike on both sides under loads in the middle", () => {
    const demands = new Map(
      solvedCases.find(({ load, stiffness }) => load.name === "seat-and-back" && stiffness === "middle")
        ?.joints,
    );
    for (const [name, demand] of demands) {
      const twin = demands.get(name.replace(/left/g, "#").replace(/right/g, "left").replace(/#/g, "right"));
      if (twin !== undefined) expect(Math.abs(twin - demand)).toBeLessThan(0.02 * Math.max(demand, 0.05));
    }
  });

  it("works harder the more is asked", () => {
    expect(strengthOf(mess, "severe").margin ?? 9).toBeLessThan(found.margin ?? 0);
  });
});

describe("a chair that cannot be judged", () => {
  it("says whose timber is not known, and has no case without a seat", () => {
    const odd = strengthOf(plain().replace("timber european-ash moisture 10%", "timber own density 600"));
    expect(odd.unknown.length).toBeGreaterThan(0);
    expect(
      strengthOf("post leg pair {\n  section 30 x 30\n  foot out 100, back 0\n  height 400\n}\n").cases,
    ).toEqual([]);
  });
});

describe("sections", () => {
  const axes = { at: [0, 0, 50], along: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] } as const;

  it("are measured as a rectangle is", () => {
    const whole = sectionAt(
      { pieces: [box([-10, -20, 0], [10, 0, 100]), box([-10, 0, 0], [10, 20, 100])] },
      axes,
    );
    expect(whole?.A).toBeCloseTo(800, 6);
    expect(whole?.Iy).toBeCloseTo((20 * 40 ** 3) / 12, 3);
    expect(whole?.Iz).toBeCloseTo((40 * 20 ** 3) / 12, 3);
    expect([whole?.farY, whole?.farZ]).toEqual([10, 20]);
  });

  it("lose what is cut out of them", () => {
    const cut = sectionAt({ pieces: [box([-10, -20, 0], [10, 20, 100])] }, axes, [
      box([-3, -20, 40], [3, 20, 60]),
    ]);
    expect(cut?.A).toBeCloseTo(800 - 240, 6);
    expect(cut?.Iz).toBeCloseTo((40 * (20 ** 3 - 6 ** 3)) / 12, 3);
  });

  it("lose no more than there is of them, whatever passes through", () => {
    const wood = { pieces: [box([-10, -20, 0], [10, 0, 100]), box([-10, 0, 0], [10, 20, 100])] };
    const cut = sectionAt(wood, axes, [box([-90, -8, 40], [90, 8, 60])]);
    expect(cut?.A).toBeCloseTo(800 - 320, 6);
    expect(cut?.Iy).toBeCloseTo((20 * (40 ** 3 - 16 ** 3)) / 12, 3);
  });

  it("twist as rectangles do (0.141, 0.196, 0.229, 0.263, 0.281, 0.312 at 1, 1.5, 2, 3, 4, 10; Timoshenko and Goodier, Theory of Elasticity, from memory)", () => {
    for (const [ratio, beta] of [
      [1, 0.141],
      [1.5, 0.196],
      [2, 0.229],
      [3, 0.263],
      [4, 0.281],
      [10, 0.312],
    ] as const) {
      const [a, b] = [10 * ratio, 10];
      const J = torsionOf(
        { A: a * b, Iy: (a * b ** 3) / 12, Iz: (b * a ** 3) / 12, farY: a / 2, farZ: b / 2 },
        false,
      );
      expect(Math.abs(J / (a * b ** 3) - beta)).toBeLessThan(0.002);
    }
  });
});

describe("what wood bears", () => {
  it("falls with the slope of grain as the Wood Handbook's table 5-12 has it (FPL-GTR-190; seen)", () => {
    for (const [run, share] of [
      [25, 0.96],
      [20, 0.93],
      [15, 0.89],
      [10, 0.81],
      [5, 0.55],
    ] as const)
      expect(Math.abs(grainShare(Math.atan(1 / run)) - share)).toBeLessThan(0.011);
  });

  it("falls when a load comes again and again, as plywood T joints with dowels did (Bending fatigue life of two-pin dowel joints; seen)", () => {
    for (const [times, share] of [
      [131_253, 0.4],
      [31_617, 0.6],
      [329, 0.9],
    ] as const)
      expect(repeatedShare(times)).toBeCloseTo(share, 6);
    expect(repeatedShare(1)).toBe(1);
    for (let n = 1; n < 1e7; n *= 3) expect(repeatedShare(n * 3)).toBeLessThanOrEqual(repeatedShare(n));
  });

  it("is in joints what published tests found: red and white oak tenons 9.5 x 38 x 32, 353 and 358 N·m (BioResources 11(3), 2016; seen)", () => {
    const joint = {
      kind: "rectangular",
      shape: "rectangular",
      sections: [{ thick: [-4.75, 4.75], wide: [-19, 19] }],
      long: 32,
      glueArea: 2 * 38 * 32,
      facts: {},
    } as unknown as Parameters<typeof jointStrength>[0];
    const oak = (species: string) => (jointStrength(joint, species)?.momentWide ?? 0) / 1000;
    expect(oak("red-oak") / 353).toBeGreaterThan(0.85);
    expect(oak("red-oak") / 353).toBeLessThan(1.15);
    expect(oak("white-oak") / 358).toBeGreaterThan(0.85);
    expect(oak("white-oak") / 358).toBeLessThan(1.15);
  });
});

describe("a load on the seat", () => {
  it("goes to what carries it with the same force and moments", () => {
    const supports = [
      [-200, 0, 400],
      [200, 0, 400],
      [-180, 380, 400],
      [180, 380, 400],
      [0, 0, 400],
    ] as const;
    for (const at of [
      [0, 100],
      [50, 200],
      [-120, 30],
    ] as [number, number][]) {
      const shares = sharesOf(supports, at);
      const sum = (f: (k: number) => number) => shares.reduce((total, share, k) => total + share * f(k), 0);
      expect(sum(() => 1)).toBeCloseTo(1, 6);
      expect(sum((k) => supports[k]?.[0] ?? 0)).toBeCloseTo(at[0], 4);
      expect(sum((k) => supports[k]?.[1] ?? 0)).toBeCloseTo(at[1], 4);
    }
  });
});
