/**
 * Exact mirroring of what moves in from a seat's outline: corners that run together do so in another order left and right, which moves the
 * two sides a little apart. The left side is kept, the right one is made of it.
 */
import type { Spot } from "./edge.ts";

type Corner = Strip["corners"][number];

/** Corners nearer to the middle line than this are on it, mm. */
const ON = 1e-7;

/** Strips with the right side made of the left; one across the middle is cut there. */
export const mirroredStrips = (strips: readonly Strip[]): Strip[] =>
  strips.flatMap(({ level, corners }) => {
    const [first, ...rest] = leftOf(corners);
    if (!first || rest.length < 2 || [first, ...rest].every(({ at: [x] }) => x <= ON)) return [];
    const right = [first, ...[...rest].reverse()].map(({ at, moved }): Corner => ({ at: turned(at), moved }));
    return [
      { level, corners: [first, ...rest] },
      { level, corners: right },
    ];
  });

/** Rings with the right side made of the left; one across the middle stays one. */
export const mirroredRings = (rings: readonly (readonly Spot[])[]): Spot[][] =>
  rings.flatMap((ring) => {
    if (ring.every(([x]) => x <= ON)) return [];
    if (ring.every(([x]) => x >= -ON)) return [[...ring], ring.map(turned).reverse()];
    // From where it leaves the middle line on the left.
    const first = ring.findIndex(([x], k) => x > ON && ring.at(k - 1)![0] <= ON);
    const from = [...ring.slice(first), ...ring.slice(0, first)];
    const begin = Math.abs(from.at(-1)![0]) <= ON ? [middle(from.pop()!)] : [];
    const left = from.filter(([x]) => x >= -ON).map((at) => (at[0] > ON ? at : middle(at)));
    const right = left.filter(([x]) => x > ON).map(turned);
    return [[...left, ...right.reverse(), ...begin]];
  });

const middle = ([, s]: Spot): Spot => [0, s];
const turned = ([x, s]: Spot): Spot => [-x, s];

/** What of a ring is left of the middle line. */
const leftOf = (ring: readonly Corner[]): Corner[] =>
  ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length]!;
    const kept = a.at[0] >= -ON ? [a] : [];
    if (Math.min(a.at[0], b.at[0]) > -ON || Math.max(a.at[0], b.at[0]) < ON) return kept;
    const share = a.at[0] / (a.at[0] - b.at[0]);
    const part = (from: number, to: number) => from + (to - from) * share;
    return [...kept, { at: [0, part(a.at[1], b.at[1])], moved: part(a.moved, b.moved) }];
  });

/** One edge of a ring that moves inward: where it has been, from one distance to the next. */
export interface Strip {
  /** Which of the levels it begins at. */
  level: number;
  /** Its corners anticlockwise, each with its distance from where the ring began. */
  corners: { at: Spot; moved: number }[];
}
