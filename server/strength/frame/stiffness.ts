/**
 * Stiffness of beams and springs, in the frame's own directions.
 */
import type { Vec3 } from "../../geometry/solid.ts";
import { axesOf, type Beam, type Frame, type Spring } from "./frame.ts";

/** A square matrix of twelve, row by row: six numbers of the first node, six of the second. */
export type Twelve = Float64Array;

const SIZE = 12;

/**
 * A beam's stiffness in its own axes, shear included (Timoshenko's beam; the closed form with Φ = 12EI/GA_sL² of any text on matrix
 * analysis of frames, such as Przemieniecki, *Theory of Matrix Structural Analysis*, from memory).
 */
export function beamStiffness(frame: Pick<Frame, "nodes">, beam: Beam): Twelve {
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
export function springStiffness({ k }: Spring): Twelve {
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
export function turned(k: Twelve, axes: readonly [Vec3, Vec3, Vec3]): Twelve {
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

/** Twelve numbers in the frame's directions, in the axes of a beam or spring. */
export function inAxes(v: readonly number[], axes: readonly [Vec3, Vec3, Vec3]): number[] {
  return v.map((_, at) => {
    const block = at - (at % 3);
    const axis = axes[at % 3] ?? [0, 0, 0];
    return axis[0] * (v[block] ?? 0) + axis[1] * (v[block + 1] ?? 0) + axis[2] * (v[block + 2] ?? 0);
  });
}

/** A matrix of twelve times twelve numbers. */
export function times(k: Twelve, v: readonly number[]): number[] {
  return Array.from({ length: SIZE }, (_, row) => {
    let sum = 0;
    for (let column = 0; column < SIZE; column++) sum += (k[row * SIZE + column] ?? 0) * (v[column] ?? 0);
    return sum;
  });
}
