/**
 * Solves a frame under loads: displacements, what each beam's ends carry, reactions. A loose part is named, never solved into nonsense.
 */
import { addForces, beamElement, type Element, heldBy, passOn, springElement } from "./element.ts";
import { type Factors, factorsOf, Loose, pressed, wholeMoves } from "./factors.ts";
import { FAINT, FAR, type Floor, type Footing, footingOf, movesOf } from "./floor.ts";
import type { Frame, NodeLoad, Support } from "./frame.ts";
import { type Plan, planOf } from "./plan.ts";
import { addWide, type Wide, wideOf } from "./wide.ts";

export interface Solution {
  is: "solved";
  /** Six numbers for each node. */
  displacements: number[][];
  /** What acts on each beam at its first and second node, in its own axes: six numbers each. */
  ends: { from: number[]; to: number[] }[];
  /** What each spring passes on to its second node, in its own axes: six numbers. */
  springs: number[][];
  /** What each support holds with: six numbers, 0 where it holds nothing. */
  reactions: { node: number; v: number[]; state: "held" | "lifted" | "slides" }[];
}

/** The frame cannot carry the loads: a part is free to move, it goes over because its supports only push, or friction cannot keep it. */
export type Failed = { is: "loose"; node: number; way: number } | { is: "tips" } | { is: "slides" };

/** What does not change from load to load. */
export interface Prepared {
  frame: Frame;
  beams: Element[];
  elements: Element[];
  /** How large the frame is, mm: moments are measured against forces by it. */
  size: number;
  /** The last plan, and what was factored by it. */
  planned?: { key: string; plan: Plan; fixed: Uint8Array };
  factored?: { key: string; by: Factors | Loose };
}

/**
 * Works out each element's stiffness; `alike` is a frame that differs in the stiffness of its springs alone, whose beams and plan are
 * taken over.
 */
export function prepare(frame: Frame, alike?: Prepared): Prepared {
  const beams = alike?.beams ?? frame.beams.map((beam) => beamElement(frame, beam));
  return {
    frame,
    beams,
    elements: [...beams, ...frame.springs.map(springElement)],
    size: alike?.size ?? sizeOf(frame),
    ...(alike?.planned && { planned: alike.planned }),
  };
}

/** Rounds of refinement that take away what rounding left, at most, and the share of the loads that may be left. */
const REFINED = 6;
const LEFT = 1e-12;
/** Solves for one set of loads; supports that only push are let go where they would pull. */
export function solve(
  prepared: Prepared,
  supports: readonly Support[],
  loads: readonly NodeLoad[],
): Solution | Failed {
  const factors = factorsFor(prepared, supports);
  if (factors instanceof Loose) return looseAt(factors.unknown);
  const floor = floorOf(factors, supports);
  const { forces, whole } = summed(prepared, loads);
  const on = pressed(factors, forces);
  const stood = footingOf(floor, on.subarray(factors.plan.taken * 6), whole);
  if ("fails" in stood)
    return stood.fails === "loose" ? looseAt(unknownOf(floor, stood.unknown)) : { is: stood.fails };
  const { footing } = stood;
  const u = wideOf(wholeMoves(factors, on, stood.moves));
  const far = u.high.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (!(far < FAR)) {
    const unknown = u.high.findIndex((value) => !(Math.abs(value) < FAR));
    return footing.lifted.size > 0 ? { is: "tips" } : looseAt(unknown);
  }
  const state = { prepared, floor, footing, forces };
  let before = Number.POSITIVE_INFINITY;
  for (let round = 0; round < REFINED; round++) {
    const rest = restOf(state, u);
    const left = rest.reduce(
      (most, value, unknown) => Math.max(most, Math.abs(value) / (unknown % 6 < 3 ? 1 : prepared.size)),
      0,
    );
    if (left <= LEFT * whole || left > before / 2) break;
    before = left;
    const again = pressed(factors, rest);
    const found = movesOf(floor, again.subarray(factors.plan.taken * 6), footing);
    if (!("moves" in found)) break;
    addWide(u, wholeMoves(factors, again, found.moves));
  }
  return solutionOf(state, u, supports);
}

interface State {
  prepared: Prepared;
  floor: Floor;
  footing: Footing;
  forces: Float64Array;
}

/** Forces that the frame does not yet resist, where it may move; at a sliding foot with its friction. */
function restOf({ prepared, floor, footing, forces }: State, u: Wide): Float64Array {
  const { forces: carried } = carriedBy(prepared.elements, u);
  const { fixed } = prepared.planned as NonNullable<Prepared["planned"]>;
  const rest = new Float64Array(forces.length);
  for (let unknown = 0; unknown < rest.length; unknown++)
    if (!fixed[unknown]) rest[unknown] = (forces[unknown] as number) - (carried[unknown] as number);
  for (const [k, { node, held, friction = 0 }] of floor.supports.entries()) {
    if (footing.lifted.has(k)) continue;
    const goes = footing.sliding.get(k);
    const pushes = -(rest[node * 6 + 2] as number);
    for (let way = 0; way < 6; way++) {
      const at = node * 6 + way;
      if (goes && way < 2)
        rest[at] =
          (rest[at] as number) - friction * (goes[way] as number) * pushes - FAINT * (u.high[at] as number);
      else if (held[way]) rest[at] = 0;
    }
  }
  return rest;
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
  const factors = factorsFor(prepared, supports);
  if (factors instanceof Loose) return 0;
  const floor = floorOf(factors, supports);
  const only = (ways: (way: number) => boolean) => {
    const { forces, whole } = summed(
      prepared,
      loads.map(({ node, v }) => ({ node, v: v.map((value, way) => (ways(way) ? value : 0)) })),
    );
    return { whole, on: pressed(factors, forces).subarray(factors.plan.taken * 6) };
  };
  const [level, plumb] = [only((way) => way < 2), only((way) => way >= 2)];
  let [low, high] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const share = (low + high) / 2;
    const both = plumb.on.map((value, at) => value + share * (level.on[at] as number));
    if ("footing" in footingOf(floor, both, share * level.whole + plumb.whole)) low = share;
    else high = share;
  }
  return low;
}

