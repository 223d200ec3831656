/**
 * Exact mirroring of what moves in from a seat's outline: corners that run together do so in another order left and right, which moves the
 * two sides a little apart. The left side is kept, the right one is made of it.
 */
import type { Spot } from "./edge.ts";
import type { Strip } from "./inset.ts";

type Corner = Strip["corners"][number];

/** Corners nearer to the middle line than this are on it, mm. */
const ON = 1e-7;
/** A strip across the middle is kept whole when its two sides differ by less than this, mm. */
const ALIKE = 1e-6;

/** Strips with the right side made of the left: one across the middle whole where it lies in one plane, else as two halves. */
export const mirroredStrips = (strips: readonly Strip[]): Strip[] =>
  strips.flatMap(({ level, corners }) =>
    mirroredParts(corners).map((part): Strip => ({ level, corners: part })),
  );

function mirroredParts(corners: Corner[]): Corner[][] {
  if (corners.every(({ at: [x] }) => x <= ON)) return [];
  if (corners.every(({ at: [x] }) => x >= -ON)) return [corners, mirrored(corners)];
  const own = leftOf(corners);
  // Of four corners two and two mirrored, which always lie in one plane.
  const pairs = corners.filter(({ at: [x] }) => x > ON);
  const whole =
    corners.length === 4 &&
    pairs.length === 2 &&
    pairs.every(({ at: [x, s], moved }) =>
      corners.some(
        ({ at: [u, v], moved: other }) =>
          Math.abs(u + x) < ALIKE && Math.abs(v - s) < ALIKE && Math.abs(other - moved) < ALIKE,
      ),
    );
  if (!whole) return own.length < 3 ? [] : [own, mirrored(own)];
  const [a, b] = consecutive(corners, pairs);
  return [[a, b, turned(b), turned(a)]];
}

/** Rings with the right side made of the left. */
export const mirroredRings = (rings: readonly (readonly Spot[])[]): Spot[][] =>
  rings.flatMap((ring) => {
    const corners = ring.map((at): Corner => ({ at, moved: 0 }));
    if (ring.every(([x]) => x <= ON)) return [];
    if (ring.every(([x]) => x >= -ON)) return [corners, mirrored(corners)].map(spots);
    // From where it leaves the middle line to where it comes back to it.
    const own = leftOf(corners).filter(({ at: [x] }) => x > ON);
    const first = own.findIndex(
      (corner, k) => !follows(corners, own[(k + own.length - 1) % own.length]!, corner),
    );
    const half = [...own.slice(Math.max(0, first)), ...own.slice(0, Math.max(0, first))];
    const middle = corners.filter(({ at: [x] }) => Math.abs(x) <= ON);
    const last = half[half.length - 1];
    const end = middle.find((corner) => last && follows(corners, last, corner));
    const begin = middle.find((corner) => half[0] && follows(corners, corner, half[0]));
    const still = (corner: Corner | undefined) =>
      corner ? [{ ...corner, at: [0, corner.at[1]] as Spot }] : [];
    return [spots([...still(begin), ...half, ...still(end), ...half.map(turned).reverse()])];
  });

const spots = (corners: readonly Corner[]): Spot[] => corners.map(({ at }) => at);

/** Whether a corner stands right after another in a ring. */
const follows = (ring: readonly Corner[], before: Corner, corner: Corner): boolean =>
  ring[(ring.indexOf(before) + 1) % ring.length] === corner;

const consecutive = (ring: readonly Corner[], [a, b]: readonly Corner[]): [Corner, Corner] =>
  follows(ring, a!, b!) ? [a!, b!] : [b!, a!];

const turned = ({ at: [x, s], moved }: Corner): Corner => ({ at: [-x, s], moved });

/** A ring in the mirror, anticlockwise again, from the same corner on. */
const mirrored = ([first, ...rest]: readonly Corner[]): Corner[] =>
  first ? [first, ...rest.reverse()].map(turned) : [];

/** What of a ring is left of the middle line. */
function leftOf(ring: readonly Corner[]): Corner[] {
  return ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length]!;
    const kept = a.at[0] >= -ON ? [a] : [];
    if (Math.min(a.at[0], b.at[0]) > -ON || Math.max(a.at[0], b.at[0]) < ON) return kept;
    const share = a.at[0] / (a.at[0] - b.at[0]);
    const s = a.at[1] + (b.at[1] - a.at[1]) * share;
    return [...kept, { at: [0, s], moved: a.moved + (b.moved - a.moved) * share }];
  });
}
