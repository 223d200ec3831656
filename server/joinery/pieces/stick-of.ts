/**
 * Posts, rails and slats as squared sticks.
 */
import type { Chair, Joint, Post, Rail } from "../../chair/chair.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import { clip } from "../../geometry/convex.ts";
import { flipped } from "../../geometry/plane.ts";
import type { Convex, Vec3 } from "../../geometry/solid.ts";
import { along, cross, distance, dot, negate, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { EndSite } from "./ends.ts";
import { hollowed } from "./hollowed.ts";
import { jointOf } from "./mouths.ts";
import { type Line, lineOf, outlineOfPost, outlineOfRail } from "./outline.ts";
import type { DatumPlace, Outline } from "./piece.ts";
import { type Run, runsOf } from "./runs.ts";
import { middleOf, planeTowards, rolled, type SquaredStick, type Stretch, sideTowards } from "./squared.ts";

export interface StickOf {
  stick: SquaredStick;
  runs: Run[];
  /** The stretch laid level. */
  main: number;
  ends: [EndSite, EndSite];
  /** Of stuff that is not plain. */
  outline?: Outline;
}

/** A squared post, foot first; undefined for a turned one. The face side is the one away from the chair's middle, the face edge outside. */
export function stickOfPost(chair: Chair, post: Post, every: number): StickOf | undefined {
  const stretches: Stretch[] = [];
  for (const { faces, solid, direction, curved, start } of post.pieces) {
    if (!faces) return undefined;
    // Stretches of a curve that tapers share their sections: a side may lie some thousandths of a mm off the face as it is worked out.
    const [front, left, back, right] = [faces.front, faces.left, faces.back, faces.right].map(({ normal }) =>
      sideTowards(solid, normal, direction),
    );
    stretches.push({ solid, direction, curved, start, planes: [front!, left!, back!, right!] });
  }
  const [left, right] = post.side === "right" ? ["inside", "outside"] : ["outside", "inside"];
  const stick: SquaredStick = {
    stretches,
    names: post.side === "middle" ? ["front", "left", "back", "right"] : ["front", left!, "back", right!],
    side: isFore(chair, post) ? 0 : 2,
    edge: post.side === "right" ? 3 : 1,
  };
  const main = busiest(chair, post.name, runsOf(post.pieces, ""));
  const level = stretches[main]!;
  const runs = runsOf(post.pieces, footDatum(post));
  const own = runs.find(({ from, to }) => main >= from && main <= to) ?? runs[0]!;
  const face = unit(squareTo(level.planes[0].normal, level.direction));
  const line = lineOf(own.origin, level.direction, face);
  for (const run of runs) if (run !== own) run.datum.place = placeOf(run, own, line);
  const outline = outlineOfPost(stick, line, every);
  const first = stretches[0]!;
  const last = stretches[stretches.length - 1]!;
  const jointAt = (end: "foot" | "top") => {
    const joint = jointOfPost(chair, post, end);
    return joint ? { joint } : {};
  };
  return {
    stick,
    runs,
    main,
    ...(outline ? { outline } : {}),
    ends: [
      { name: "foot", which: 0, cut: planeTowards(first.solid, negate(first.direction)), ...jointAt("foot") },
      {
        name: "top",
        which: 1,
        cut: planeTowards(last.solid, last.direction),
        ...jointAt("top"),
      },
    ],
  };
}

/** The joint that one end of a post is cut for. */
export const jointOfPost = (chair: Chair, post: Post, end: "foot" | "top"): Joint | undefined =>
  [...chair.joints.values()].find((joint) => joint.part === post.name && joint.end === end);

/** Where a run's datum lies from the one that the outline runs from, and how it goes on there. */
export function placeOf(run: Run, from: Run, line: Line): DatumPlace {
  const off = sub(run.origin, line.origin);
  const turn = (way: Vec3) => Math.atan2(dot(run.direction, way), dot(run.direction, line.direction));
  return {
    from: from.datum.name,
    along: dot(off, line.direction),
    off: [dot(off, line.ways[0]), dot(off, line.ways[1])],
    turn: [turn(line.ways[0]), turn(line.ways[1])],
  };
}

/** Where a post's first datum is. */
export const footDatum = (post: Post): string =>
  post.design.standsOn
    ? "squared round where the centre line meets the rail below"
    : post.design.onSeat
      ? "squared round where the centre line meets the seat below"
      : "squared round where the centre line meets the floor";

/** Whether a post stands before the middle of the chair. */
function isFore(chair: Chair, post: Post): boolean {
  const ys = [...chair.posts.values()].map(({ foot }) => foot[1]);
  return post.foot[1] <= (Math.min(...ys) + Math.max(...ys)) / 2;
}

/** The run with the most joints in it; of those the longest. */
function busiest(chair: Chair, member: string, runs: readonly Run[]): number {
  const score = (run: Run): number => {
    const [, to] = run.datum.reach;
    const inside = [...chair.joints.values()].filter(({ entered, root }) => {
      const x = dot(sub(root, run.origin), run.direction);
      return entered.name === member && x > 0 && x < to;
    });
    return inside.length * 1e5 + to;
  };
  return runs.reduce((best, run) => (score(run) > score(best) ? run : best)).from;
}

/**
 * A squared rail or slat, its top edge up the page as its outside is looked at; undefined for a round one. Distances run from the outside
 * top arris at the shoulder that comes to lie on the left.
 */
export function stickOfRail(chair: Chair, rail: Rail, every: number): StickOf | undefined {
  if (rail.round !== undefined) return undefined;
  const direction = cross(rail.upward, rail.outward);
  const forward = dot(direction, rail.along) > 0;
  const { pieces } = rail.uncut ?? rail.body;
  const solids = forward ? pieces : [...pieces].reverse();
  const normals = rolled(rail.upward, direction);
  const shape = shapeOf(rail);
  const curvedAt = (x: number) =>
    rail.bow !== undefined || shape.arcs.some(({ from, chord }) => x > from && x < from + chord);
  const stretches = solids.flatMap((whole): Stretch[] => {
    const solid = betweenShoulders(rail, whole);
    if (!solid) return [];
    const x = dot(sub(middleOf(solid.points), rail.start), rail.along);
    const [a, b, c, d] = normals.map((normal) => sideTowards(solid, normal, direction));
    const start = middleOf(solid.points);
    return [{ solid, direction, curved: curvedAt(x), start, planes: [a!, b!, c!, d!] }];
  });
  if (stretches.length === 0) return undefined;
  const [one, other] = edgeNames(rail);
  const stick: SquaredStick = {
    stretches,
    names: [one, "outside", other, "inside"],
    side: rail.flat ? 0 : 1,
    edge: rail.flat ? 1 : 0,
  };
  const order = forward ? ([0, 1] as const) : ([1, 0] as const);
  const [first, last] = order.map((which) => rail.ends[which]);
  const origin = first!.corners[0]!;
  const long = distance(rail.start, rail.end);
  const corner = first!.over ? "the corner of" : "the shoulder's corner on";
  const says = `${corner} the ${one} outside arris at the ${first!.name} end`;
  const run: Run = {
    datum: { name: "D", says, along: 0, reach: [0, long] },
    from: 0,
    to: stretches.length - 1,
    origin,
    direction,
  };
  const site = (end: Rail["ends"][number], which: 0 | 1): EndSite => {
    const [topOutside, topInside, bottomInside, bottomOutside] = end.corners as [Vec3, Vec3, Vec3, Vec3];
    const solid = stretches[which === 0 ? 0 : stretches.length - 1]!.solid;
    const joint = jointOf(chair, rail.name, end.entered?.name);
    return {
      name: end.name,
      which,
      cut: planeTowards(solid, which === 0 ? negate(direction) : direction),
      corners: [topOutside, bottomOutside, bottomInside, topInside],
      arrises: arrisesAt(rail, direction, [topOutside, bottomOutside, bottomInside, topInside]),
      inside: (face, at) => insideOf(rail, face, at),
      ...(joint ? { joint } : {}),
      ...hollowed(chair, rail, rail.ends[0] === end ? 0 : 1),
    };
  };
  const corners = [first!, last!].flatMap((end) => end.corners.map((p) => dot(sub(p, origin), direction)));
  const outline = outlineOfRail(rail, forward, corners, every);
  return {
    stick,
    runs: [run],
    main: 0,
    ends: [site(first!, 0), site(last!, 1)],
    ...(outline ? { outline } : {}),
  };
}

/** Where a point lies in a rail's own measure. */
const ownSpot = (rail: Rail, p: Vec3) => {
  const off = sub(p, rail.start);
  return { x: dot(off, rail.along), y: dot(off, rail.outward), z: dot(off, rail.upward) };
};

/** How far a point lies inside a rail's top, outside, bottom or inside, square to the rail's own line. */
function insideOf(rail: Rail, face: number, at: Vec3): number {
  const shape = shapeOf(rail);
  const { x, y, z } = ownSpot(rail, at);
  return [shape.top(x) - z, shape.outside(x) - y, z - shape.bottom(x), y - shape.inside(x)][face]!;
}

/** The way each arris runs at a corner: along the rail, with the curve or the taper there. */
function arrisesAt(rail: Rail, direction: Vec3, corners: readonly Vec3[]): Vec3[] {
  const shape = shapeOf(rail);
  const sides = [shape.outside, shape.outside, shape.inside, shape.inside];
  const edges = [shape.top, shape.bottom, shape.bottom, shape.top];
  return corners.map((corner, k) => {
    const { x } = ownSpot(rail, corner);
    const slope = (f: (x: number) => number) => (f(x + SLOPE) - f(x - SLOPE)) / (2 * SLOPE);
    const run = along(along(rail.along, rail.outward, slope(sides[k]!)), rail.upward, slope(edges[k]!));
    return unit(dot(run, direction) < 0 ? negate(run) : run);
  });
}

/** For slopes of an arris, mm. */
const SLOPE = 1e-3;

/** A stretch of a rail cut off at both shoulders: into turned posts its wood runs on. */
function betweenShoulders(rail: Rail, solid: Convex): Convex | null {
  return rail.ends.reduce<Convex | null>(
    (left, { shoulder, over }) => (left && shoulder && !over ? clip(left, flipped(shoulder)) : left),
    solid,
  );
}

/** A rail's edges are its top and bottom; a slat's are named by where they look. */
function edgeNames({ is, upward }: Rail): [string, string] {
  if (is === "rail") return ["top", "bottom"];
  const [x, y, z] = upward.map(Math.abs) as [number, number, number];
  if (z >= x && z >= y) return upward[2] > 0 ? ["top", "bottom"] : ["bottom", "top"];
  if (x >= y) return upward[0] > 0 ? ["left edge", "right edge"] : ["right edge", "left edge"];
  return upward[1] > 0 ? ["back edge", "front edge"] : ["front edge", "back edge"];
}
