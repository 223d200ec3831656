/**
 * Solves a frame under loads: displacements, what each beam's ends carry, reactions. A loose part is named, never solved into nonsense.
 */
import { axesOf, type Beam, type Frame, type NodeLoad, type Support } from "./frame.ts";
import { narrowOrder } from "./order.ts";
import { addTo, emptySkyline, factor, Loose, type Skyline, solveFactored } from "./skyline.ts";
import { beamStiffness, inAxes, springStiffness, type Twelve, times, turned } from "./stiffness.ts";

export interface Solution {
  is: "solved";
  /** Six numbers for each node. */
  displacements: number[][];
  /** What acts on each beam at its first and second node, in its own axes: six numbers each. */
  ends: { from: number[]; to: number[] }[];
  /** What each spring passes on to its second node, in its own axes: six numbers. */
  springs: number[][];
  /** What each support holds with: six numbers, 0 where it holds nothing. */
  reactions: { node: number; v: number[]; state: "held" | "lifted" }[];
}

/** The frame cannot carry the loads: a part is free to move, or it goes over because its supports only push. */
export type Failed = { is: "loose"; node: number; way: number } | { is: "tips" };

interface Element {
  nodes: readonly [number, number];
  global: Twelve;
}

/** What does not change from load to load. */
export interface Prepared {
  frame: Frame;
  elements: Element[];
  place: number[];
}

/** Works out each element's stiffness and an order of the nodes. */
export function prepare(frame: Frame): Prepared {
  const elements = [
    ...frame.beams.map(
      (beam): Element => ({
        nodes: [beam.from, beam.to],
        global: turned(beamStiffness(frame, beam), axesOf(frame, beam).axes),
      }),
    ),
    ...frame.springs.map(
      (spring): Element => ({
        nodes: [spring.from, spring.to],
        global: turned(springStiffness(spring), spring.axes),
      }),
    ),
  ];
  const ties = elements.map(({ nodes }) => nodes);
  return { frame, elements, place: narrowOrder(frame.nodes.length, ties) };
}

/** Rounds of letting go and holding again of supports that only push. */
const ROUNDS = 24;

/** Solves for one set of loads; supports that only push are let go where they would pull. */
export function solve(
  prepared: Prepared,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): Solution | Failed {
  const lifted = new Set<number>();
  const seen = new Set<string>();
  for (let round = 0; round < ROUNDS; round++) {
    const standing = supports.map((support) =>
      lifted.has(support.node) ? { ...support, held: none } : support,
    );
    const solved = solveHeld(prepared, standing, loads);
    if (solved.is === "loose") return lifted.size > 0 ? { is: "tips" } : solved;
    const pulling = solved.reactions.filter(
      ({ node, v }) => !lifted.has(node) && pushes(supports, node) && (v[2] ?? 0) < -1e-9,
    );
    const sinking = [...lifted].filter((node) => (solved.displacements[node]?.[2] ?? 0) < -1e-9);
    if (pulling.length === 0 && sinking.length === 0)
      return {
        ...solved,
        reactions: solved.reactions.map((each) => ({
          ...each,
          state: lifted.has(each.node) ? "lifted" : "held",
        })),
      };
    for (const node of sinking) lifted.delete(node);
    // The one that pulls hardest first: the others often push again then.
    const [worst] = [...pulling].sort((a, b) => (a.v[2] ?? 0) - (b.v[2] ?? 0));
    if (worst) lifted.add(worst.node);
    const state = [...lifted].sort((a, b) => a - b).join(",");
    if (seen.has(state)) return { is: "tips" };
    seen.add(state);
  }
  return { is: "tips" };
}

const none = [false, false, false, false, false, false];
const pushes = (supports: readonly Support[], node: number): boolean =>
  supports.some((support) => support.node === node && support.pushes === true);

function solveHeld(
  { frame, elements, place }: Prepared,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): Solution | Extract<Failed, { is: "loose" }> {
  const count = frame.nodes.length * 6;
  const numbers = numbering(count, place, supports);
  const matrix = assembled(elements, numbers);
  const right = new Float64Array(matrix.size);
  for (const { node, v } of loads)
    for (const [way, value] of v.entries()) {
      const at = numbers[node * 6 + way] as number;
      if (at >= 0) right[at] = (right[at] as number) + value;
    }
  try {
    factor(matrix);
  } catch (error) {
    if (!(error instanceof Loose)) throw error;
    const at = numbers.indexOf(error.unknown);
    return { is: "loose", node: Math.floor(at / 6), way: at % 6 };
  }
  const whole = (x: Float64Array) => Float64Array.from(numbers, (at) => (at >= 0 ? (x[at] as number) : 0));
  let x = solveFactored(matrix, right);
  // Two rounds of refinement take away what rounding left.
  for (let round = 0; round < 2; round++) {
    const carried = forcesOf(elements, whole(x));
    const rest = new Float64Array(matrix.size);
    for (const [dof, at] of numbers.entries())
      if (at >= 0) rest[at] = (right[at] as number) - (carried[dof] as number);
    const more = solveFactored(matrix, rest);
    x = x.map((value, at) => value + (more[at] as number));
  }
  const found = whole(x);
  const far = found.reduce(
    (most, value, dof) => (dof % 6 < 3 && Math.abs(value) > Math.abs(found[most] ?? 0) ? dof : most),
    0,
  );
  if (!(Math.abs(found[far] ?? 0) < FAR)) return { is: "loose", node: Math.floor(far / 6), way: far % 6 };
  return solutionOf(frame, found, elements, supports, loads);
}

