/**
 * A frame's stiffness as one whole matrix, the way textbooks write it out, for comparing with another library's solution.
 */
import { LuDecomposition, Matrix } from "ml-matrix";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { add, cross, dot, scale, sub } from "../../../server/geometry/vec.ts";
import {
  axesOf,
  type Beam,
  type Frame,
  type NodeLoad,
  type Spring,
} from "../../../server/strength/frame/frame.ts";

/** A square matrix of twelve, row by row: six numbers of the first node, six of the second. */
type Twelve = Float64Array;

const SIZE = 12;

/**
 * A beam's stiffness in its own axes, shear included (Timoshenko's beam; the closed form with Φ = 12EI/GA_sL² of any text on matrix
 * analysis of frames, such as Przemieniecki, *Theory of Matrix Structural Analysis*, from memory).
 */
function beamStiffness(frame: Pick<Frame, "nodes">, beam: Beam): Twelve {
  const { length: L } = axesOf(frame, beam);
  const { E, G, A, Ay, Az, Iy, Iz, J } = beam;
  const k: Twelve = new Float64Array(SIZE * SIZE);
  const put = (row: number, column: number, value: number) => {
    k[row * SIZE + column] = value;
    k[column * SIZE + row] = value;
  };
  const pair = (at: number, value: number) => {
    put(at, at, value);
    put(at + 6, at + 6, value);
    put(at, at + 6, -value);
  };
  pair(0, (E * A) / L);
  pair(3, (G * J) / L);
  // Bending along y (about z), then along z (about y), whose turning goes the other way.
  for (const [move, turn, I, As, sign] of [
    [1, 5, Iz, Ay, 1],
    [2, 4, Iy, Az, -1],
  ] as const) {
    const phi = (12 * E * I) / (G * As * L * L);
    const bend = (E * I) / (1 + phi);
    pair(move, (12 * bend) / L ** 3);
    const lever = (sign * 6 * bend) / L ** 2;
    put(move, turn, lever);
    put(move, turn + 6, lever);
    put(move + 6, turn, -lever);
    put(move + 6, turn + 6, -lever);
    put(turn, turn, ((4 + phi) * bend) / L);
    put(turn + 6, turn + 6, ((4 + phi) * bend) / L);
    put(turn, turn + 6, ((2 - phi) * bend) / L);
  }
  return k;
}

/** A spring's stiffness in its own axes. */
function springStiffness({ k }: Spring): Twelve {
  const matrix: Twelve = new Float64Array(SIZE * SIZE);
  for (const [at, value] of k.entries()) {
    matrix[at * SIZE + at] = value;
    matrix[(at + 6) * SIZE + at + 6] = value;
    matrix[at * SIZE + at + 6] = -value;
    matrix[(at + 6) * SIZE + at] = -value;
  }
  return matrix;
}

/** The same stiffness in the frame's directions. */
function turned(k: Twelve, axes: readonly [Vec3, Vec3, Vec3]): Twelve {
  const out: Twelve = new Float64Array(SIZE * SIZE);
  // Each block of three by three turns by itself: Tᵀ k T.
  for (let r = 0; r < 4; r++)
    for (let c = 0; c < 4; c++)
      for (let i = 0; i < 3; i++)
        for (let j = 0; j < 3; j++) {
          let sum = 0;
          for (let a = 0; a < 3; a++)
            for (let b = 0; b < 3; b++)
              sum += (axes[a]?.[i] ?? 0) * (k[(r * 3 + a) * SIZE + c * 3 + b] ?? 0) * (axes[b]?.[j] ?? 0);
          out[(r * 3 + i) * SIZE + c * 3 + j] = sum;
        }
  return out;
}

interface Tied {
  from: number;
  to: number;
  /** In its own axes. */
  own: Twelve;
  axes: readonly [Vec3, Vec3, Vec3];
  reach: Vec3;
}

