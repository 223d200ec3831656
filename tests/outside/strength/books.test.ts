/**
 * Frames from books with all their numbers. Printed figures are from memory unless said, to as many figures as they are printed with.
 */
import { describe, expect, it } from "vitest";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { cross, sub, unit } from "../../../server/geometry/vec.ts";
import type { Beam, Frame, NodeLoad, Support } from "../../../server/strength/frame/frame.ts";
import { prepare, type Solution, solve } from "../../../server/strength/frame/solve.ts";

interface Wood {
  E: number;
  G?: number;
  A: number;
  I: number;
  J?: number;
}

const fixed = [true, true, true, true, true, true];
/** Free in the plane of x and y alone. */
const plane = [false, false, true, true, true, false];

/** A frame of slender beams between places, each with its own figures. */
function frameOf(places: Vec3[], members: (readonly [number, number, Wood])[]): Frame {
  return {
    nodes: places.map((at, k) => ({ id: String(k + 1), at })),
    springs: [],
    beams: members.map(([from, to, { E, G = E / 2.6, A, I, J = I }]): Beam => {
      const run = unit(sub(places[to - 1] ?? [0, 0, 0], places[from - 1] ?? [0, 0, 0]));
      const steep = Math.abs(run[2]) > 0.9;
      return {
        id: `${from}-${to}`,
        part: "",
        from: from - 1,
        to: to - 1,
        yAxis: unit(cross(run, steep ? [1, 0, 0] : [0, 0, 1])),
        E,
        G,
        A,
        Ay: 1e12,
        Az: 1e12,
        Iy: I,
        Iz: I,
        J,
      };
    }),
  };
}

function solved(frame: Frame, supports: Support[], loads: NodeLoad[]): Solution {
  const answer = solve(prepare(frame), supports, loads);
  if (answer.is !== "solved") throw new Error(JSON.stringify(answer));
  return answer;
}

const at = (node: number, ...held: boolean[]): Support => ({ node: node - 1, held });
const on = (node: number, ...v: number[]): NodeLoad => ({ node: node - 1, v });

/** Compares to the places that a figure is printed with. */
function printed(found: number | undefined, figure: string): void {
  const digits = figure
    .replace(/e.*$/i, "")
    .replace(/^[-0.]*/, "")
    .replace(".", "").length;
  const half = 0.51 * 10 ** (Math.floor(Math.log10(Math.abs(Number(figure)))) - digits + 1);
  expect(Math.abs((found ?? Number.NaN) - Number(figure)), `${found} is printed as ${figure}`).toBeLessThan(
    half,
  );
}

describe("Logan, A First Course in the Finite Element Method, 4th ed. (from memory)", () => {
  it("example 5.1: a plane frame pushed at one knee and turned at the other (lb, in)", () => {
    const column = { E: 30e6, A: 10, I: 200 };
    const { displacements } = solved(
      frameOf(
        [
          [0, 0, 0],
          [0, 120, 0],
          [120, 120, 0],
          [120, 0, 0],
        ],
        [
          [1, 2, column],
          [2, 3, { ...column, I: 100 }],
          [3, 4, column],
        ],
      ),
      [at(1, ...fixed), at(2, ...plane), at(3, ...plane), at(4, ...fixed)],
      [on(2, 10_000, 0, 0, 0, 0, 0), on(3, 0, 0, 0, 0, 0, 5000)],
    );
    printed(displacements[1]?.[0], "0.211");
    printed(displacements[1]?.[1], "0.00148");
    printed(displacements[1]?.[5], "-0.00153");
    printed(displacements[2]?.[0], "0.209");
    printed(displacements[2]?.[1], "-0.00148");
    printed(displacements[2]?.[5], "-0.00149");
  });

  it("example 5.2: a sloping and a level member under an even load (lb, in)", () => {
    const both = { E: 30e6, A: 100, I: 1000 };
    const [span, load] = [480, 1000 / 12];
    const { displacements } = solved(
      frameOf(
        [
          [0, 0, 0],
          [360, 360, 0],
          [840, 360, 0],
        ],
        [
          [1, 2, both],
          [2, 3, both],
        ],
      ),
      [at(1, ...fixed), at(2, ...plane), at(3, ...fixed)],
      [on(2, 0, (-load * span) / 2, 0, 0, 0, (-load * span ** 2) / 12)],
    );
    printed(displacements[1]?.[0], "0.0033");
    printed(displacements[1]?.[1], "-0.0097");
    printed(displacements[1]?.[5], "-0.0033");
  });

  it("a grid of three members under 100 kip (kip, in)", () => {
    const all = { E: 30e3, G: 12e3, A: 1e6, I: 400, J: 110 };
    const { displacements } = solved(
      frameOf(
        [
          [240, 0, 120],
          [0, 0, 240],
          [0, 0, 0],
          [240, 0, 0],
        ],
        [
          [1, 2, all],
          [1, 3, all],
          [1, 4, all],
        ],
      ),
      [at(2, ...fixed), at(3, ...fixed), at(4, ...fixed)],
      [on(1, 0, -100, 0, 0, 0, 0)],
    );
    printed(displacements[0]?.[1], "-2.83");
    printed(displacements[0]?.[3], "0.0295");
    printed(displacements[0]?.[5], "-0.0169");
  });
});

