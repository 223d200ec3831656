/**
 * The frame solver against a published example, closed forms and an independent library.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { distance } from "../../../server/geometry/vec.ts";
import type { Beam, Frame, NodeLoad, Spring, Support } from "../../../server/strength/frame/frame.ts";
import { prepare, type Solution, solve } from "../../../server/strength/frame/solve.ts";
import { outOfBalance, worksOf } from "./balance.ts";
import { movesByLibrary } from "./dense.ts";

const fixed = [true, true, true, true, true, true];

interface Wood {
  E: number;
  G: number;
  A: number;
  I: number;
  J: number;
  As?: number;
}

/** Shear areas so large that shear bends nothing, unless given. */
function beam(from: number, to: number, { E, G, A, I, J, As = 1e12 }: Wood, yAxis: Vec3 = [0, 0, 1]): Beam {
  return {
    id: `${from}-${to}`,
    part: `${from}-${to}`,
    from,
    to,
    yAxis,
    E,
    G,
    A,
    Ay: As,
    Az: As,
    Iy: I,
    Iz: I,
    J,
  };
}

const frameOf = (places: Vec3[], beams: Beam[]): Frame => ({
  nodes: places.map((at, k) => ({ id: String(k), at })),
  beams,
  springs: [],
});

function solved(frame: Frame, supports: Support[], loads: NodeLoad[]): Solution {
  const answer = solve(prepare(frame), supports, loads);
  if (answer.is !== "solved") throw new Error(JSON.stringify(answer));
  return answer;
}

const wood = { E: 12000, G: 750, A: 800, I: 60_000, J: 90_000 };

describe("a published frame", () => {
  it("Logan, A First Course in the Finite Element Method, 4th ed., example 5.8 (seen)", () => {
    const steel = { E: 30000, G: 10000, A: 10, I: 100, J: 50 };
    const frame = frameOf(
      [
        [0, 0, 0],
        [-100, 0, 0],
        [0, 0, -100],
        [0, -100, 0],
      ],
      [beam(1, 0, steel), beam(2, 0, steel, [1, 0, 0]), beam(3, 0, steel)],
    );
    const { displacements } = solved(
      frame,
      [1, 2, 3].map((node) => ({ node, held: fixed })),
      [{ node: 0, v: [0, -50, 0, -1000, 0, 0] }],
    );
    const printed = [7.098e-5, -0.014, -2.352e-3, -3.996e-3, 1.78e-5, -1.033e-4];
    for (const [way, value] of printed.entries())
      expect(Math.abs((displacements[0]?.[way] ?? 0) - value)).toBeLessThan(Math.abs(value) * 4e-3);
  });
});

