/**
 * What the supports of a frame do under some loads: those that only push let go where they would have to pull, those that friction keeps
 * slide where it is not enough. All else of the frame has been taken out before (`factors.ts`), so each try is a small matter.
 */
import type { Support } from "./frame.ts";
import { rubbing } from "./friction.ts";

/** A foot that slides: the level way it goes, a unit. */
export type Sliding = readonly [number, number];

/** How each of the supports stands: held, let go, or sliding. */
export interface Footing {
  lifted: ReadonlySet<number>;
  sliding: ReadonlyMap<number, Sliding>;
}

/** The kept nodes' problem: how they resist each other, row by row, six unknowns each, in the order of their supports. */
export interface Floor {
  stiffness: Float64Array;
  supports: readonly Support[];
}

const SIX = 6;

/** What moves further than this, mm or rad, is held by rounding alone. */
export const FAR = 1e6;
/** A pivot that has shrunk to this part of what stood there is zero but for rounding. */
const LOOSE = 1e-12;
/** A foot that slides is held by so little, N/mm, that a frame whose feet all slide stays where it is. */
export const FAINT = 1e-5;
/** The share of the loads that may be held so. */
const MOST_FAINT = 1e-6;
/** A support that pulls by less than this share of the loads does not pull but for rounding. */
const PULLS = 5e-10;

/** How the kept nodes move under forces on them; the unknown that nothing holds, where there is one. */
export function movesOf(
  { stiffness, supports }: Floor,
  forces: Float64Array,
  { lifted, sliding }: Footing,
): { moves: Float64Array } | { loose: number } {
  const m = supports.length * SIX;
  const free: number[] = [];
  for (const [k, { held }] of supports.entries())
    for (let way = 0; way < SIX; way++)
      if (!held[way] || lifted.has(k) || (way < 2 && sliding.has(k))) free.push(k * SIX + way);
  const n = free.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let r = 0; r < n; r++) {
    const a = free[r] as number;
    right[r] = forces[a] as number;
    for (let c = 0; c < n; c++) matrix[r * n + c] = stiffness[a * m + (free[c] as number)] as number;
    const k = Math.floor(a / SIX);
    const goes = a % SIX < 2 ? sliding.get(k) : undefined;
    if (!goes) continue;
    // Friction is so much of what the floor pushes with: what the frame asks of the foot plumb, less what is put on it there.
    const rubs = (supports[k]?.friction ?? 0) * (goes[a % SIX] as number);
    const up = k * SIX + 2;
    right[r] = (right[r] as number) + rubs * (forces[up] as number);
    for (let c = 0; c < n; c++)
      matrix[r * n + c] =
        (matrix[r * n + c] as number) + rubs * (stiffness[up * m + (free[c] as number)] as number);
    matrix[r * n + r] = (matrix[r * n + r] as number) + FAINT;
  }
  const loose = solvedInPlace(matrix, right);
  if (loose !== undefined) return { loose: free[loose] as number };
  const moves = new Float64Array(m);
  for (let r = 0; r < n; r++) moves[free[r] as number] = right[r] as number;
  return { moves };
}

/** Solves without exchanges; the place of a pivot that vanishes, or of what moves too far, where there is one. */
function solvedInPlace(matrix: Float64Array, right: Float64Array): number | undefined {
  const n = right.length;
  const own = Float64Array.from({ length: n }, (_, k) => Math.abs(matrix[k * n + k] as number));
  for (let k = 0; k < n; k++) {
    const pivot = matrix[k * n + k] as number;
    if (!(pivot > LOOSE * (own[k] as number))) return k;
    for (let r = k + 1; r < n; r++) {
      const share = (matrix[r * n + k] as number) / pivot;
      if (share === 0) continue;
      for (let c = k; c < n; c++)
        matrix[r * n + c] = (matrix[r * n + c] as number) - share * (matrix[k * n + c] as number);
      right[r] = (right[r] as number) - share * (right[k] as number);
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k] as number;
    for (let c = k + 1; c < n; c++) sum -= (matrix[k * n + c] as number) * (right[c] as number);
    right[k] = sum / (matrix[k * n + k] as number);
    if (!(Math.abs(right[k] as number) < FAR)) return k;
  }
  return undefined;
}

