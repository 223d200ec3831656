/**
 * How one glue-up is closed: what goes in alone first, along its own tenons, and what must be sprung while the rest closes.
 */
import type { Vec3 } from "../geometry/solid.ts";
import { along, angleBetween, dot, negate, norm, scale } from "../geometry/vec.ts";
import type { Fitting } from "./fitting.ts";

/** A joint that must be sprung to enter, and how. */
export interface Sprung {
  joint: string;
  /** The part whose tenon's end is sprung, by how far past what the joint gives of itself, mm, and unit: to which side, as drawn. */
  part: string;
  by: number;
  towards: Vec3;
}

/** A group that is put into another by itself, along its own tenons. */
export interface Alone {
  parts: string[];
  closes: string[];
  /** Unit: the way it goes, as drawn. */
  direction: Vec3;
}

export interface Closing {
  first: Alone[];
  sprung: Sprung[];
  /** How many pieces come together at once when all that goes alone is in. */
  atOnce: number;
}

/** Less than this is no springing that a hand would feel, mm. */
const NONE = 0.1;

/** Most groups that are tried alone in one closing: nobody glues up a hundred pieces one by one. */
const MOST_TRIED = 60;

/**
 * The closing with the least springing, and of those with the fewest pieces at once: each group goes into a frame made before, or
 * into one of the parts, alone where all its joints with that lie along one line; then the rest closes along the glue-up's own line.
 * `groups` are in the order of that line.
 */
export function closingOf(groups: readonly string[][], joints: readonly Fitting[], direction: Vec3): Closing {
  const groupOf = new Map(groups.flatMap((group, k) => group.map((part) => [part, k] as const)));
  const links = joints.flatMap((joint): Link[] => {
    const [from, to] = [groupOf.get(joint.part) ?? -1, groupOf.get(joint.into) ?? -1];
    return from === to ? [] : [{ joint, from, to, up: dot(joint.direction, direction) > 0 }];
  });
  let best: Closing | undefined;
  for (const host of hostsAmong(groups)) {
    const closing = closingOnto(host, groups, links, direction);
    if (!best || isLess(worth(closing), worth(best))) best = closing;
    if (groups.length === 2) break;
  }
  return best!;
}

/** A joint between two groups, by their places in the order of the line. */
interface Link {
  joint: Fitting;
  from: number;
  to: number;
  /** Whether it goes in along the line rather than against it. */
  up: boolean;
}

/** Those that others may go into: the first, the last, and the largest between them. */
function hostsAmong(groups: readonly string[][]): number[] {
  const last = groups.length - 1;
  const largest = groups.reduce((best, group, k) => (group.length > groups[best]!.length ? k : best), 0);
  return [...new Set([0, last, largest])];
}

export const springing = ({ sprung }: Closing): number => sprung.reduce((sum, { by }) => sum + by, 0);

/** Less springing, else fewer pieces at once. */
export const isLess = (
  a: { sprung: number; pieces: number },
  b: { sprung: number; pieces: number },
): boolean => (Math.abs(a.sprung - b.sprung) > NONE ? a.sprung < b.sprung : a.pieces < b.pieces);

const worth = (closing: Closing) => ({ sprung: springing(closing), pieces: closing.atOnce });

function closingOnto(
  host: number,
  groups: readonly string[][],
  links: readonly Link[],
  direction: Vec3,
): Closing {
  const first: Alone[] = [];
  const linksOf = groups.map((): Link[] => []);
  for (const link of links) for (const end of [link.from, link.to]) linksOf[end]!.push(link);
  /** Which group each is one with by now. */
  const one = groups.map((_, k) => k);
  let left = groups.length;
  let tried = 0;
  const hosts = groups.map((_, k) => k).filter((k) => k === host || groups[k]!.length > 1);
  for (let group = 0; group < groups.length; group++) {
    if (group === host) continue;
    for (const into of hosts) {
      // What comes together at the last is no less than two.
      if (left <= 2 || one[into] === one[group]) continue;
      const own = linksOf[group]!.filter(({ from, to }) => from === into || to === into);
      if (own.length === 0) continue;
      // Alone so far, it has no links but its own.
      const some = one.every((each, k) => k === group || each !== one[group]) ? linksOf[group]! : links;
      const between = some.filter(({ from, to }) => joins(one, from, to, group, into));
      // What it has to do with those that went in before comes together with it, or not at all.
      const line = own.length === between.length ? ownLine(own, group, groups[group]!) : undefined;
      if (!line) continue;
      if (++tried > MOST_TRIED) continue;
      const merged = one.map((each) => (each === one[group] ? one[into]! : each));
      if (!isOpen(merged, links)) continue;
      merged.forEach((each, k) => {
        one[k] = each;
      });
      first.push(line);
      left--;
      break;
    }
  }
  return {
    first,
    sprung: links.flatMap(({ joint, from, to }) =>
      one[from] === one[to] ? [] : (sprungIn(joint, direction) ?? []),
    ),
    atOnce: left,
  };
}

