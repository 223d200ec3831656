/**
 * Feet that the floor pushes and rubs against (Coulomb's law with contact from one side), by Newton's method on the law written as one
 * equation a foot (Alart and Curnier's form, of any text on contact in structural mechanics). From held feet it takes a few rounds.
 */
import type { Support } from "./frame.ts";

/** Rounds at most, how many of them go the whole way, and how near the law has to be met, as a share of the loads. */
const ROUNDS = 80;
const WHOLE = 8;
const NEAR = 1e-9;

/** What each foot ends as: let go, or sliding some level way; those that hold are in neither. */
export interface Rubbing {
  lifted: Set<number>;
  sliding: Map<number, readonly [number, number]>;
}

/**
 * How feet stand under forces on them; nothing where no way of standing is found.
 *
 * @param stiffness of the kept nodes, row by row, six unknowns each, in the order of `supports`
 * @param held how they move while all are held
 * @param whole the sum of the loads, which residues are measured by
 * @param faint what holds every unknown level by a hair, so that feet that all slide stay where they are
 */
export function rubbing(
  { stiffness, supports }: { stiffness: Float64Array; supports: readonly Support[] },
  forces: Float64Array,
  { held, whole, faint }: { held: Float64Array; whole: number; faint: number },
): Rubbing | undefined {
  const system = { stiffness, supports, forces, faint, stiff: stiffnessOf(stiffness, supports) };
  const m = supports.length * 6;
  const x = begun(system, held);
  for (let round = 0; round < ROUNDS; round++) {
    const { J, rest } = linearised(system, x);
    const left = rest.reduce(
      (most, value, row) => (row % 6 > 2 && row < m ? most : Math.max(most, Math.abs(value))),
      0,
    );
    if (round > 0 && left <= NEAR * whole) return footingIn(x, supports, system.stiff);
    if (!solved(J, rest)) return undefined;
    // Feet that hold and slide in turns are stopped half way between.
    const step = round > WHOLE && round % 3 > 0 ? 0.5 : 1;
    for (let k = 0; k < x.length; k++) x[k] = (x[k] as number) - step * (rest[k] as number);
  }
  return undefined;
}

interface System {
  stiffness: Float64Array;
  supports: readonly Support[];
  forces: Float64Array;
  faint: number;
  /** About as stiff as each foot is in its frame: residues of movement and of force then weigh alike. */
  stiff: readonly number[];
}

function stiffnessOf(stiffness: Float64Array, supports: readonly Support[]): number[] {
  const m = supports.length * 6;
  return supports.map((_, k) => Math.max(1, Math.abs(stiffness[(k * 6 + 2) * m + k * 6 + 2] as number)));
}

/** Movements of the held feet, then the reactions, three a foot, that go with them. */
function begun({ stiffness, supports, forces }: System, held: Float64Array): Float64Array {
  const m = supports.length * 6;
  const x = new Float64Array(m + 3 * supports.length);
  x.set(held);
  for (let k = 0; k < supports.length; k++)
    for (let way = 0; way < 3; way++) {
      let sum = -(forces[k * 6 + way] as number);
      for (let c = 0; c < m; c++) sum += (stiffness[(k * 6 + way) * m + c] as number) * (held[c] as number);
      x[m + 3 * k + way] = sum;
    }
  return x;
}

/** How far the equations are from being met at `x`, and how they change with it, row by row. */
function linearised(system: System, x: Float64Array): { J: Float64Array; rest: Float64Array } {
  const n = x.length;
  const rows: Rows = { x, J: new Float64Array(n * n), rest: new Float64Array(n) };
  balance(system, rows);
  for (const [k, { friction = 0 }] of system.supports.entries()) footLaw(system, rows, k, friction);
  return rows;
}

interface Rows {
  x: Float64Array;
  J: Float64Array;
  rest: Float64Array;
}

function put({ J, rest }: Rows, row: number, column: number, value: number): void {
  J[row * rest.length + column] = (J[row * rest.length + column] as number) + value;
}