/** Rounds of letting go and holding again. */
const ROUNDS = 24;

type Footed =
  | { footing: Footing; moves: Float64Array }
  | { fails: "tips" | "slides" }
  | { fails: "loose"; unknown: number };

/** The footing that stands under so many newtons: nothing pulls by more than `least`; why none does, where none does. */
export function footingOf(floor: Floor, forces: Float64Array, whole: number): Footed {
  if (floor.supports.some(({ friction }) => friction !== undefined)) return rubbed(floor, forces, whole);
  return pushing(floor, forces, whole);
}

/** The same where nothing slides. */
function pushing(floor: Floor, forces: Float64Array, whole: number): Footed {
  const lifted = new Set<number>();
  const footing: Footing = { lifted, sliding: new Map() };
  const seen = new Set<string>();
  for (let round = 0; round < ROUNDS; round++) {
    const found = movesOf(floor, forces, footing);
    if ("loose" in found)
      return lifted.size > 0 ? { fails: "tips" } : { fails: "loose", unknown: found.loose };
    const { moves } = found;
    if (!changes(floor, forces, { moves, lifted, least: PULLS * whole })) return { footing, moves };
    const state = [...lifted].sort((a, b) => a - b).join();
    if (seen.has(state)) break;
    seen.add(state);
  }
  return { fails: "tips" };
}

/** The same where friction keeps feet. Where it could keep them and no way of sliding is found, they are taken as held. */
function rubbed(floor: Floor, forces: Float64Array, whole: number): Footed {
  const held = movesOf(floor, forces, { lifted: new Set(), sliding: new Map() });
  if ("loose" in held) return { fails: "loose", unknown: held.loose };
  const sum = (way: number) =>
    floor.supports.reduce((all, _, k) => all + (forces[k * SIX + way] as number), 0);
  const most = Math.max(...floor.supports.map(({ friction = 0 }) => friction)) * Math.max(0, -sum(2));
  if (Math.hypot(sum(0), sum(1)) > most + PULLS * whole) return { fails: "slides" };
  const footing = rubbing(floor, forces, { held: held.moves, whole, faint: FAINT });
  const found = footing && movesOf(floor, forces, footing);
  if (!footing || !found || "loose" in found) return pushing(floor, forces, whole);
  const { moves } = found;
  // What holds sliding feet faintly must not be what keeps the frame where it is.
  const far = Math.max(
    0,
    ...[...footing.sliding.keys()].map((k) =>
      Math.hypot(moves[k * SIX] as number, moves[k * SIX + 1] as number),
    ),
  );
  return far * FAINT > MOST_FAINT * whole ? pushing(floor, forces, whole) : { footing, moves };
}

/** Lets go of the support that pulls hardest, holds again those that sink; whether anything changed. */
function changes(
  { stiffness, supports }: Floor,
  forces: Float64Array,
  { moves, lifted, least }: { moves: Float64Array; lifted: Set<number>; least: number },
): boolean {
  const sinking = [...lifted].filter((k) => (moves[k * SIX + 2] as number) < -1e-9);
  const up = (k: number) => resisted(stiffness, moves, k * SIX + 2) - (forces[k * SIX + 2] as number);
  const pulling = [...supports.keys()]
    .filter((k) => supports[k]?.pushes && !lifted.has(k) && up(k) < -least)
    .sort((a, b) => up(a) - up(b));
  for (const k of sinking) lifted.delete(k);
  // The one that pulls hardest first: the others often push again then.
  if (pulling[0] !== undefined) lifted.add(pulling[0]);
  return sinking.length > 0 || pulling.length > 0;
}

/** What the frame asks of a support at an unknown. */
function resisted(stiffness: Float64Array, moves: Float64Array, unknown: number): number {
  let sum = 0;
  for (let c = 0; c < moves.length; c++)
    sum += (stiffness[unknown * moves.length + c] as number) * (moves[c] as number);
  return sum;
}
