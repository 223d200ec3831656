/**
 * A beam or spring as the solver works with it: how its second end resists moving away from the first. Only what bends, stretches or twists
 * it counts, so that a frame that moves far as a whole does not drown small forces in rounding.
 */
import type { Vec3 } from "../../geometry/solid.ts";
import { axesOf, type Beam, type Frame, type Spring } from "./frame.ts";
import { differenceOf, type Wide } from "./wide.ts";

export interface Element {
  /** Indices of its nodes. */
  from: number;
  to: number;
  /** From the first node to the second, in the frame's directions; nothing for a spring. */
  reach: Vec3;
  /** Its own x, y, z. */
  axes: readonly [Vec3, Vec3, Vec3];
  /** Stiffness of its second end with the first held, in its own axes: along x, y, z and about them. */
  k: readonly number[];
  /** Between moving along y and turning about z, and between moving along z and turning about y. */
  lever: readonly [number, number];
}

/**
 * A beam that bends and shears (Timoshenko's beam; the closed form with Φ = 12EI/GA_sL² of any text on matrix analysis of frames, such as
 * Przemieniecki, *Theory of Matrix Structural Analysis*, from memory).
 */
export function beamElement(frame: Pick<Frame, "nodes">, beam: Beam): Element {
  const { length: L, axes } = axesOf(frame, beam);
  const { from, to, E, G, A, Ay, Az, Iy, Iz, J } = beam;
  const bent = (I: number, As: number) => {
    const phi = (12 * E * I) / (G * As * L * L);
    const bend = (E * I) / (1 + phi);
    return { move: (12 * bend) / L ** 3, lever: (6 * bend) / L ** 2, turn: ((4 + phi) * bend) / L };
  };
  const [y, z] = [bent(Iz, Ay), bent(Iy, Az)];
  const [a, b]: Vec3[] = [frame.nodes[from]?.at ?? [0, 0, 0], frame.nodes[to]?.at ?? [0, 0, 0]];
  return {
    from,
    to,
    reach: [b![0] - a![0], b![1] - a![1], b![2] - a![2]],
    axes,
    k: [(E * A) / L, y.move, z.move, (G * J) / L, z.turn, y.turn],
    // Moving along z turns the other way about y.
    lever: [-y.lever, z.lever],
  };
}

export const springElement = ({ from, to, axes, k }: Spring): Element => ({
  from,
  to,
  reach: [0, 0, 0],
  axes,
  k,
  lever: [0, 0],
});

/** What acts on an element at its second end, in its own axes, when the nodes have moved so; six numbers, put into `passed` from `at` on. */
export function passOn(
  { from, to, reach, axes, k, lever }: Element,
  { high, low }: Wide,
  passed: Float64Array,
  at: number,
): void {
  const [a, b] = [from * 6, to * 6];
  const [tx, ty, tz] = [high[a + 3] as number, high[a + 4] as number, high[a + 5] as number];
  const [lx, ly, lz] = [low[a + 3] as number, low[a + 4] as number, low[a + 5] as number];
  const [rx, ry, rz] = reach;
  const fine = (way: number) => (low[b + way] as number) - (low[a + way] as number);
  // How the second end has moved beyond where the first would carry it: u₂ − u₁ − θ₁ × reach.
  const [ax, ay, az] = [high[a] as number, high[a + 1] as number, high[a + 2] as number];
  const [bx, by, bz] = [high[b] as number, high[b + 1] as number, high[b + 2] as number];
  const dx = differenceOf(ax, bx, ty, rz, tz, ry, fine(0) - ly * rz + lz * ry);
  const dy = differenceOf(ay, by, tz, rx, tx, rz, fine(1) - lz * rx + lx * rz);
  const dz = differenceOf(az, bz, tx, ry, ty, rx, fine(2) - lx * ry + ly * rx);
  const px = (high[b + 3] as number) - tx + fine(3);
  const py = (high[b + 4] as number) - ty + fine(4);
  const pz = (high[b + 5] as number) - tz + fine(5);
  const [X, Y, Z] = axes;
  const my = Y[0] * dx + Y[1] * dy + Y[2] * dz;
  const mz = Z[0] * dx + Z[1] * dy + Z[2] * dz;
  const ny = Y[0] * px + Y[1] * py + Y[2] * pz;
  const nz = Z[0] * px + Z[1] * py + Z[2] * pz;
  const [k0, k1, k2, k3, k4, k5] = k as [number, number, number, number, number, number];
  passed[at] = k0 * (X[0] * dx + X[1] * dy + X[2] * dz);
  passed[at + 1] = k1 * my + lever[0] * nz;
  passed[at + 2] = k2 * mz + lever[1] * ny;
  passed[at + 3] = k3 * (X[0] * px + X[1] * py + X[2] * pz);
  passed[at + 4] = k4 * ny + lever[1] * mz;
  passed[at + 5] = k5 * nz + lever[0] * my;
}

