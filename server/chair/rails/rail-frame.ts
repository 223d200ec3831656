import { levelAt, lineMeets, offsetBy, planeAt, threePlanes } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, angleBetween, cross, dot, negate, norm, sub, unit } from "../../geometry/vec.ts";
import type { Host } from "../joints/host.ts";
import { arcOver } from "./arc.ts";

/** One end of a rail to be placed. */
export interface FrameEnd {
  host: Host;
  /** Lies over the host's top and runs past its face by `overhang`. */
  over?: { overhang: number };
  /** Plumb height of the host's top, for an end over it when the rail was given no height of its own. */
  hostTop?: number;
}

export interface FrameFacts {
  ends: readonly [FrameEnd, FrameEnd];
  /** At a share of its length from the first end; run on beyond both ends, where the posts' centre lines are. */
  thick: (share: number) => number;
  wide: (share: number) => number;
  round: boolean;
  /** Height of the top edge (a round rail's axis) at the first end; absent when something else decides it. */
  up?: number;
  /** Height of the middle of the section at the first end when there is no `up`: that of the rail it enters. */
  middleHeight?: number;
  fall: number;
  /** Below level towards the second end, radians; in place of `fall`. */
  slope?: number;
  face: { is: "flush" | "inset" | "centred"; inset: number };
  stand: "plumb" | "with posts";
  /** Rise of its bow along that outward, for ends that lie over posts: the curve, not the straight, is centred on them. */
  bow?: (outward: Vec3) => number;
  /** Middle of the chair; the outside face looks away from it. */
  middle: Vec3;
}

/** A rail's place: its outside top arris (a round one's axis) from shoulder to shoulder, and its three directions. */
export interface RailFrame {
  start: Vec3;
  end: Vec3;
  along: Vec3;
  outward: Vec3;
  upward: Vec3;
  /** The planes that end it, each looking along the rail into it. */
  cuts: [Plane, Plane];
  /** Where it bears on no post it lies over, mm from the start; an arch keeps between. */
  free: [number, number];
  /** How differently the two ends want it to lean, radians; 0 when plumb. */
  wind: number;
}

const UP: Vec3 = [0, 0, 1];
const ROUNDS = 40;

/**
 * Places a rail by its outside top arris at each shoulder: there its height, the post's outside face (less the inset) or the posts'
 * centre lines, and the face entered meet. Its directions and that arris depend on each other a little, so it goes round until
 * nothing moves (to 1e-11 mm). Undefined when both ends are in one place or the line never meets a face.
 */
export function placeRail(facts: FrameFacts): RailFrame | undefined {
  const [a, b] = facts.ends;
  const firstHeight = facts.up ?? facts.middleHeight ?? (a.hostTop ?? 0) + facts.wide(0);
  let q = sub(b.host.centre(firstHeight - facts.fall), a.host.centre(firstHeight));
  if (Math.hypot(q[0], q[1]) < 1e-9) return undefined;
  const side = outsideSign(facts, q, firstHeight);
  let state: State = {
    q: unit(q),
    ...directions(q, side, 0),
    fall: facts.fall,
    length: norm(q),
    shares: [0, 1],
    first: firstHeight,
  };
  let frame: RailFrame | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const touch = [touchOf(facts, 0, state), touchOf(facts, 1, state)] as const;
    if (!touch[0] || !touch[1]) return undefined;
    q = sub(touch[1], touch[0]);
    const leans =
      facts.stand === "plumb" ? [0, 0] : [leanOf(facts, 0, state, q, side), leanOf(facts, 1, state, q, side)];
    const lean = (leans[0]! + leans[1]!) / 2;
    const next = directions(q, side, lean);
    const ends = shoulders(facts, state, next, touch[0], touch[1]);
    if (!ends) return undefined;
    const moved = frame
      ? Math.max(norm(sub(ends.start, frame.start)), norm(sub(ends.end, frame.end)))
      : Infinity;
    frame = { ...ends, wind: Math.abs(leans[0]! - leans[1]!) };
    const run = sub(ends.end, ends.start);
    state = {
      ...next,
      q: frame.along,
      upward: frame.upward,
      length: norm(run),
      shares: sharesOf(frame, touch[0], touch[1]),
      fall: facts.slope === undefined ? facts.fall : levelRun(facts, frame, touch) * Math.tan(facts.slope),
      first: ends.first,
    };
    if (moved < 1e-11) break;
  }
  return frame;
}