/** Whether a link lies between the wholes that two groups belong to by now. */
const joins = (one: readonly number[], from: number, to: number, a: number, b: number): boolean =>
  (one[from] === one[a] && one[to] === one[b]) || (one[from] === one[b] && one[to] === one[a]);

/** Whether all the rest still closes along the line once some groups are one: nothing left lies between two of them. */
function isOpen(one: readonly number[], links: readonly Link[]): boolean {
  // Arrays by the number of a whole: this is asked for each group of each line that is tried.
  const first = new Int32Array(one.length).fill(-1);
  const next = new Int32Array(links.length);
  const ends = new Int32Array(links.length);
  for (let k = 0; k < links.length; k++) {
    const { from, to, up } = links[k]!;
    const low = one[up ? from : to]!;
    const high = one[up ? to : from]!;
    if (low === high) continue;
    ends[k] = high;
    next[k] = first[low]!;
    first[low] = k;
  }
  const state = new Uint8Array(one.length);
  const isRound = (whole: number): boolean => {
    if (state[whole] !== NEW) return state[whole] === UNDER;
    state[whole] = UNDER;
    for (let k = first[whole]!; k >= 0; k = next[k]!) if (isRound(ends[k]!)) return true;
    state[whole] = DONE;
    return false;
  };
  for (let whole = 0; whole < one.length; whole++) if (isRound(whole)) return false;
  return true;
}

const NEW = 0;
const UNDER = 1;
const DONE = 2;

/** The line along which all of a group's joints with another go together without springing; undefined when there is none. */
function ownLine(links: readonly Link[], group: number, parts: readonly string[]): Alone | undefined {
  const [own] = links;
  if (!own || links.some(({ joint }) => joint.name === "")) return undefined;
  const inward = ({ joint, from }: Link) => (from === group ? joint.direction : negate(joint.direction));
  const line = inward(own);
  const strays = links.some(
    (link) => straysAlong({ ...link.joint, direction: inward(link) }, line) > freeOf(link.joint),
  );
  return strays
    ? undefined
    : { parts: [...parts], closes: links.map(({ joint }) => joint.name), direction: line };
}

const freeOf = ({ slack, spring = 0 }: Fitting): number => slack - spring;

/** How far a tenon strays over its length when it is moved along a line, mm; its whole length when it is moved across or back. */
export function straysAlong({ direction, long, free = 0 }: Fitting, line: Vec3): number {
  const cosine = dot(direction, line);
  if (free > 0 && cosine > 0) return long * Math.sin(Math.max(0, angleBetween(direction, line) - free));
  return cosine <= 0 ? long : long * Math.sqrt(Math.max(0, 1 - cosine * cosine));
}

/** What a tenon wants of springing while its parts close along a line, whichever way they go. */
function sprungIn(joint: Fitting, line: Vec3): Sprung | undefined {
  const way = dot(joint.direction, line) < 0 ? negate(line) : line;
  const strays = straysAlong(joint, way);
  const by = strays - freeOf(joint);
  if (by <= NONE) return undefined;
  // When its tip comes to the mortise it still lies beside it, as far as the line strays over its length.
  const off = along(joint.direction, way, -dot(joint.direction, way));
  const size = norm(off);
  return { joint: joint.name, part: joint.part, by, towards: size > 0 ? scale(off, -1 / size) : off };
}