/** What acts at its first end then, in its own axes: what the second end's forces and their lever ask for. */
export function heldBy({ reach }: Element, [X, Y, Z, T, My, Mz]: readonly number[]): number[] {
  const L = Math.hypot(...reach);
  return [-X!, -Y!, -Z!, -T!, -My! + L * Z!, -Mz! - L * Y!];
}

/** Adds what an element passes on at its ends, six numbers from `at` on, to the forces on every unknown, in the frame's directions. */
export function addForces(
  { from, to, reach, axes }: Element,
  passed: Float64Array,
  at: number,
  forces: Float64Array,
): void {
  const [x, y, z] = axes;
  const [a, b] = [from * 6, to * 6];
  const [X, Y, Z] = [passed[at] as number, passed[at + 1] as number, passed[at + 2] as number];
  const [T, U, V] = [passed[at + 3] as number, passed[at + 4] as number, passed[at + 5] as number];
  const add = (unknown: number, value: number) => {
    forces[unknown] = (forces[unknown] as number) + value;
  };
  const fx = X * x[0] + Y * y[0] + Z * z[0];
  const fy = X * x[1] + Y * y[1] + Z * z[1];
  const fz = X * x[2] + Y * y[2] + Z * z[2];
  const mx = T * x[0] + U * y[0] + V * z[0];
  const my = T * x[1] + U * y[1] + V * z[1];
  const mz = T * x[2] + U * y[2] + V * z[2];
  const [rx, ry, rz] = reach;
  add(b, fx);
  add(b + 1, fy);
  add(b + 2, fz);
  add(b + 3, mx);
  add(b + 4, my);
  add(b + 5, mz);
  add(a, -fx);
  add(a + 1, -fy);
  add(a + 2, -fz);
  add(a + 3, -mx - (ry * fz - rz * fy));
  add(a + 4, -my - (rz * fx - rx * fz));
  add(a + 5, -mz - (rx * fy - ry * fx));
}

/** Blocks of six by six, row by row, in the frame's directions. */
export interface Blocks {
  /** Of the first node, of the second, and rows of the second over columns of the first. */
  first: Float64Array;
  second: Float64Array;
  between: Float64Array;
}

/** An element's stiffness on its nodes. */
export function blocksOf({ reach, axes, k, lever }: Element): Blocks {
  const second = new Float64Array(36);
  const between = new Float64Array(36);
  const first = new Float64Array(36);
  const [, y, z] = axes;
  for (let r = 0; r < 3; r++)
    for (let c = 0; c < 3; c++) {
      let move = 0;
      let turn = 0;
      for (let i = 0; i < 3; i++) {
        const part = (axes[i]?.[r] as number) * (axes[i]?.[c] as number);
        move += (k[i] as number) * part;
        turn += (k[i + 3] as number) * part;
      }
      const both =
        lever[0] * (y[r] as number) * (z[c] as number) + lever[1] * (z[r] as number) * (y[c] as number);
      second[r * 6 + c] = move;
      second[(r + 3) * 6 + c + 3] = turn;
      second[r * 6 + c + 3] = both;
      second[(c + 3) * 6 + r] = both;
    }
  // Where the first node carries the second: u₁ and its turning crossed with the reach.
  const cross = crossOf(reach);
  for (let r = 0; r < 6; r++)
    for (let c = 0; c < 3; c++) {
      let carried = second[r * 6 + c + 3] as number;
      for (let i = 0; i < 3; i++) carried -= (second[r * 6 + i] as number) * (cross[i * 3 + c] as number);
      between[r * 6 + c] = -(second[r * 6 + c] as number);
      between[r * 6 + c + 3] = -carried;
    }
  for (let r = 0; r < 3; r++)
    for (let c = 0; c < 6; c++) {
      let moment = -(between[(r + 3) * 6 + c] as number);
      for (let i = 0; i < 3; i++) moment -= (cross[r * 3 + i] as number) * (between[i * 6 + c] as number);
      first[r * 6 + c] = -(between[r * 6 + c] as number);
      first[(r + 3) * 6 + c] = moment;
    }
  return { first, second, between };
}

/** The matrix that crosses a vector with others. */
const crossOf = ([x, y, z]: Vec3): number[] => [0, -z, y, z, 0, -x, -y, x, 0];