/** Level distance between the points whose heights the text gives: shoulders, or over the middle of a post an end lies over. */
function levelRun({ ends }: FrameFacts, frame: RailFrame, touch: readonly (Vec3 | undefined)[]): number {
  const run = sub(ends[1].over ? touch[1]! : frame.end, ends[0].over ? touch[0]! : frame.start);
  return Math.hypot(run[0], run[1]);
}

function sharesOf({ start, end }: { start: Vec3; end: Vec3 }, first: Vec3, second: Vec3): [number, number] {
  const run = sub(end, start);
  const share = (p: Vec3) => dot(sub(p, start), run) / dot(run, run);
  return [share(first), share(second)];
}

interface State {
  /** Unit, along the rail. */
  q: Vec3;
  outward: Vec3;
  upward: Vec3;
  fall: number;
  length: number;
  /** Where along the rail the ends' touching points are, as shares of its length. */
  shares: readonly [number, number];
  /** Height of the arris at the first end. */
  first: number;
}

/** +1 or −1: which of the two level directions square to the rail looks out of the chair. */
function outsideSign(facts: FrameFacts, q: Vec3, z: number): 1 | -1 {
  const square = unit(cross(q, UP));
  const middle = along(facts.ends[0].host.centre(z), q, 0.5);
  const away = dot(square, sub(middle, facts.middle));
  if (Math.abs(away) > 1e-6) return away > 0 ? 1 : -1;
  if (Math.abs(square[1]) > 1e-9) return square[1] < 0 ? 1 : -1;
  return square[0] > 0 ? 1 : -1;
}

/** Outward and upward of a rail along q, leaning outward going up by `lean`. */
function directions(q: Vec3, side: 1 | -1, lean: number): { outward: Vec3; upward: Vec3 } {
  const level = unit(cross(q, UP));
  const outward: Vec3 = side > 0 ? level : negate(level);
  const upward = squareUp(q, outward);
  const c = Math.cos(lean);
  const s = Math.sin(lean);
  return {
    outward: along([outward[0] * c, outward[1] * c, outward[2] * c], upward, -s),
    upward: along([upward[0] * c, upward[1] * c, upward[2] * c], outward, s),
  };
}

/** Square to both, going up. */
function squareUp(alongRail: Vec3, outward: Vec3): Vec3 {
  const up = unit(cross(alongRail, outward));
  return up[2] < 0 ? negate(up) : up;
}

/** How far out the host's centre line leans between the rail's two edges, seen along the rail. */
function leanOf(facts: FrameFacts, which: 0 | 1, state: State, q: Vec3, side: 1 | -1): number {
  const plumb = directions(q, side, 0);
  const top = heightAt(which, state);
  const half = facts.round ? facts.wide(which) / 2 : 0;
  const chord = facts.ends[which].host.chord(top + half, top + half - facts.wide(which) * state.upward[2]);
  return Math.atan2(dot(chord, plumb.outward), dot(chord, plumb.upward));
}

const heightAt = (which: 0 | 1, state: State): number => state.first - (which === 1 ? state.fall : 0);

/** From the arris to the middle of the section at a share of the length. */
function toMiddle(
  facts: FrameFacts,
  share: number,
  { outward, upward }: Pick<State, "outward" | "upward">,
): Vec3 {
  if (facts.round) return [0, 0, 0];
  return along(along([0, 0, 0], outward, -facts.thick(share) / 2), upward, -facts.wide(share) / 2);
}

/** A point that the outside face (a round rail's axis) goes through near one end. */
function touchOf(facts: FrameFacts, which: 0 | 1, state: State): Vec3 | undefined {
  const end = facts.ends[which];
  const share = state.shares[which];
  const middle = toMiddle(facts, share, state);
  if (end.over) {
    const under = along(middle, state.upward, -facts.wide(share) / 2);
    const free = facts.up === undefined && end.hostTop !== undefined;
    const bend = bowAt(facts, state, share);
    const z = free ? end.hostTop! : heightAt(which, state) + under[2] + bend * state.outward[2];
    const top = middleAcross(end.host, end.host.centre(z), state.outward);
    return along(sub(top, under), state.outward, -bend);
  }
  const z = heightAt(which, state);
  if (facts.face.is === "centred" || facts.round) {
    const centre = end.host.centre(z + middle[2]);
    // The middle of the post as it is there: one that tapers with a face kept straight leaves its centre line.
    const there = end.host.entered.kind === "post" ? middleAcross(end.host, centre, state.outward) : centre;
    return sub(there, middle);
  }
  const look = which === 0 ? state.q : negate(state.q);
  let around = end.host.centre(z);
  for (let round = 0; round < 4; round++) {
    const entered = end.host.face(look, along(around, middle, 1));
    const outside = end.host.face(state.outward, around, entered);
    const point = threePlanes(levelAt(z), offsetBy(outside, -facts.face.inset), entered);
    if (!point) return undefined;
    const still = norm(sub(point, around)) < 1e-12;
    around = point;
    if (still) break;
  }
  return around;
}