describe("closed forms", () => {
  it("a cantilever, with shear and without: PL³/3EI + PL/GAs", () => {
    for (const As of [1e12, 600]) {
      const frame = frameOf(
        [
          [0, 0, 0],
          [500, 0, 0],
        ],
        [beam(0, 1, { ...wood, As })],
      );
      const { displacements, reactions } = solved(
        frame,
        [{ node: 0, held: fixed }],
        [{ node: 1, v: [0, 0, -200, 0, 0, 0] }],
      );
      const expected = (200 * 500 ** 3) / (3 * wood.E * wood.I) + (200 * 500) / (wood.G * As);
      expect(displacements[1]?.[2]).toBeCloseTo(-expected, 9);
      expect(reactions[0]?.v[2]).toBeCloseTo(200, 9);
      expect(reactions[0]?.v[4]).toBeCloseTo(-200 * 500, 6);
    }
  });

  it("a bent cantilever in bending and torsion: P(a³/3EI + b³/3EI + ab²/GJ)… loaded at its free end", () => {
    const [a, b, P] = [400, 250, 90];
    const frame = frameOf(
      [
        [0, 0, 0],
        [a, 0, 0],
        [a, b, 0],
      ],
      [beam(0, 1, wood), beam(1, 2, wood)],
    );
    const { displacements } = solved(
      frame,
      [{ node: 0, held: fixed }],
      [{ node: 2, v: [0, 0, -P, 0, 0, 0] }],
    );
    const EI = wood.E * wood.I;
    const expected = P * (a ** 3 / (3 * EI) + b ** 3 / (3 * EI) + (a * b ** 2) / (wood.G * wood.J));
    expect(displacements[2]?.[2]).toBeCloseTo(-expected, 8);
  });

  it("a portal with fixed feet and a side load at a knee (standard rigid-frame tables)", () => {
    const [h, L, P] = [400, 600, 100];
    // Members that cannot be stretched, as the tables take them.
    const stout = { ...wood, A: 1e9 };
    const beamOf = { ...stout, I: 2 * wood.I };
    const frame = frameOf(
      [
        [0, 0, 0],
        [0, 0, h],
        [L, 0, h],
        [L, 0, 0],
      ],
      [beam(0, 1, stout, [0, 1, 0]), beam(1, 2, beamOf, [0, 1, 0]), beam(3, 2, stout, [0, 1, 0])],
    );
    const { reactions, ends } = solved(
      frame,
      [
        { node: 0, held: fixed },
        { node: 3, held: fixed },
      ],
      [{ node: 1, v: [P, 0, 0, 0, 0, 0] }],
    );
    const k = 2 * (h / L);
    expect(Math.abs(reactions[0]?.v[4] ?? 0)).toBeCloseTo(((P * h) / 2) * ((3 * k + 1) / (6 * k + 1)), 1);
    const knee = Math.max(...(ends[0]?.to.slice(3).map(Math.abs) ?? []));
    expect(knee).toBeCloseTo(((P * h) / 2) * ((3 * k) / (6 * k + 1)), 1);
  });

  it("a beam on two supports: PL³/48EI", () => {
    const frame = frameOf(
      [
        [0, 0, 0],
        [300, 0, 0],
        [600, 0, 0],
      ],
      [beam(0, 1, wood), beam(1, 2, wood)],
    );
    const { displacements } = solved(
      frame,
      [
        { node: 0, held: [true, true, true, true, false, false] },
        { node: 2, held: [false, true, true, false, false, false] },
      ],
      [{ node: 1, v: [0, 0, -500, 0, 0, 0] }],
    );
    expect(displacements[1]?.[2]).toBeCloseTo(-(500 * 600 ** 3) / (48 * wood.E * wood.I), 9);
  });

  it("a spring that turns adds moment over stiffness", () => {
    const frame: Frame = {
      ...frameOf(
        [
          [0, 0, 0],
          [0, 0, 0],
          [400, 0, 0],
        ],
        [beam(1, 2, wood)],
      ),
      springs: [
        {
          id: "s",
          joint: "s",
          from: 0,
          to: 1,
          axes: [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ],
          k: [1e9, 1e9, 1e9, 1e12, 2e6, 1e12],
        },
      ],
    };
    const { displacements, springs } = solved(
      frame,
      [{ node: 0, held: fixed }],
      [{ node: 2, v: [0, 0, -100, 0, 0, 0] }],
    );
    const expected = (100 * 400 ** 3) / (3 * wood.E * wood.I) + (100 * 400 * 400) / 2e6 + 100 / 1e9;
    expect(displacements[2]?.[2]).toBeCloseTo(-expected, 8);
    expect(Math.abs(springs[0]?.[4] ?? 0)).toBeCloseTo(40_000, 3);
  });
});

const place = fc.tuple(
  fc.integer({ min: -400, max: 400 }),
  fc.integer({ min: -400, max: 400 }),
  fc.integer({ min: 0, max: 900 }),
);

/** A tangle of beams, each node tied to one before it and some to others, feet fixed. */
const tangles = fc
  .record({
    places: fc.uniqueArray(place, { minLength: 4, maxLength: 24, selector: String }),
    ties: fc.array(fc.tuple(fc.nat(23), fc.nat(23)), { maxLength: 20 }),
    pushes: fc.array(fc.integer({ min: -900, max: 900 }), { minLength: 6, maxLength: 6 }),
  })
  .map(({ places, ties, pushes }) => {
    const pairs = new Map<string, [number, number]>();
    for (let k = 1; k < places.length; k++) pairs.set(`${k - 1}-${k}`, [k - 1, k]);
    for (const [a, b] of ties) {
      const [from, to] = [Math.min(a, b) % places.length, Math.max(a, b) % places.length];
      if (from !== to) pairs.set(`${Math.min(from, to)}-${Math.max(from, to)}`, [from, to]);
    }
    const beams = [...pairs.values()].map(([from, to]) => {
      const [a, b]: Vec3[] = [places[from] ?? [0, 0, 0], places[to] ?? [0, 0, 0]];
      if (!a || !b) throw new Error("a place is missing");
      const steep = Math.abs(b[2] - a[2]) > 0.9 * Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
      return beam(from, to, { ...wood, As: 500 }, steep ? [1, 0, 0] : [0, 0, 1]);
    });
    const frame = frameOf(
      places.map((each): Vec3 => [...each]),
      beams,
    );
    const loads = [
      { node: places.length - 1, v: pushes.map((value, way) => (way < 3 ? value : value * 100)) },
    ];
    return { frame, loads, supports: [{ node: 0, held: fixed }] };
  });

