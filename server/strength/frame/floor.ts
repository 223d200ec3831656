/**
 * What the supports of a frame do under some loads: those that only push let go where they would have to pull, those that friction keeps
 * slide where it is not enough. All else of the frame has been taken out before (`factors.ts`), so each try is a small matter.
 */
import type { Support } from "./frame.ts";

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

/** Rounds of letting go, sliding and holding again. */
const ROUNDS = 60;
/** A sliding foot's way is found when it turns by no more than this from one round to the next. */
const STEADY = 1e-6;

/** The footing that stands: nothing pulls by more than `least`; why none does, where none does. */
export function footingOf(
  floor: Floor,
  forces: Float64Array,
  least: number,
):
  | { footing: Footing; moves: Float64Array }
  | { fails: "tips" | "slides" }
  | { fails: "loose"; unknown: number } {
  const lifted = new Set<number>();
  const sliding = new Map<number, Sliding>();
  const seen = new Set<string>();
  for (let round = 0; round < ROUNDS; round++) {
    const found = movesOf(floor, forces, { lifted, sliding });
    if ("loose" in found) {
      if (lifted.size > 0) return { fails: "tips" };
      return sliding.size > 0 ? { fails: "slides" } : { fails: "loose", unknown: found.loose };
    }
    const { moves } = found;
    const pushed = (unknown: number): number =>
      resisted(floor.stiffness, moves, unknown) - (forces[unknown] as number);
    const changed =
      liftsChange(floor, { moves, pushed, lifted, sliding, least }) ||
      slidesChange(floor, { moves, pushed, lifted, sliding, least });
    if (changed === false) {
      // What holds sliding feet faintly must not be what keeps the frame where it is.
      const faint = [...sliding.keys()].some(
        (k) =>
          Math.hypot(moves[k * SIX] as number, moves[k * SIX + 1] as number) * FAINT >
          Math.max(least * 1e4, 1e-3),
      );
      return faint ? { fails: "slides" } : { footing: { lifted, sliding }, moves };
    }
    if (changed === "turned") continue;
    const state = `${[...lifted].sort().join()};${[...sliding.keys()].sort().join()}`;
    if (seen.has(state)) break;
    seen.add(state);
  }
  return { fails: lifted.size > 0 || sliding.size === 0 ? "tips" : "slides" };
}

interface Round {
  moves: Float64Array;
  /** What the support pushes with at an unknown. */
  pushed: (unknown: number) => number;
  lifted: Set<number>;
  sliding: Map<number, Sliding>;
  least: number;
}

/** Lets go of the support that pulls hardest, holds again those that sink; whether anything changed. */
function liftsChange({ supports }: Floor, { moves, pushed, lifted, sliding, least }: Round): boolean {
  const sinking = [...lifted].filter((k) => (moves[k * SIX + 2] as number) < -1e-9);
  for (const k of sinking) lifted.delete(k);
  let worst = -1;
  for (const k of supports.keys())
    if (!lifted.has(k) && !sinking.includes(k)) {
      const up = pushed(k * SIX + 2);
      if (up < -least && (worst < 0 || up < pushed(worst * SIX + 2))) worst = k;
    }
  // The one that pulls hardest first: the others often push again then.
  if (worst >= 0) {
    lifted.add(worst);
    sliding.delete(worst);
  }
  return sinking.length > 0 || worst >= 0;
}

/** Twin feet whose shares differ by less than this part slide together. */
const TWIN = 1e-6;

/**
 * Lets the feet slide that friction keeps least, where it keeps them too little, and keeps those that would go backwards; whether anything
 * changed, or only a way turned. Not all at once: when one gives, the others have less to hold against.
 */
function slidesChange(
  { supports }: Floor,
  { moves, pushed, lifted, sliding, least }: Round,
): boolean | "turned" {
  let kept = false;
  let turned = false;
  const over: { k: number; by: number; way: Sliding }[] = [];
  for (const [k, { friction }] of supports.entries()) {
    if (friction === undefined || lifted.has(k)) continue;
    const goes = sliding.get(k);
    if (goes) {
      const [x, y] = [moves[k * SIX] as number, moves[k * SIX + 1] as number];
      if (x * goes[0] + y * goes[1] < 0) kept = sliding.delete(k);
      else {
        const way = wayOf(x, y, goes);
        if (Math.hypot(way[0] - goes[0], way[1] - goes[1]) > STEADY) turned = true;
        sliding.set(k, way);
      }
    } else {
      const [x, y] = [pushed(k * SIX), pushed(k * SIX + 1)];
      const most = Math.max(0, friction * pushed(k * SIX + 2)) + least;
      const level = Math.hypot(x, y);
      if (level > most) over.push({ k, by: level / most, way: [-x / level, -y / level] });
    }
  }
  if (kept) return true;
  if (turned) return "turned";
  const worst = Math.max(...over.map(({ by }) => by));
  for (const { k, by, way } of over) if (by > worst * (1 - TWIN)) sliding.set(k, way);
  return over.length > 0;
}

/** Half way from the way it went to the one it goes now, so that two ways do not take turns. */
function wayOf(x: number, y: number, [a, b]: Sliding): Sliding {
  const far = Math.hypot(x, y);
  if (far < 1e-12) return [a, b];
  const [u, v] = [a + x / far, b + y / far];
  const size = Math.hypot(u, v);
  return size > 0 ? [u / size, v / size] : [x / far, y / far];
}

/** What the frame asks of a support at an unknown. */
function resisted(stiffness: Float64Array, moves: Float64Array, unknown: number): number {
  let sum = 0;
  for (let c = 0; c < moves.length; c++)
    sum += (stiffness[unknown * moves.length + c] as number) * (moves[c] as number);
  return sum;
}
