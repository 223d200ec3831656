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
  const m = supports.length * 6;
  const feet = supports.length;
  const n = m + 3 * feet;
  // About as stiff as a foot is in its frame: residues of movement and of force then weigh alike.
  const stiff = supports.map((_, k) =>
    Math.max(1, Math.abs(stiffness[(k * 6 + 2) * m + k * 6 + 2] as number)),
  );
  const x = new Float64Array(n);
  x.set(held);
  for (let k = 0; k < feet; k++)
    for (let way = 0; way < 3; way++) {
      let sum = -(forces[k * 6 + way] as number);
      for (let c = 0; c < m; c++) sum += (stiffness[(k * 6 + way) * m + c] as number) * (held[c] as number);
      x[m + 3 * k + way] = sum;
    }
  for (let round = 0; round < ROUNDS; round++) {
    const J = new Float64Array(n * n);
    const rest = new Float64Array(n);
    const put = (row: number, column: number, value: number) => {
      J[row * n + column] = (J[row * n + column] as number) + value;
    };
    for (let r = 0; r < m; r++) {
      let sum = -(forces[r] as number);
      for (let c = 0; c < m; c++) {
        const k = (stiffness[r * m + c] as number) + (r === c && r % 6 < 2 ? faint : 0);
        J[r * n + c] = k;
        sum += k * (x[c] as number);
      }
      const [k, way] = [Math.floor(r / 6), r % 6];
      if (way < 3) {
        sum -= x[m + 3 * k + way] as number;
        put(r, m + 3 * k + way, -1);
      }
      rest[r] = sum;
    }
    for (const [k, { friction = 0 }] of supports.entries()) {
      const [u, at, s] = [k * 6, m + 3 * k, stiff[k] as number];
      const [rx, ry, rz] = [x[at] as number, x[at + 1] as number, x[at + 2] as number];
      const tried = rz - s * (x[u + 2] as number);
      const row = (way: number) => at + way;
      if (tried <= 0) {
        for (const way of [0, 1, 2]) {
          rest[row(way)] = x[at + way] as number;
          put(row(way), at + way, 1);
        }
        continue;
      }
      rest[row(2)] = s * (x[u + 2] as number);
      put(row(2), u + 2, s);
      const [dx, dy] = [rx - s * (x[u] as number), ry - s * (x[u + 1] as number)];
      const size = Math.hypot(dx, dy);
      const most = friction * tried;
      if (size <= most) {
        for (const way of [0, 1]) {
          rest[row(way)] = s * (x[u + way] as number);
          put(row(way), u + way, s);
        }
        continue;
      }
      const [a, b] = [dx / size, dy / size];
      const share = most / size;
      for (const [way, e] of [
        [0, a],
        [1, b],
      ] as const) {
        rest[row(way)] = (x[at + way] as number) - most * e;
        put(row(way), at + way, 1);
        put(row(way), at + 2, -friction * e);
        put(row(way), u + 2, friction * e * s);
        for (const [other, f] of [
          [0, a],
          [1, b],
        ] as const) {
          const turn = share * ((way === other ? 1 : 0) - e * f);
          put(row(way), at + other, -turn);
          put(row(way), u + other, turn * s);
        }
      }
    }
    const left = rest.reduce(
      (most, value, row) => (row % 6 > 2 && row < m ? most : Math.max(most, Math.abs(value))),
      0,
    );
    if (round > 0 && left <= NEAR * whole) return footingIn(x, supports, stiff);
    if (!solved(J, rest)) return undefined;
    // Feet that hold and slide in turns are stopped half way between.
    const step = round > WHOLE && round % 3 > 0 ? 0.5 : 1;
    for (let k = 0; k < n; k++) x[k] = (x[k] as number) - step * (rest[k] as number);
  }
  return undefined;
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
