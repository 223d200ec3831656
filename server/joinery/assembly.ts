import { finish, type Steps } from "../../grammar/steps.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { add, angleBetween, dot, negate, unit } from "../geometry/vec.ts";
import { type Closing, closingOf, isLess, springing, straysAlong } from "./closing.ts";
import { drawnParting } from "./drawn-legs.ts";
import type { Fitting, Parting } from "./fitting.ts";

/** One glue-up: groups put together by moving along one line, closing the joints between them. */
export interface GlueUp {
  /** The parts that are one when it is done, in the order given. */
  parts: string[];
  /** What is brought together: single parts and what earlier glue-ups made, in order along the line. */
  groups: string[][];
  /** Unit: the line they are brought together along. */
  direction: Vec3;
  /** Names of the joints it closes. */
  closes: string[];
  /** What goes in alone first, and what must be sprung. */
  closing: Closing;
}

/** Joints that forbid every order among the parts of one knot. */
export interface Locked {
  parts: string[];
  joints: LockedJoint[];
}

export interface LockedJoint {
  name: string;
  /** Between the tenon and the best line along which the others could close, radians. */
  angle: number;
  /** How far it strays over its length, mm; it has `slack`. */
  strays: number;
  slack: number;
}

export interface Assembly {
  /** In the order to do them; the last makes the whole. */
  glueUps: GlueUp[];
  /** Empty when it can be put together. */
  locked: Locked[];
}

/** Two directions nearer than a hundredth of a degree are one. */
const sameCosine = Math.cos((0.01 * Math.PI) / 180);

/**
 * The order in which the parts go together with the least springing in all, then with the fewest pieces at once; found by taking the
 * whole apart.
 *
 * A group comes away along a line when every joint that holds it lies along that line within its slack: joints that do not
 * bind their parts together for that line, those that do let them part one way. What can part, parts; the strongly
 * connected knots stay and are taken apart in their turn along other lines. Taking something away never makes the rest
 * harder to take apart, so whatever line is taken the whole comes apart in the end; what is left of each is worked out once.
 */
export const assemblyOf = (parts: readonly string[], fittings: readonly Fitting[]): Assembly =>
  finish(assemblySteps(parts, fittings));

/** The same, resting after each line that is tried. */
export function* assemblySteps(parts: readonly string[], fittings: readonly Fitting[]): Steps<Assembly> {
  const known = new Map<string, Apart>();
  const pieces = yield* eachApart(connected(parts, fittings), fittings, known);
  return {
    glueUps: pieces.flatMap((piece) => glueUpsOf(piece)),
    locked: pieces.flatMap((piece) => lockedOf(piece)),
  };
}

/**
 * What forbids every order, as `assemblySteps` finds it. Where the parts come away from each other along the first line that lets any go there is
 * an order, and the best is not searched for.
 */
export function* lockedSteps(
  parts: readonly string[],
  fittings: readonly Fitting[],
): Steps<readonly Locked[]> {
  const waiting = connected(parts, fittings);
  for (let whole = waiting.pop(); whole; whole = waiting.pop()) {
    if (whole.length < 2) continue;
    const groups = firstParting(whole, fittings);
    if (!groups) return (yield* assemblySteps(parts, fittings)).locked;
    waiting.push(...groups);
    yield;
  }
  return [];
}

/** What comes away first of some parts that hang together; nothing where no line parts them. */
function firstParting(whole: readonly string[], fittings: readonly Fitting[]): string[][] | undefined {
  const joints = jointsAmong(whole, fittings);
  for (const some of kindsOfLine) {
    for (const direction of some(joints).slice(0, mostLines(joints))) {
      const groups = partAlong(whole, joints, direction);
      if (groups.length > 1) return groups;
    }
  }
  return drawnParting(whole, joints)?.groups;
}

/** Some parts taken apart: the last glue-up with what it brings together, or what forbids one. */
interface Apart {
  glueUp?: GlueUp;
  groups: Apart[];
  locked?: Locked;
  /** Springing in all of it, mm; and how many pieces more than two come together at once, in all. */
  sprung: number;
  pieces: number;
}

const glueUpsOf = ({ glueUp, groups }: Apart): GlueUp[] => [
  ...groups.flatMap(glueUpsOf),
  ...(glueUp ? [glueUp] : []),
];
const lockedOf = ({ locked, groups }: Apart): Locked[] => [
  ...(locked ? [locked] : []),
  ...groups.flatMap(lockedOf),
];

/** The springing of a locked knot: more than of any order, mm. */
const LOCKED = 1e6;
/** Odder lines that are tried when a plain one springs something; fewer where each is a matter of hundreds of joints. */
const MOST_LINES = 16;
const MOST_LOOKED_AT = 1600;
/** Most lines of joints that are paired to find those between two of them. */
const MOST_PAIRED = 40;