/** Loads as forces on every unknown, and how much they come to, moments as forces at the frame's size. */
function summed(
  { frame, size }: Prepared,
  loads: readonly NodeLoad[],
): { forces: Float64Array; whole: number } {
  const forces = new Float64Array(frame.nodes.length * 6);
  let whole = 0;
  for (const { node, v } of loads)
    for (let way = 0; way < v.length; way++) {
      const value = v[way] as number;
      forces[node * 6 + way] = (forces[node * 6 + way] as number) + value;
      whole += Math.abs(value) / (way < 3 ? 1 : size);
    }
  return { forces, whole };
}

function sizeOf({ nodes }: Frame): number {
  let size = 1;
  for (const way of [0, 1, 2] as const) {
    const all = nodes.map(({ at }) => at[way]);
    size = Math.max(size, Math.max(...all) - Math.min(...all));
  }
  return size;
}

const looseAt = (unknown: number): Failed => ({
  is: "loose",
  node: Math.floor(unknown / 6),
  way: unknown % 6,
});

const unknownOf = ({ supports }: Floor, unknown: number): number =>
  (supports[Math.floor(unknown / 6)]?.node ?? 0) * 6 + (unknown % 6);

/** Supports that may change under a load; the others hold for good. */
const changes = ({ pushes, friction }: Support): boolean => pushes === true || friction !== undefined;

const floorOf = ({ stiffness }: Factors, supports: readonly Support[]): Floor => ({
  stiffness,
  supports: supports.filter(changes),
});

/** The frame factored down to the supports that may change, as long as loads come with the same ones. */
function factorsFor(prepared: Prepared, supports: readonly Support[]): Factors | Loose {
  const key = supports
    .map((support) => `${support.node}${changes(support) ? "" : support.held.map(Number).join("")}`)
    .join();
  if (prepared.factored?.key === key) return prepared.factored.by;
  if (prepared.planned?.key !== key) prepared.planned = { key, ...plannedFor(prepared, supports) };
  const { plan, fixed } = prepared.planned;
  let by: Factors | Loose;
  try {
    by = factorsOf(prepared.elements, plan, fixed);
  } catch (error) {
    if (!(error instanceof Loose)) throw error;
    by = error;
  }
  prepared.factored = { key, by };
  return by;
}

function plannedFor(
  { frame, elements }: Prepared,
  supports: readonly Support[],
): { plan: Plan; fixed: Uint8Array } {
  const fixed = new Uint8Array(frame.nodes.length * 6);
  for (const support of supports)
    if (!changes(support))
      for (const [way, held] of support.held.entries()) if (held) fixed[support.node * 6 + way] = 1;
  const kept = supports.filter(changes).map(({ node }) => node);
  const still = (node: number) => fixed.subarray(node * 6, node * 6 + 6).every((held) => held === 1);
  const plan = planOf(
    frame.nodes.length,
    elements.flatMap(({ from, to }) => (still(from) || still(to) ? [] : [[from, to] as const])),
    kept,
  );
  return { plan, fixed };
}

/** What the elements ask of every unknown at these displacements, and what each passes on at its second end. */
function carriedBy(elements: readonly Element[], u: Wide): { forces: Float64Array; passed: Float64Array } {
  const forces = new Float64Array(u.high.length);
  const passed = new Float64Array(elements.length * 6);
  for (let k = 0; k < elements.length; k++) {
    passOn(elements[k] as Element, u, passed, k * 6);
    addForces(elements[k] as Element, passed, k * 6, forces);
  }
  return { forces, passed };
}

function solutionOf(
  { prepared, floor, footing, forces }: State,
  u: Wide,
  supports: readonly Support[],
): Solution {
  const { frame, beams, elements } = prepared;
  const carried = carriedBy(elements, u);
  const passed = elements.map((_, k) => sixOf(carried.passed, k));
  return {
    is: "solved",
    displacements: frame.nodes.map((_, node) => sixOf(u.high, node)),
    ends: beams.map((beam, k) => ({ from: heldBy(beam, passed[k] as number[]), to: passed[k] as number[] })),
    springs: passed.slice(beams.length),
    reactions: supports.map((support) => {
      const { node, held } = support;
      const k = floor.supports.indexOf(support);
      const lifted = footing.lifted.has(k);
      const by = (unknown: number) => (carried.forces[unknown] as number) - (forces[unknown] as number);
      return {
        node,
        v: held.map((is, way) => (is && !lifted ? by(node * 6 + way) : 0)),
        state: lifted ? "lifted" : footing.sliding.has(k) ? "slides" : "held",
      };
    }),
  };
}

function sixOf(values: Float64Array, k: number): number[] {
  const at = k * 6;
  return [
    values[at] as number,
    values[at + 1] as number,
    values[at + 2] as number,
    values[at + 3] as number,
    values[at + 4] as number,
    values[at + 5] as number,
  ];
}