/** A frame like a chair's: four feet held on the floor, every other place tied to three before it, one tie in three through a spring. */
const tiedFrames = fc
  .record({
    places: fc.uniqueArray(place, { minLength: 4, maxLength: 20, selector: String }),
    towards: fc.array(fc.nat(1000), { minLength: 60, maxLength: 60 }),
    pushes: fc.array(fc.integer({ min: -900, max: 900 }), { minLength: 6, maxLength: 6 }),
  })
  .map(({ places, towards, pushes }) => {
    const feet: Vec3[] = [
      [-200, -200, -20],
      [210, -190, -20],
      [-190, 220, -20],
      [180, 200, -20],
    ];
    const at: Vec3[] = [...feet, ...places.map((each): Vec3 => [...each])];
    const springs: Spring[] = [];
    const beams: Beam[] = [];
    for (let k = 4; k < 4 + places.length; k++)
      for (const n of [0, 1, 2]) {
        const from = ((towards[(k - 4) * 3 + n] ?? 0) + n) % k;
        const steep = Math.abs(at[k]![2] - at[from]![2]) > 0.9 * distance(at[k]!, at[from]!);
        let end = from;
        if ((k + n) % 3 === 0) {
          end = at.length;
          at.push(at[from]!);
          springs.push({
            id: `${k}${n}`,
            joint: "",
            from,
            to: end,
            axes: [
              [1, 0, 0],
              [0, 1, 0],
              [0, 0, 1],
            ],
            k: [2e5, 2e5, 2e5, 3e6, 3e6, 1e6],
          });
        }
        beams.push(beam(end, k, { ...wood, As: 500 }, steep ? [1, 0, 0] : [0, 0, 1]));
      }
    return {
      frame: { ...frameOf(at, beams), springs },
      loads: [{ node: 3 + places.length, v: pushes.map((value, way) => (way < 3 ? value : value * 100)) }],
      supports: [0, 1, 2, 3].map((node) => ({ node, held: fixed })),
    };
  });

describe("random frames", () => {
  it("tied as chairs are, move as ml-matrix says to 1e-9 of the largest movement", () => {
    fc.assert(
      fc.property(tiedFrames, ({ frame, loads, supports }) => {
        const { displacements } = solved(frame, supports, loads);
        const u = movesByLibrary(frame, loads, new Set(Array.from({ length: 24 }, (_, dof) => dof)));
        for (const ways of [
          [0, 1, 2],
          [3, 4, 5],
        ]) {
          const most = Math.max(...u.map((each) => Math.max(...ways.map((way) => Math.abs(each[way] ?? 0)))));
          for (const [node, each] of u.entries())
            for (const way of ways)
              expect(Math.abs((displacements[node]?.[way] ?? 0) - (each[way] ?? 0))).toBeLessThan(
                most * 1e-9 + 1e-15,
              );
        }
      }),
      { numRuns: 40, seed: 17 },
    );
  });

  for (const [name, frames] of [
    ["tied as chairs are", tiedFrames],
    ["that are held at one node and sway far", tangles],
  ] as const)
    it(`${name}: every node and the whole are in equilibrium to 1e-9 of the loads, and loads do twice the work that is stored`, () => {
      fc.assert(
        fc.property(frames, ({ frame, loads, supports }) => {
          const solution = solved(frame, supports, loads);
          const { nodes, whole } = outOfBalance(frame, solution, loads);
          expect(nodes).toBeLessThan(1e-9);
          expect(whole).toBeLessThan(1e-9);
          const { done, stored } = worksOf(frame, solution, loads);
          expect(Math.abs(done - stored)).toBeLessThan(Math.abs(done) * 1e-9);
        }),
        { numRuns: 40, seed: 17 },
      );
    });
});

