/**
 * Solves a frame under loads: displacements, what each beam's ends carry, reactions. A loose part is named, never solved into nonsense.
 */
import type { Vec3 } from "../../geometry/solid.ts";
import { axesOf, type Frame, type NodeLoad, type Support } from "./frame.ts";
import { narrowOrder } from "./order.ts";
import {
  type Element,
  edgeForces,
  edgeMoves,
  FAR,
  type Pressed,
  pressed,
  type Reduced,
  reducedTo,
  wholeMoves,
} from "./reduced.ts";
import { Loose } from "./skyline.ts";
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

/** An element with its stiffness in its own axes. */
interface Own extends Element {
  own: Twelve;
  axes: readonly [Vec3, Vec3, Vec3];
}

/** What does not change from load to load. */
export interface Prepared {
  frame: Frame;
  beams: Own[];
  springs: Own[];
  elements: Own[];
  place: number[];
  /** The frame reduced to the supports of the last loads. */
  reduced?: { key: string; to: Reduced | Loose };
}

/**
 * Works out each element's stiffness and an order of the nodes; `alike` is a frame that differs in the stiffness of its springs alone, whose
 * beams need not be worked out again.
 */
export function prepare(frame: Frame, alike?: Prepared): Prepared {
  const beams =
    alike?.beams ??
    frame.beams.map((beam): Own => {
      const { axes } = axesOf(frame, beam);
      const own = beamStiffness(frame, beam);
      return { nodes: [beam.from, beam.to], own, axes, global: turned(own, axes) };
    });
  const springs = frame.springs.map((spring): Own => {
    const own = springStiffness(spring);
    return { nodes: [spring.from, spring.to], own, axes: spring.axes, global: turned(own, spring.axes) };
  });
  const elements = [...beams, ...springs];
  const place =
    alike?.place ??
    narrowOrder(
      frame.nodes.length,
      elements.map(({ nodes }) => nodes),
    );
  return { frame, beams, springs, elements, place };
}

const REFINED = 2;
/** Rounds of letting go and holding again of supports that only push. */
const ROUNDS = 24;
/** A support that pulls by less than this share of the loads does not pull but for rounding. */
const PULLS = 5e-10;

/** How the supports of some loads stand in the end. */
interface Stance {
  is: "stands";
  reduced: Reduced;
  held: boolean[];
  lifted: ReadonlySet<number>;
  /** How the edge moves, what is pressed on it, and the forces on every unknown. */
  moves: Float64Array;
  on: Pressed;
  forces: Float64Array;
}

/** Solves for one set of loads; supports that only push are let go where they would pull. */
export function solve(
  prepared: Prepared,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): Solution | Failed {
  const stance = stanceOf(prepared, supports, loads);
  if (stance.is !== "stands") return stance;
  const { reduced, held, lifted, forces, on, moves } = stance;
  const u = wholeMoves(reduced, on, moves);
  // Rounds of refinement take away what rounding left.
  for (let round = 0; round < REFINED; round++) {
    const carried = forcesOf(prepared.elements, u);
    const rest = pressed(
      reduced,
      forces.map((force, unknown) => force - (carried[unknown] as number)),
    );
    const found = edgeMoves(reduced, rest, held);
    if (!("moves" in found)) break;
    const more = wholeMoves(reduced, rest, found.moves);
    for (let unknown = 0; unknown < u.length; unknown++)
      u[unknown] = (u[unknown] as number) + (more[unknown] as number);
  }
  const far = u.reduce(
    (most, value, dof) => (dof % 6 < 3 && Math.abs(value) > Math.abs(u[most] ?? 0) ? dof : most),
    0,
  );
  if (!(Math.abs(u[far] ?? 0) < FAR) && lifted.size > 0) return { is: "tips" };
  if (!(Math.abs(u[far] ?? 0) < FAR)) return { is: "loose", node: Math.floor(far / 6), way: far % 6 };
  return solutionOf(prepared, u, forces, supports, lifted);
}

/** How the frame stands under some loads, or why it does not. */
function stanceOf(
  prepared: Prepared,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): Stance | Failed {
  const reduced = reducedFor(prepared, supports);
  if (reduced instanceof Loose) return looseAt(reduced.unknown);
  const { forces, whole } = summed(prepared, loads);
  const on = pressed(reduced, forces);
  const stood = settled(reduced, on, supports, PULLS * whole);
  return stood.is === "stands" ? { ...stood, reduced, on, forces } : stood;
}

/** Halvings by which the largest share is sought. */
const HALVINGS = 6;

/**
 * The largest share of what pushes level that the frame stands under, beside all that acts plumb, to a sixty-fourth; 0 where it stands
 * under none.
 */
export function largestShare(
  prepared: Prepared,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): number {
  const reduced = reducedFor(prepared, supports);
  if (reduced instanceof Loose) return 0;
  const only = (ways: (way: number) => boolean) =>
    summed(
      prepared,
      loads.map(({ node, v }) => ({ node, v: v.map((value, way) => (ways(way) ? value : 0)) })),
    );
  const [level, plumb] = [only((way) => way < 2), only((way) => way >= 2)];
  const [pushed, borne] = [pressed(reduced, level.forces), pressed(reduced, plumb.forces)];
  const both = (share: number): Pressed => ({
    inside: borne.inside,
    edge: borne.edge.map((value, k) => value + share * (pushed.edge[k] as number)),
  });
  let [low, high] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const share = (low + high) / 2;
    const whole = share * level.whole + plumb.whole;
    if (settled(reduced, both(share), supports, PULLS * whole).is === "stands") low = share;
    else high = share;
  }
  return low;
}