/** What moves further than this, mm, is held by rounding alone. */
const FAR = 1e6;

/** The place of each unknown in the matrix, −1 where it is held. */
function numbering(count: number, place: readonly number[], supports: readonly Support[]): Int32Array {
  const held = new Uint8Array(count);
  for (const { node, held: ways } of supports)
    for (const [way, is] of ways.entries()) if (is) held[node * 6 + way] = 1;
  const nodes = [...place.keys()].sort((a, b) => (place[a] as number) - (place[b] as number));
  const numbers = new Int32Array(count).fill(-1);
  let next = 0;
  for (const node of nodes)
    for (let way = 0; way < 6; way++) if (!held[node * 6 + way]) numbers[node * 6 + way] = next++;
  return numbers;
}

function assembled(elements: readonly Element[], numbers: Int32Array): Skyline {
  const size = numbers.reduce((most, at) => Math.max(most, at + 1), 0);
  const first = Int32Array.from({ length: size }, (_, at) => at);
  const dofs = elements.map(({ nodes: [a, b] }) =>
    Array.from({ length: 12 }, (_, k) => numbers[(k < 6 ? a : b) * 6 + (k % 6)] as number),
  );
  for (const each of dofs) {
    const least = Math.min(...each.filter((at) => at >= 0));
    for (const at of each) if (at >= 0) first[at] = Math.min(first[at] as number, least);
  }
  const matrix = emptySkyline(first);
  for (const [e, { global }] of elements.entries()) {
    const each = dofs[e] as number[];
    for (let r = 0; r < 12; r++)
      for (let c = r; c < 12; c++) {
        const [a, b] = [each[r] as number, each[c] as number];
        if (a >= 0 && b >= 0) addTo(matrix, a, b, global[r * 12 + c] as number);
      }
  }
  return matrix;
}

/** What the elements ask of every node at these displacements. */
function forcesOf(elements: readonly Element[], u: Float64Array): Float64Array {
  const forces = new Float64Array(u.length);
  for (const { nodes, global } of elements) {
    const f = times(global, at(u, nodes));
    for (let k = 0; k < 12; k++) {
      const dof = (nodes[k < 6 ? 0 : 1] as number) * 6 + (k % 6);
      forces[dof] = (forces[dof] as number) + (f[k] as number);
    }
  }
  return forces;
}

const at = (u: Float64Array, [a, b]: readonly [number, number]): number[] =>
  Array.from({ length: 12 }, (_, k) => u[(k < 6 ? a : b) * 6 + (k % 6)] as number);

function solutionOf(
  frame: Frame,
  u: Float64Array,
  elements: readonly Element[],
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): Solution {
  const forces = forcesOf(elements, u);
  for (const { node, v } of loads)
    for (const [way, value] of v.entries()) {
      const dof = node * 6 + way;
      forces[dof] = (forces[dof] as number) - value;
    }
  const six = (array: Float64Array, node: number) => [...array.subarray(node * 6, node * 6 + 6)];
  return {
    is: "solved",
    displacements: frame.nodes.map((_, node) => six(u, node)),
    ends: frame.beams.map((beam) => endsOf(frame, beam, u)),
    springs: frame.springs.map((spring) => {
      const local = inAxes(at(u, [spring.from, spring.to]), spring.axes);
      return times(springStiffness(spring), local).slice(6);
    }),
    reactions: supports.map(({ node, held }) => ({
      node,
      v: six(forces, node).map((value, way) => (held[way] ? value : 0)),
      state: "held",
    })),
  };
}

function endsOf(frame: Frame, beam: Beam, u: Float64Array): { from: number[]; to: number[] } {
  const { axes } = axesOf(frame, beam);
  const local = times(beamStiffness(frame, beam), inAxes(at(u, [beam.from, beam.to]), axes));
  return { from: local.slice(0, 6), to: local.slice(6) };
}