const tiedOf = (frame: Frame): Tied[] => [
  ...frame.beams.map((beam) => ({
    ...beam,
    own: beamStiffness(frame, beam),
    axes: axesOf(frame, beam).axes,
    reach: sub(frame.nodes[beam.to]!.at, frame.nodes[beam.from]!.at),
  })),
  ...frame.springs.map((spring) => ({
    ...spring,
    own: springStiffness(spring),
    reach: [0, 0, 0] as Vec3,
  })),
];

/** All of a frame, six unknowns a node. */
function wholeStiffness(frame: Frame, tied: readonly Tied[]): Matrix {
  const size = frame.nodes.length * 6;
  const K = Matrix.zeros(size, size);
  for (const { from, to, own, axes } of tied) {
    const k = turned(own, axes);
    const dof = (n: number) => (n < 6 ? from : to) * 6 + (n % 6);
    for (let r = 0; r < 12; r++)
      for (let c = 0; c < 12; c++) K.set(dof(r), dof(c), K.get(dof(r), dof(c)) + (k[r * 12 + c] ?? 0));
  }
  return K;
}

/**
 * Takes what the frame resists with off the forces on it, element by element: from how far the second end has moved beyond where the first
 * carries it, so that what the whole matrix loses in rounding is found again.
 */
function takeOffResisted(tied: readonly Tied[], moved: readonly number[], forces: number[]): void {
  for (const { from, to, own, axes, reach } of tied) {
    const u = (node: number, at: number): Vec3 => {
      const k = node * 6 + at;
      return [moved[k]!, moved[k + 1]!, moved[k + 2]!];
    };
    const away = sub(sub(u(to, 0), u(from, 0)), cross(u(from, 3), reach));
    const turn = sub(u(to, 3), u(from, 3));
    const bent = [...axes.map((axis) => dot(axis, away)), ...axes.map((axis) => dot(axis, turn))];
    const q = bent.map((_, r) => bent.reduce((sum, value, c) => sum + own[(r + 6) * 12 + c + 6]! * value, 0));
    const inFrame = (at: number) =>
      axes.reduce<Vec3>((sum, axis, k) => add(sum, scale(axis, q[at + k]!)), [0, 0, 0]);
    const [force, moment] = [inFrame(0), inFrame(3)];
    const back = add(moment, cross(reach, force));
    for (let way = 0; way < 3; way++) {
      forces[to * 6 + way]! -= force[way]!;
      forces[to * 6 + 3 + way]! -= moment[way]!;
      forces[from * 6 + way]! += force[way]!;
      forces[from * 6 + 3 + way]! += back[way]!;
    }
  }
}

/**
 * How a frame moves under loads by ml-matrix, six numbers a node; `held` are the unknowns that do not move. Turning is counted in tenths of a
 * metre, so that the matrix is even, and what rounding leaves is solved again.
 */
export function movesByLibrary(
  frame: Frame,
  loads: readonly NodeLoad[],
  held: ReadonlySet<number>,
): number[][] {
  const tied = tiedOf(frame);
  const K = wholeStiffness(frame, tied);
  const free = Array.from({ length: K.rows }, (_, dof) => dof).filter((dof) => !held.has(dof));
  const even = (dof: number) => (dof % 6 < 3 ? 1 : 0.01);
  const scaled = K.selection(free, free);
  for (const [r, a] of free.entries())
    for (const [c, b] of free.entries()) scaled.set(r, c, scaled.get(r, c) * even(a) * even(b));
  const factors = new LuDecomposition(scaled);
  const moved = new Array<number>(K.rows).fill(0);
  for (let round = 0; round < 3; round++) {
    const forces = new Array<number>(K.rows).fill(0);
    for (const { node, v } of loads) for (const [way, value] of v.entries()) forces[node * 6 + way]! += value;
    takeOffResisted(tied, moved, forces);
    const more = factors.solve(Matrix.columnVector(free.map((dof) => forces[dof]! * even(dof))));
    for (const [row, dof] of free.entries()) moved[dof]! += more.get(row, 0) * even(dof);
  }
  return frame.nodes.map((_, node) => moved.slice(node * 6, node * 6 + 6));
}
