/**
 * A chair put together from its sheets: each part is moved until tenons lie in their mortises with their shoulders on the faces, as well as
 * all of them can at once, by least squares solved with ml-matrix 6.12 (MIT).
 */
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { across, direction, inner, minus, outer, plus, times, type V } from "../solids/vectors.ts";

/** Places and ways of two parts that come together, each in the chair as the part stands before it is moved. */
export interface Meeting {
  joint: string;
  one: number;
  other: number;
  at: [V, V];
  /** Ways that come to look the same, and how far off each other a turn would bring what they stand for, mm. */
  ways: { of: [V, V]; lever: number }[];
}

/** How a part is moved: turned about the chair's origin, then shifted. */
export interface Moved {
  turn: [V, V, V];
  shift: V;
}

const still = (): Moved => ({
  turn: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  shift: [0, 0, 0],
});

const turned = ({ turn: [a, b, c] }: Moved, p: V): V => plus(plus(times(a, p[0]), b, p[1]), c, p[2]);
export const movedTo = (moved: Moved, p: V): V => plus(turned(moved, p), moved.shift);

/** Turns in a chair move what they turn by about this, so that they weigh as shifts do; mm. */
const REACH = 200;
/** Holds, in each round, what no joint does, such as a rung's turn about itself; next to a joint it is little. */
const HOLD = 1e-3;
const ROUNDS = 6;

/** How each part is moved, given the places on each that tell where it is: all together they come to stand as near to those as they can. */
export function putTogether(places: readonly V[][], meetings: readonly Meeting[]): Moved[] {
  const count = places.length;
  let moved = places.map(still);
  for (let round = 0; round < ROUNDS; round++) {
    const normal = Matrix.eye(6 * count, 6 * count).mul(HOLD);
    const right = Matrix.zeros(6 * count, 1);
    // One equation: what a shift and a turn of either part do to a difference, and the difference.
    const add = (rows: [number, V, V][], off: number) => {
      const cells = rows.flatMap(([part, shift, turn]) =>
        [...shift, ...times(turn, 1 / REACH)].map((value, k) => [6 * part + k, value] as const),
      );
      for (const [i, a] of cells) {
        right.set(i, 0, right.get(i, 0) - a * off);
        for (const [j, b] of cells) normal.set(i, j, normal.get(i, j) + a * b);
      }
    };
    for (const { one, other, at, ways } of meetings) {
      const [p, q] = [movedTo(moved[one]!, at[0]), movedTo(moved[other]!, at[1])];
      for (const axis of AXES) {
        const of = (part: number, r: V, sign: number): [number, V, V] => [
          part,
          times(axis, sign),
          times(outer(r, axis), sign),
        ];
        add([of(one, p, 1), of(other, q, -1)], inner(minus(p, q), axis));
        for (const way of ways) {
          const [u, w] = [turned(moved[one]!, way.of[0]), turned(moved[other]!, way.of[1])];
          const turns = (part: number, r: V, sign: number): [number, V, V] => [
            part,
            [0, 0, 0],
            times(outer(r, axis), sign * way.lever),
          ];
          add([turns(one, u, 1), turns(other, w, -1)], way.lever * inner(minus(u, w), axis));
        }
      }
    }
    const step = new CholeskyDecomposition(normal).solve(right).to1DArray();
    moved = moved.map((each, part) => {
      const cell = (k: number) => step[6 * part + k]!;
      return movedOn(each, times([cell(3), cell(4), cell(5)], 1 / REACH), [cell(0), cell(1), cell(2)]);
    });
    moved = settled(moved, places);
  }
  return moved;
}

/** Moved on by a small turn about the chair's origin and a shift. */
function movedOn({ turn: [a, b], shift }: Moved, turn: V, by: V): Moved {
  const small = (p: V): V => plus(plus(p, outer(turn, p)), outer(turn, outer(turn, p)), 1 / 2);
  const first = direction(small(a));
  const second = direction(across(small(b), first));
  return { turn: [first, second, outer(first, second)], shift: plus(small(shift), by) };
}

/** The whole chair moved as one, so that all places are as near to where they should be as they can. */
function settled(moved: readonly Moved[], places: readonly V[][]): Moved[] {
  const pairs = places.flatMap((some, part) => some.map((p) => ({ p, now: movedTo(moved[part]!, p) })));
  const mean = (some: V[]): V =>
    times(
      some.reduce((sum, p) => plus(sum, p), [0, 0, 0]),
      1 / some.length,
    );
  const middle = mean(pairs.map(({ now }) => now));
  const off = minus(mean(pairs.map(({ p }) => p)), middle);
  const inertia = Matrix.eye(3, 3).mul(1e-9);
  const moment = Matrix.zeros(3, 1);
  for (const { p, now } of pairs) {
    const r = minus(now, middle);
    const turns = outer(r, minus(minus(p, off), now));
    for (const i of [0, 1, 2] as const) {
      moment.set(i, 0, moment.get(i, 0) + turns[i]);
      for (const j of [0, 1, 2] as const)
        inertia.set(i, j, inertia.get(i, j) + (i === j ? inner(r, r) : 0) - r[i] * r[j]);
    }
  }
  const turn = new CholeskyDecomposition(inertia).solve(moment).to1DArray() as V;
  return moved.map((each) => movedOn(each, turn, plus(off, outer(turn, middle), -1)));
}

const AXES: V[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** How far apart the places of a meeting lie once its parts are moved, mm: the places, and by their ways. */
export function gapOf({ one, other, at, ways }: Meeting, moved: readonly Moved[]): number {
  const apart = (p: V, q: V) => Math.hypot(...minus(p, q));
  return Math.max(
    apart(movedTo(moved[one]!, at[0]), movedTo(moved[other]!, at[1])),
    ...ways.map(({ of: [u, w], lever }) => lever * apart(turned(moved[one]!, u), turned(moved[other]!, w))),
  );
}