/** Loads as forces on every unknown, and how much they come to. */
function summed({ frame }: Prepared, loads: readonly NodeLoad[]): { forces: Float64Array; whole: number } {
  const forces = new Float64Array(frame.nodes.length * 6);
  let whole = 0;
  for (const { node, v } of loads)
    for (const [way, value] of v.entries()) {
      forces[node * 6 + way] = (forces[node * 6 + way] as number) + value;
      if (way < 3) whole += Math.abs(value);
    }
  return { forces, whole };
}

const looseAt = (unknown: number): Failed => ({
  is: "loose",
  node: Math.floor(unknown / 6),
  way: unknown % 6,
});

/** Which supports hold in the end; they do not pull by more than `least`. */
function settled(
  reduced: Reduced,
  on: Pressed,
  supports: readonly Support[],
  least: number,
): Pick<Stance, "is" | "held" | "lifted" | "moves"> | Failed {
  const lifted = new Set<number>();
  const seen = new Set<string>();
  for (let round = 0; round < ROUNDS; round++) {
    const held = heldBy(reduced, supports, lifted);
    const found = edgeMoves(reduced, on, held);
    if ("loose" in found) return lifted.size > 0 ? { is: "tips" } : looseAt(found.loose);
    const { moves } = found;
    if (!changes(reduced, on, moves, { supports, lifted, least }))
      return { is: "stands", held, lifted, moves };
    const state = [...lifted].sort((a, b) => a - b).join(",");
    if (seen.has(state)) return { is: "tips" };
    seen.add(state);
  }
  return { is: "tips" };
}

/** Lets go of the support that pulls hardest, holds again those that sink; whether anything changed. */
function changes(
  reduced: Reduced,
  on: Pressed,
  moves: Float64Array,
  { supports, lifted, least }: { supports: readonly Support[]; lifted: Set<number>; least: number },
): boolean {
  const forces = edgeForces(reduced, on, moves);
  const upAt = new Map(
    reduced.edge.flatMap((unknown, k) => (unknown % 6 === 2 ? [[(unknown - 2) / 6, k]] : [])),
  );
  const up = (node: number, of: Float64Array) => of[upAt.get(node) ?? -1] ?? 0;
  const sinking = [...lifted].filter((node) => up(node, moves) < -1e-9);
  const pulling = supports
    .filter(({ node, pushes }) => pushes && !lifted.has(node) && up(node, forces) < -least)
    .sort((a, b) => up(a.node, forces) - up(b.node, forces));
  for (const node of sinking) lifted.delete(node);
  // The one that pulls hardest first: the others often push again then.
  if (pulling[0]) lifted.add(pulling[0].node);
  return sinking.length > 0 || pulling.length > 0;
}

function heldBy(reduced: Reduced, supports: readonly Support[], lifted: ReadonlySet<number>): boolean[] {
  const ways = new Map(supports.map(({ node, held }) => [node, held]));
  return reduced.edge.map((unknown) => {
    const node = Math.floor(unknown / 6);
    return !lifted.has(node) && ways.get(node)?.[unknown % 6] === true;
  });
}

/** The frame reduced to these supports' nodes, as long as loads come with the same ones. */
function reducedFor(prepared: Prepared, supports: readonly Support[]): Reduced | Loose {
  const nodes = [...new Set(supports.map(({ node }) => node))].sort((a, b) => a - b);
  const key = nodes.join();
  if (prepared.reduced?.key !== key) {
    let to: Reduced | Loose;
    try {
      to = reducedTo(prepared.elements, prepared.place, nodes);
    } catch (error) {
      if (!(error instanceof Loose)) throw error;
      to = error;
    }
    prepared.reduced = { key, to };
  }
  return prepared.reduced.to;
}

/** What the elements ask of every unknown at these displacements. */
function forcesOf(elements: readonly Element[], u: Float64Array): Float64Array {
  const forces = new Float64Array(u.length);
  for (const { nodes, global } of elements) {
    const [a, b] = [nodes[0] * 6, nodes[1] * 6];
    for (let r = 0; r < 12; r++) {
      let sum = 0;
      for (let c = 0; c < 12; c++)
        sum += (global[r * 12 + c] as number) * (u[c < 6 ? a + c : b + c - 6] as number);
      const at = r < 6 ? a + r : b + r - 6;
      forces[at] = (forces[at] as number) + sum;
    }
  }
  return forces;
}

/** What acts on an element at its ends, in its own axes. */
function passedBy({ nodes: [a, b], own, axes }: Own, u: Float64Array): number[] {
  const at = Array.from({ length: 12 }, (_, k) => u[(k < 6 ? a : b) * 6 + (k % 6)] as number);
  return times(own, inAxes(at, axes));
}

function solutionOf(
  { frame, beams, springs, elements }: Prepared,
  u: Float64Array,
  loaded: Float64Array,
  supports: readonly Support[],
  lifted: ReadonlySet<number>,
): Solution {
  const forces = forcesOf(elements, u);
  const six = (of: (unknown: number) => number, node: number) =>
    Array.from({ length: 6 }, (_, way) => of(node * 6 + way));
  return {
    is: "solved",
    displacements: frame.nodes.map((_, node) => six((unknown) => u[unknown] as number, node)),
    ends: beams.map((beam) => {
      const passed = passedBy(beam, u);
      return { from: passed.slice(0, 6), to: passed.slice(6) };
    }),
    springs: springs.map((spring) => passedBy(spring, u).slice(6)),
    reactions: supports.map(({ node, held }) => ({
      node,
      v: six((unknown) => (forces[unknown] as number) - (loaded[unknown] as number), node).map(
        (value, way) => (held[way] && !lifted.has(node) ? value : 0),
      ),
      state: lifted.has(node) ? "lifted" : "held",
    })),
  };
}
