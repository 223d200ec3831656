/**
 * A frame reduced to the nodes that its supports stand under: everything else is factored once, and whatever the supports hold or let go
 * is then a matter of a small dense matrix (static condensation, any text on matrix analysis of frames).
 */
import { addTo, emptySkyline, factor, Loose, type Skyline, solveFactored } from "./skyline.ts";
import type { Twelve } from "./stiffness.ts";

/** A beam or spring between two nodes, in the frame's directions. */
export interface Element {
  nodes: readonly [number, number];
  global: Twelve;
}

export interface Reduced {
  /** Place of each unknown within, −1 of those at the supports' nodes; and the other way round. */
  numbers: Int32Array;
  /** Unknowns at the supports' nodes, six a node. */
  edge: readonly number[];
  inside: Skyline;
  /** How the inside moves for each unit at the edge, negated: K⁻¹ of the inside times what ties it to the edge. */
  follows: readonly Float64Array[];
  /** What ties the inside to each unknown of the edge: few places, and the numbers there. */
  ties: readonly Tie[];
  /** Stiffness of the edge alone, row by row. */
  stiffness: Float64Array;
}

interface Tie {
  at: Int32Array;
  values: Float64Array;
}

/** Reduces a frame to some nodes. Throws `Loose`, by the unknown of the frame, where a part is tied to none of them. */
export function reducedTo(
  elements: readonly Element[],
  place: readonly number[],
  supported: readonly number[],
): Reduced {
  const count = place.length * 6;
  const edgeNodes = new Set(supported);
  const edge = supported.flatMap((node) => Array.from({ length: 6 }, (_, way) => node * 6 + way));
  const numbers = new Int32Array(count).fill(-1);
  const unknowns: number[] = [];
  for (const node of [...place.keys()].sort((a, b) => (place[a] as number) - (place[b] as number))) {
    if (edgeNodes.has(node)) continue;
    for (let way = 0; way < 6; way++) {
      numbers[node * 6 + way] = unknowns.length;
      unknowns.push(node * 6 + way);
    }
  }
  const edgeAt = new Map(edge.map((unknown, k) => [unknown, k]));
  const size = unknowns.length;
  const first = Int32Array.from({ length: size }, (_, at) => at);
  const places = elements.map(({ nodes: [a, b] }) =>
    Int32Array.from({ length: 12 }, (_, k) => (k < 6 ? a : b) * 6 + (k % 6)),
  );
  for (const each of places) {
    let least = size;
    for (const unknown of each) {
      const at = numbers[unknown] as number;
      if (at >= 0 && at < least) least = at;
    }
    for (const unknown of each) {
      const at = numbers[unknown] as number;
      if (at >= 0) first[at] = Math.min(first[at] as number, least);
    }
  }
  const inside = emptySkyline(first);
  const m = edge.length;
  const ties = edge.map(() => new Float64Array(size));
  const stiffness = new Float64Array(m * m);
  for (const [e, { global }] of elements.entries()) {
    const each = places[e] as Int32Array;
    for (let r = 0; r < 12; r++)
      for (let c = 0; c < 12; c++) {
        const value = global[r * 12 + c] as number;
        if (value === 0) continue;
        const [a, b] = [numbers[each[r] as number] as number, numbers[each[c] as number] as number];
        if (a >= 0 && b >= 0) {
          // The mirror of each is there as well.
          if (a <= b) addTo(inside, a, b, value);
        } else if (a >= 0) add(ties[edgeAt.get(each[c] as number) as number] as Float64Array, a, value);
        else if (b < 0)
          add(
            stiffness,
            (edgeAt.get(each[r] as number) as number) * m + (edgeAt.get(each[c] as number) as number),
            value,
          );
      }
  }
  try {
    factor(inside);
  } catch (error) {
    throw error instanceof Loose ? new Loose(unknowns[error.unknown] as number) : error;
  }
  const follows = ties.map((tie) => solveFactored(inside, tie));
  const sparse = ties.map(sparseOf);
  for (let r = 0; r < m; r++)
    for (let c = 0; c < m; c++)
      add(stiffness, r * m + c, -pulled(sparse[r] as Tie, follows[c] as Float64Array));
  return { numbers, edge, inside, follows, ties: sparse, stiffness };
}

function sparseOf(column: Float64Array): Tie {
  const at: number[] = [];
  for (let k = 0; k < column.length; k++) if (column[k] !== 0) at.push(k);
  return { at: Int32Array.from(at), values: Float64Array.from(at, (k) => column[k] as number) };
}