/**
 * The best way of taking some parts apart. Of lines that are alike the first is taken: frames across the chair stay together longest, then
 * side frames; odder lines are tried only where these spring something.
 */
function* takenApart(
  whole: readonly string[],
  fittings: readonly Fitting[],
  known: Map<string, Apart>,
): Steps<Apart> {
  if (whole.length < 2) return { groups: [], sprung: 0, pieces: 0 };
  const key = whole.join(" ");
  const before = known.get(key);
  if (before) return before;
  const joints = jointsAmong(whole, fittings);
  let best: Apart | undefined;
  for (const some of kindsOfLine) {
    if (best?.sprung === 0) break;
    for (const direction of some(joints).slice(0, mostLines(joints))) {
      if (best?.sprung === 0 && best.pieces === 0) break;
      const groups = partAlong(whole, joints, direction);
      if (groups.length < 2) continue;
      yield;
      const closing = closingOf(groups, joints, direction);
      yield;
      const apart = yield* eachApart(groups, fittings, known);
      const sprung = apart.reduce((sum, each) => sum + each.sprung, springing(closing));
      const pieces = apart.reduce((sum, each) => sum + each.pieces, closing.atOnce - 2);
      if (best && !isLess({ sprung, pieces }, best)) continue;
      const closes = closedBetween(groups, joints);
      best = {
        glueUp: { parts: [...whole], groups, direction, closing, closes },
        groups: apart,
        sprung,
        pieces,
      };
    }
  }
  if (!best) {
    const drawn = drawnParting(whole, joints);
    if (drawn) best = drawnApart(whole, joints, drawn, yield* eachApart(drawn.groups, fittings, known));
  }
  best ??= { groups: [], locked: lockedBy(whole, joints), sprung: LOCKED, pieces: 0 };
  known.set(key, best);
  return best;
}

function jointsAmong(parts: readonly string[], fittings: readonly Fitting[]): Fitting[] {
  const inside = new Set(parts);
  return fittings.filter((one) => inside.has(one.part) && inside.has(one.into));
}

const mostLines = (joints: readonly Fitting[]): number =>
  Math.max(3, Math.min(MOST_LINES, Math.floor(MOST_LOOKED_AT / Math.max(1, joints.length))));

function* eachApart(
  groups: readonly string[][],
  fittings: readonly Fitting[],
  known: Map<string, Apart>,
): Steps<Apart[]> {
  const apart: Apart[] = [];
  for (const group of groups) apart.push(yield* takenApart(group, fittings, known));
  return apart;
}

/** Legs drawn out of their seat all at once, each along its own line: none is sprung. */
function drawnApart(
  whole: readonly string[],
  joints: readonly Fitting[],
  { groups, direction }: Parting,
  apart: Apart[],
): Apart {
  const closing: Closing = { first: [], sprung: [], atOnce: groups.length };
  return {
    glueUp: { parts: [...whole], groups, direction, closing, closes: closedBetween(groups, joints) },
    groups: apart,
    sprung: apart.reduce((sum, each) => sum + each.sprung, 0),
    pieces: apart.reduce((sum, each) => sum + each.pieces, groups.length - 2),
  };
}

function closedBetween(groups: readonly string[][], joints: readonly Fitting[]): string[] {
  const groupOf = new Map(groups.flatMap((group, i) => group.map((part) => [part, i] as const)));
  return joints
    .filter((one) => one.name !== "" && groupOf.get(one.part) !== groupOf.get(one.into))
    .map((one) => one.name);
}

/** Fore-and-aft, then across, then up: a maker tries these first, and frames that are alike left and right part along them. */
const plainLines = (): Vec3[] => [
  [0, 1, 0],
  [1, 0, 0],
  [0, 0, 1],
];

/** In the order in which they are tried. */
const kindsOfLine = [plainLines, ownLines, linesBetween] as const;

/** Lines worth trying: each tenon's own, and those midway between tenons that nearly agree. */
export const lines = (joints: readonly Fitting[]): Vec3[] => [
  ...plainLines(),
  ...ownLines(joints),
  ...linesBetween(joints),
];

/** Each tenon's own line once, fore-and-aft first, then across. */
function ownLines(joints: readonly Fitting[]): Vec3[] {
  const own: Vec3[] = [];
  for (const { direction } of joints) keepLine(own, direction);
  return byRank(own);
}