describe("Weaver and Gere, Matrix Analysis of Framed Structures (from memory)", () => {
  it("the plane frame of two members (kip, in)", () => {
    const both = { E: 10_000, A: 10, I: 1000 };
    const { displacements } = solved(
      frameOf(
        [
          [100, 75, 0],
          [0, 75, 0],
          [200, 0, 0],
        ],
        [
          [2, 1, both],
          [1, 3, both],
        ],
      ),
      [at(1, ...plane), at(2, ...fixed), at(3, ...fixed)],
      // Its own loads, and those that the loads along both members come to.
      [on(1, 0, -10 - 12 - 10, 0, 0, 0, -1000 + 200 - 250)],
    );
    printed(displacements[0]?.[0], "-0.02026");
    printed(displacements[0]?.[1], "-0.09936");
    printed(displacements[0]?.[5], "-0.00180");
  });
});

describe("Hibbeler, Structural Analysis, chapter 16 (from memory)", () => {
  it("example 16.1: a column and a beam on a roller, pushed level (kip, in)", () => {
    const both = { E: 29_000, A: 10, I: 500 };
    const { displacements } = solved(
      frameOf(
        [
          [0, 240, 0],
          [240, 240, 0],
          [240, 0, 0],
        ],
        [
          [1, 2, both],
          [2, 3, both],
        ],
      ),
      [at(1, false, true, true, true, true, false), at(2, ...plane), at(3, ...fixed)],
      [on(2, 5, 0, 0, 0, 0, 0)],
    );
    printed(displacements[1]?.[0], "0.696");
    printed(displacements[1]?.[1], "-0.00155");
    printed(displacements[1]?.[5], "-0.002488");
    printed(displacements[0]?.[0], "0.696");
    printed(displacements[0]?.[5], "0.001234");
  });

  it("example 16.2: a sloping and a level member under an even load (kip, in)", () => {
    const both = { E: 29_000, A: 12, I: 600 };
    const { displacements } = solved(
      frameOf(
        [
          [0, 0, 0],
          [240, 180, 0],
          [480, 180, 0],
        ],
        [
          [1, 2, both],
          [2, 3, both],
        ],
      ),
      [at(1, ...fixed), at(2, ...plane), at(3, ...fixed)],
      [on(2, 0, -30, 0, 0, 0, -1200)],
    );
    printed(displacements[1]?.[0], "0.0247");
    printed(displacements[1]?.[1], "-0.0954");
    printed(displacements[1]?.[5], "-0.00217");
  });
});

describe("closed forms of curved and deep beams", () => {
  it("a quarter of a circle, held at one end and pushed at the other: (3π/4 − 2)Pr³/EI and Pr³/2EI (any text on energy methods)", () => {
    const [r, P, n] = [300, 40, 48];
    const wood = { E: 12_000, A: 1e5, I: 60_000 };
    const places = Array.from({ length: n + 1 }, (_, k): Vec3 => {
      const angle = (Math.PI / 2) * (k / n);
      return [r * Math.sin(angle), r * Math.cos(angle), 0];
    });
    const { displacements } = solved(
      frameOf(
        places,
        Array.from({ length: n }, (_, k) => [k + 1, k + 2, wood] as const),
      ),
      [at(1, ...fixed), ...places.slice(1).map((_, k) => at(k + 2, ...plane))],
      [on(n + 1, 0, -P, 0, 0, 0, 0)],
    );
    const unitOf = (P * r ** 3) / (wood.E * wood.I);
    // Straight pieces lie within the circle: a thousandth with 48 of them.
    expect(Math.abs((displacements[n]?.[1] ?? 0) / unitOf + (3 * Math.PI) / 4 - 2)).toBeLessThan(2e-3);
    expect(Math.abs(Math.abs(displacements[n]?.[0] ?? 0) / unitOf - 0.5)).toBeLessThan(2e-3);
  });

  it("a beam five times as long as deep: shear adds 12EI/κGAL² of PL³/48EI (Timoshenko's beam)", () => {
    const [L, b, h, P, E, G] = [300, 20, 60, 1000, 12_000, 750];
    const [A, I] = [b * h, (b * h ** 3) / 12];
    const frame = frameOf(
      [
        [0, 0, 0],
        [L / 2, 0, 0],
        [L, 0, 0],
      ],
      [
        [1, 2, { E, G, A, I }],
        [2, 3, { E, G, A, I }],
      ],
    );
    const deep = { ...frame, beams: frame.beams.map((beam) => ({ ...beam, Ay: A / 1.2, Az: A / 1.2 })) };
    const { displacements } = solved(
      deep,
      [at(1, true, true, true, true, false, false), at(3, false, true, true, false, false, false)],
      [on(2, 0, -P, 0, 0, 0, 0)],
    );
    const bent = (P * L ** 3) / (48 * E * I);
    expect(displacements[1]?.[1]).toBeCloseTo(-bent * (1 + (12 * E * I) / ((G * A * L * L) / 1.2)), 9);
  });
});