/** Forces of the frame against loads and reactions. */
function balance({ stiffness, supports, forces, faint }: System, rows: Rows): void {
  const { x, J, rest } = rows;
  const m = supports.length * 6;
  for (let r = 0; r < m; r++) {
    let sum = -(forces[r] as number);
    for (let c = 0; c < m; c++) {
      const k = (stiffness[r * m + c] as number) + (r === c && r % 6 < 2 ? faint : 0);
      J[r * rest.length + c] = k;
      sum += k * (x[c] as number);
    }
    const [k, way] = [Math.floor(r / 6), r % 6];
    if (way < 3) {
      sum -= x[m + 3 * k + way] as number;
      put(rows, r, m + 3 * k + way, -1);
    }
    rest[r] = sum;
  }
}

/** One foot: let go, held, or sliding with as much as friction gives. */
function footLaw({ supports, stiff }: System, rows: Rows, k: number, friction: number): void {
  const { x, rest } = rows;
  const [u, at, s] = [k * 6, supports.length * 6 + 3 * k, stiff[k] as number];
  const [rx, ry, rz] = [x[at] as number, x[at + 1] as number, x[at + 2] as number];
  const still = (way: number) => {
    rest[at + way] = s * (x[u + way] as number);
    put(rows, at + way, u + way, s);
  };
  const pressed = rz - s * (x[u + 2] as number);
  if (pressed <= 0) {
    for (const way of [0, 1, 2]) {
      rest[at + way] = x[at + way] as number;
      put(rows, at + way, at + way, 1);
    }
    return;
  }
  still(2);
  const [dx, dy] = [rx - s * (x[u] as number), ry - s * (x[u + 1] as number)];
  const size = Math.hypot(dx, dy);
  if (size <= friction * pressed) {
    still(0);
    still(1);
    return;
  }
  const along = [dx / size, dy / size] as const;
  const share = (friction * pressed) / size;
  for (const way of [0, 1] as const) {
    const e = along[way];
    rest[at + way] = (x[at + way] as number) - friction * pressed * e;
    put(rows, at + way, at + way, 1);
    put(rows, at + way, at + 2, -friction * e);
    put(rows, at + way, u + 2, friction * e * s);
    for (const other of [0, 1] as const) {
      const turn = share * ((way === other ? 1 : 0) - e * along[other]);
      put(rows, at + way, at + other, -turn);
      put(rows, at + way, u + other, turn * s);
    }
  }
}

function footingIn(x: Float64Array, supports: readonly Support[], stiff: readonly number[]): Rubbing {
  const m = supports.length * 6;
  const lifted = new Set<number>();
  const sliding = new Map<number, readonly [number, number]>();
  for (const [k, { friction = 0 }] of supports.entries()) {
    const [u, at, s] = [k * 6, m + 3 * k, stiff[k] as number];
    const tried = (x[at + 2] as number) - s * (x[u + 2] as number);
    const [dx, dy] = [
      (x[at] as number) - s * (x[u] as number),
      (x[at + 1] as number) - s * (x[u + 1] as number),
    ];
    const size = Math.hypot(dx, dy);
    if (tried <= 0) lifted.add(k);
    else if (size > friction * tried) sliding.set(k, [-dx / size, -dy / size]);
  }
  return { lifted, sliding };
}

/** Solves with exchanges of rows; whether it could be. */
function solved(J: Float64Array, right: Float64Array): boolean {
  const n = right.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let r = k + 1; r < n; r++)
      if (Math.abs(J[r * n + k] as number) > Math.abs(J[best * n + k] as number)) best = r;
    if (!(Math.abs(J[best * n + k] as number) > 0)) return false;
    if (best !== k) {
      for (let c = k; c < n; c++) {
        const was = J[k * n + c] as number;
        J[k * n + c] = J[best * n + c] as number;
        J[best * n + c] = was;
      }
      const was = right[k] as number;
      right[k] = right[best] as number;
      right[best] = was;
    }
    for (let r = k + 1; r < n; r++) {
      const share = (J[r * n + k] as number) / (J[k * n + k] as number);
      if (share === 0) continue;
      for (let c = k + 1; c < n; c++)
        J[r * n + c] = (J[r * n + c] as number) - share * (J[k * n + c] as number);
      right[r] = (right[r] as number) - share * (right[k] as number);
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k] as number;
    for (let c = k + 1; c < n; c++) sum -= (J[k * n + c] as number) * (right[c] as number);
    right[k] = sum / (J[k * n + k] as number);
  }
  return right.every(Number.isFinite);
}