describe("feet that friction keeps", () => {
  /** Four legs that spread from a point, pushed down there. */
  const spread = (friction: number, push = [0, 0, -800, 0, 0, 0]) => {
    const frame = frameOf(
      [
        [150, 150, 0],
        [-150, 150, 0],
        [-150, -150, 0],
        [150, -150, 0],
        [0, 0, 400],
      ],
      [0, 1, 2, 3].map((k) => beam(k, 4, wood)),
    );
    const supports = [0, 1, 2, 3].map(
      (node): Support => ({
        node,
        held: [true, true, true, false, false, false],
        pushes: true,
        friction,
      }),
    );
    return { frame, answer: solve(prepare(frame), supports, [{ node: 4, v: push }]) };
  };

  // Slender legs push level by the spread over the height: 0.53 of what they push down by.
  it.each([0.9, 0.54])(
    "stand as if they were pinned where it is enough: the level force is the push times the spread over the height, of slender legs (%s)",
    (friction) => {
      const { answer } = spread(friction);
      if (answer.is !== "solved") throw new Error(answer.is);
      for (const { v, state } of answer.reactions) {
        expect(state).toBe("held");
        expect(v[2]).toBeCloseTo(200, 6);
        expect(Math.abs(Math.abs(v[0] ?? 0) - (200 * 150) / 400)).toBeLessThan(200 * 0.01);
      }
    },
  );

  it.each([0.2, 0.52])(
    "slide outwards where it is not, against so much of the push and no more (Coulomb's law), in balance (%s)",
    (friction) => {
      const { frame, answer } = spread(friction);
      if (answer.is !== "solved") throw new Error(answer.is);
      for (const { v, state, node } of answer.reactions) {
        expect(state).toBe("slides");
        expect(v[2]).toBeCloseTo(200, 6);
        expect(Math.hypot(v[0] ?? 0, v[1] ?? 0)).toBeCloseTo(friction * 200, 3);
        const [x = 0, y = 0] = answer.displacements[node] ?? [];
        const [fx, fy] = frame.nodes[node]!.at;
        expect(x * fx + y * fy).toBeGreaterThan(0);
      }
      expect(outOfBalance(frame, answer, [{ node: 4, v: [0, 0, -800, 0, 0, 0] }]).nodes).toBeLessThan(1e-9);
    },
  );

  it("do not keep what is pushed away level", () => {
    expect(spread(0.2, [250, 0, -800, 0, 0, 0]).answer.is).toBe("slides");
  });
});

describe("what cannot be solved", () => {
  it("is named: a part that nothing holds", () => {
    const frame = frameOf(
      [
        [0, 0, 0],
        [500, 0, 0],
        [0, 300, 0],
        [500, 300, 0],
      ],
      [beam(0, 1, wood), beam(2, 3, wood)],
    );
    const answer = solve(prepare(frame), [{ node: 0, held: fixed }], [{ node: 1, v: [0, 0, -1, 0, 0, 0] }]);
    expect(answer.is).toBe("loose");
    expect(answer.is === "loose" && [2, 3].includes(answer.node)).toBe(true);
  });

  it("lets go of feet that would have to pull, and says when it goes over", () => {
    // A beam on three feet with its load beyond the last: the far foot lifts; beyond what the others hold it goes over.
    const frame = frameOf(
      [
        [0, 0, 0],
        [300, 0, 0],
        [600, 0, 0],
        [700, 0, 0],
      ],
      [0, 1, 2].map((k) => beam(k, k + 1, wood)),
    );
    const foot = (node: number): Support => ({
      node,
      held: [true, true, true, true, false, true],
      pushes: true,
    });
    const weight = { node: 1, v: [0, 0, -900, 0, 0, 0] };
    const stands = solve(
      prepare(frame),
      [foot(0), foot(1), foot(2)],
      [weight, { node: 3, v: [0, 0, -100, 0, 0, 0] }],
    );
    expect(stands.is).toBe("solved");
    const over = solve(prepare(frame), [foot(0), foot(1)], [{ node: 3, v: [0, 0, -100, 0, 0, 0] }]);
    expect(over.is).toBe("tips");
  });
});