/** The lines midway between tenons that nearly agree. */
function linesBetween(joints: readonly Fitting[]): Vec3[] {
  const own = ownLines(joints).slice(0, MOST_PAIRED);
  const between: Vec3[] = [];
  const reach = (joint: Fitting) => Math.asin(Math.min(1, joint.slack / Math.max(joint.long, 1e-9)));
  const widest = 2 * Math.max(0, ...joints.map(reach));
  own.forEach((a, i) => {
    for (const b of own.slice(i + 1)) {
      const near = dot(a, b) >= 0 ? b : negate(b);
      if (angleBetween(a, near) <= widest) keepLine(between, unit(add(a, near)));
    }
  });
  return byRank(between);
}

function keepLine(into: Vec3[], direction: Vec3): void {
  const known = into.some((d) => Math.abs(dot(d, direction)) > sameCosine);
  if (!known) into.push(direction);
}

function byRank(some: Vec3[]): Vec3[] {
  const rank = (d: Vec3) => Math.round(Math.abs(d[1]) * 50) * 100 + Math.round(Math.abs(d[0]) * 50);
  return some.sort((a, b) => rank(b) - rank(a));
}

/** The groups that come apart along a line, in order along it; one group when nothing parts. */
function partAlong(whole: readonly string[], joints: readonly Fitting[], direction: Vec3): string[][] {
  // `a` goes with `b`: when b is drawn back along the line, a must come with it.
  const goesWith = new Map<string, string[]>(whole.map((part) => [part, []]));
  const bind = (a: string, b: string) => goesWith.get(b)!.push(a);
  for (const joint of joints) {
    if (straysAlong(joint, direction) <= joint.slack) bind(joint.part, joint.into);
    else if (straysAlong(joint, negate(direction)) <= joint.slack) bind(joint.into, joint.part);
    else {
      bind(joint.part, joint.into);
      bind(joint.into, joint.part);
    }
  }
  return knots(whole, goesWith);
}

/** Strongly connected groups of a graph, each before those that lead to it (R. Tarjan, 1972). */
function knots(nodes: readonly string[], next: ReadonlyMap<string, string[]>): string[][] {
  const found: string[][] = [];
  const place = new Map(nodes.map((node, k) => [node, k]));
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const onStack = new Set<string>();
  const visit = (node: string) => {
    order.set(node, order.size);
    low.set(node, order.get(node)!);
    stack.push(node);
    onStack.add(node);
    for (const other of next.get(node) ?? []) {
      if (!order.has(other)) {
        visit(other);
        low.set(node, Math.min(low.get(node)!, low.get(other)!));
      } else if (onStack.has(other)) low.set(node, Math.min(low.get(node)!, order.get(other)!));
    }
    if (low.get(node) !== order.get(node)) return;
    const group: string[] = [];
    let taken: string;
    do {
      taken = stack.pop()!;
      onStack.delete(taken);
      group.push(taken);
    } while (taken !== node);
    found.push(group.sort((a, b) => place.get(a)! - place.get(b)!));
  };
  for (const node of nodes) if (!order.has(node)) visit(node);
  return found;
}

/** Pieces that no joint ties to each other. */
function connected(parts: readonly string[], fittings: readonly Fitting[]): string[][] {
  const next = new Map<string, string[]>(parts.map((part) => [part, []]));
  for (const { part, into } of fittings) {
    next.get(part)?.push(into);
    next.get(into)?.push(part);
  }
  return knots(parts, next);
}

/** Which joints stand in the way: those that stray along the line on which the fewest do. */
function lockedBy(parts: readonly string[], joints: readonly Fitting[]): Locked {
  // A joint across the line is no obstacle to be mended: it holds a frame together. Only near misses count, unless there are none.
  for (const widest of [Math.PI / 6, Math.PI / 2]) {
    const found = straying(joints, widest);
    if (found) return { parts: [...parts], joints: found };
  }
  return { parts: [...parts], joints: [] };
}

/** The joints that stray along the line on which they stray the least, of those within an angle of it. */
function straying(joints: readonly Fitting[], widest: number): LockedJoint[] | undefined {
  let best: LockedJoint[] | undefined;
  let leastStray = Number.POSITIVE_INFINITY;
  for (const direction of lines(joints)) {
    const near = joints.filter((joint) => joint.name !== "" && acute(joint, direction) < widest);
    const some = near
      .map((joint) => ({
        name: joint.name,
        angle: acute(joint, direction),
        strays: joint.long * Math.sin(acute(joint, direction)),
        slack: joint.slack,
      }))
      .filter((joint) => joint.strays > joint.slack);
    const stray = some.reduce((sum, joint) => sum + joint.strays, 0);
    if (some.length > 0 && stray < leastStray) {
      leastStray = stray;
      best = some;
    }
  }
  return best;
}

function acute(joint: Fitting, direction: Vec3): number {
  const angle = angleBetween(joint.direction, direction);
  return Math.min(angle, Math.PI - angle);
}