/** The middle of a post's thickness at a point of its centre line, in a direction: not on that line where one face kept straight. */
function middleAcross(host: Host, centre: Vec3, outward: Vec3): Vec3 {
  // Turned work is about its centre line, however it tapers.
  if (host.fallBack(1, centre) > 0) return centre;
  const reach = (look: Vec3) => {
    const face = lineMeets(host.face(look, centre), centre, look);
    return face ? dot(sub(face, centre), look) : 0;
  };
  return along(centre, outward, (reach(outward) - reach(negate(outward))) / 2);
}

/** How far out of its straight the rail is bowed at a share of its length. */
function bowAt(facts: FrameFacts, state: State, share: number): number {
  const rise = facts.bow?.(state.outward) ?? 0;
  const arc = arcOver(state.length, Math.abs(rise));
  return arc ? Math.sign(rise) * arc.parallel(share * state.length, 0) : 0;
}

function shoulders(
  facts: FrameFacts,
  state: State,
  { outward, upward }: { outward: Vec3; upward: Vec3 },
  first: Vec3,
  second: Vec3,
): (Omit<RailFrame, "wind"> & { first: number }) | undefined {
  const q = unit(sub(second, first));
  const outsideFace = planeAt(first, outward);
  const touch = [first, second] as const;
  const points: Vec3[] = [first, second];
  const cuts: Plane[] = [];
  for (const which of [0, 1] as const) {
    const end = facts.ends[which];
    if (end.over) continue;
    const look: Vec3 = which === 0 ? q : negate(q);
    const middle = toMiddle(facts, state.shares[which], { outward, upward });
    const entered = end.host.face(look, along(touch[which], middle, 1));
    const point = facts.round
      ? lineMeets(entered, touch[which], q)
      : facts.face.is === "centred"
        ? threePlanes(levelAt(heightAt(which, state)), outsideFace, entered)
        : touch[which];
    if (!point) return undefined;
    points[which] = point;
    cuts[which] = entered;
  }
  const line = unit(sub(points[1]!, points[0]!));
  const bearings: (Vec3 | undefined)[] = [];
  for (const which of [0, 1] as const) {
    const end = facts.ends[which];
    if (!end.over) continue;
    const look: Vec3 = which === 0 ? line : negate(line);
    const share = state.shares[which];
    const under = along(toMiddle(facts, share, { outward, upward }), upward, -facts.wide(share) / 2);
    const centre = along(along(touch[which], under, 1), outward, bowAt(facts, state, share));
    bearings[which] = lineMeets(end.host.face(look, centre), centre, look);
    const far = lineMeets(end.host.face(negate(look), centre), centre, look);
    const reach = far ? dot(sub(centre, far), look) : 0;
    points[which] = along(touch[which], look, -reach - end.over.overhang);
    cuts[which] = planeAt(points[which]!, look);
  }
  const [start, end] = points as [Vec3, Vec3];
  const run = unit(sub(end, start));
  if (dot(run, q) <= 0 || angleBetween(run, q) > 1) return undefined;
  const upwardNow = squareUp(run, outward);
  const length = norm(sub(end, start));
  const bears = (point: Vec3 | undefined, otherwise: number) =>
    point ? dot(sub(point, start), run) : otherwise;
  return {
    start,
    end,
    along: run,
    outward,
    upward: upwardNow,
    cuts: cuts as [Plane, Plane],
    free: [bears(bearings[0], 0), bears(bearings[1], length)],
    first: firstOf(facts, first, second, state, toMiddle(facts, 0, { outward, upward: upwardNow })),
  };
}

/** Height of the arris at the first end: as given, else as whatever decides it has brought it. */
function firstOf(facts: FrameFacts, first: Vec3, second: Vec3, state: State, middle: Vec3): number {
  if (facts.up !== undefined) return facts.up;
  if (facts.ends[0].over) return first[2];
  if (facts.ends[1].over) return second[2] + state.fall;
  return (facts.middleHeight ?? 0) - middle[2];
}