const add = (to: Float64Array, at: number, value: number): void => {
  to[at] = (to[at] as number) + value;
};

/** What a tie passes on when the inside moves. */
function pulled({ at, values }: Tie, moved: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < at.length; k++) sum += (values[k] as number) * (moved[at[k] as number] as number);
  return sum;
}

/** Forces on the whole frame as the edge takes them, and how the inside moves under them with the edge held. */
export interface Pressed {
  inside: Float64Array;
  edge: Float64Array;
}

/** Forces, one for each unknown of the frame, pressed on the edge. */
export function pressed({ numbers, edge, inside, ties }: Reduced, forces: Float64Array): Pressed {
  const right = new Float64Array(inside.size);
  for (let unknown = 0; unknown < forces.length; unknown++) {
    const at = numbers[unknown] as number;
    if (at >= 0) right[at] = forces[unknown] as number;
  }
  const moved = solveFactored(inside, right);
  const onEdge = new Float64Array(edge.length);
  for (let k = 0; k < edge.length; k++)
    onEdge[k] = (forces[edge[k] as number] as number) - pulled(ties[k] as Tie, moved);
  return { inside: moved, edge: onEdge };
}

/** How the edge moves where it is not held; the first unknown of the edge that nothing holds, where there is one. */
export function edgeMoves(
  { stiffness, edge }: Reduced,
  { edge: forces }: Pressed,
  held: readonly boolean[],
): { moves: Float64Array } | { loose: number } {
  const m = edge.length;
  const free = edge.flatMap((_, k) => (held[k] ? [] : [k]));
  const n = free.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (const [r, a] of free.entries()) {
    right[r] = forces[a] as number;
    for (const [c, b] of free.entries()) matrix[r * n + c] = stiffness[a * m + b] as number;
  }
  // L·D·Lᵀ in place, without exchanges: the matrix is symmetric and, where nothing is loose, positive.
  const own = Float64Array.from({ length: n }, (_, k) => Math.abs(matrix[k * n + k] as number));
  for (let k = 0; k < n; k++) {
    const pivot = matrix[k * n + k] as number;
    if (!(pivot > LOOSE * (own[k] as number))) return { loose: edge[free[k] as number] as number };
    for (let r = k + 1; r < n; r++) {
      const share = (matrix[r * n + k] as number) / pivot;
      if (share === 0) continue;
      for (let c = k; c < n; c++) add(matrix, r * n + c, -share * (matrix[k * n + c] as number));
      add(right, r, -share * (right[k] as number));
    }
  }
  const moves = new Float64Array(m);
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k] as number;
    for (let c = k + 1; c < n; c++)
      sum -= (matrix[k * n + c] as number) * (moves[free[c] as number] as number);
    const move = sum / (matrix[k * n + k] as number);
    // Held by rounding alone.
    if (!(Math.abs(move) < FAR)) return { loose: edge[free[k] as number] as number };
    moves[free[k] as number] = move;
  }
  return { moves };
}

/** What moves further than this, mm or rad, is held by rounding alone. */
export const FAR = 1e6;
/** A pivot that has shrunk to this part of what stood there is zero but for rounding. */
const LOOSE = 1e-12;

/** What the supports hold with at each unknown of the edge. */
export function edgeForces(
  { stiffness, edge }: Reduced,
  { edge: forces }: Pressed,
  moves: Float64Array,
): Float64Array {
  const m = edge.length;
  return Float64Array.from({ length: m }, (_, r) => {
    let sum = -(forces[r] as number);
    for (let c = 0; c < m; c++) sum += (stiffness[r * m + c] as number) * (moves[c] as number);
    return sum;
  });
}

/** How every unknown of the frame moves. */
export function wholeMoves(
  { numbers, edge, follows }: Reduced,
  { inside }: Pressed,
  moves: Float64Array,
): Float64Array {
  const moved = Float64Array.from(inside);
  for (const [k, follow] of follows.entries()) {
    const by = moves[k] as number;
    if (by === 0) continue;
    for (let at = 0; at < moved.length; at++) moved[at] = (moved[at] as number) - by * (follow[at] as number);
  }
  const whole = Float64Array.from(numbers, (at) => (at >= 0 ? (moved[at] as number) : 0));
  for (const [k, unknown] of edge.entries()) whole[unknown] = moves[k] as number;
  return whole;
}
