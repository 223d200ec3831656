/**
 * Turned stuff: its outline by stations along its axis, and its holes by how far along and how far round.
 */
import type { Chair, Joint, Post, Rail } from "../../chair/chair.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import {
  along,
  angleBetween,
  cross,
  distance,
  dot,
  negate,
  squareTo,
  sub,
  unit,
} from "../../geometry/vec.ts";
import { pegsOf } from "../pegs.ts";
import { tenonOf } from "./ends.ts";
import { depthOf, faceEntered, isMitred, jointOf, jointsInto, mouthOf } from "./mouths.ts";
import type { CutEnd, Mortise, Spot, Turned } from "./piece.ts";
import { measured, type Run, runsOf } from "./runs.ts";
import { planeTowards } from "./squared.ts";
import { footDatum } from "./stick-of.ts";

export interface TurnedStick {
  turned: Turned;
  runs: Run[];
  ends: [CutEnd, CutEnd];
  mortises: Omit<Mortise, "letter">[];
  /** Between the ends, along the axis. */
  long: number;
  diameter: number;
}

/** A turned post, foot first; undefined for a squared one. */
export function turnedPost(chair: Chair, post: Post): TurnedStick | undefined {
  const first = post.pieces[0];
  if (!first?.radii) return undefined;
  const runs = runsOf(post.pieces, footDatum(post));
  const stations: Turned["stations"] = [{ at: 0, diameter: 2 * first.radii[0] }];
  let at = 0;
  for (const { start, end, radii } of post.pieces) {
    at += distance(start, end);
    stations.push({ at, diameter: 2 * radii![1] });
  }
  const bends = post.pieces.some((piece) => angleBetween(piece.direction, first.direction) > 1e-6);
  const turned: Turned = { stations: fair(stations), ...(bends ? { bent: seenFromSide(post) } : {}) };
  const last = post.pieces[post.pieces.length - 1]!;
  const joint = [...chair.joints.values()].find(({ part }) => part === post.name);
  const top: CutEnd = {
    name: "top",
    cuts: [],
    datum: runs[runs.length - 1]!.datum.name,
    bevels: [],
    ...slantOf(last, 1),
    ...(joint ? { enters: joint.entered.name } : {}),
    ...tenonOf(joint, last.direction),
  };
  const front = (direction: Vec3): Vec3 => unit(squareTo([0, -1, 0], direction));
  return {
    turned,
    runs,
    ends: [{ name: "foot", cuts: [], datum: "D1", bevels: [], ...slantOf(first, 0) }, top],
    mortises: jointsInto(chair, post.name).flatMap((each) => holesOf(each, runs, front)),
    long: at,
    diameter: Math.max(...stations.map(({ diameter }) => diameter)),
  };
}

/** How an end is cut that is not cut square to the axis: its angle, and where round from the front it is longest. */
function slantOf({ solid, direction }: Post["pieces"][number], which: 0 | 1): Pick<CutEnd, "slant"> {
  const outward = which === 0 ? negate(direction) : direction;
  const { normal } = planeTowards(solid, outward);
  const lean = angleBetween(normal, outward);
  if (lean < 1e-3) return {};
  // The cut runs farthest out where it faces inward most.
  const longest = negate(unit(squareTo(normal, direction)));
  const zero = unit(squareTo([0, -1, 0], direction));
  const round = Math.atan2(dot(longest, cross(direction, zero)), dot(longest, zero));
  return { slant: { angle: Math.PI / 2 - lean, round } };
}

/** A turned rail or slat; undefined for a squared one. */
export function turnedRail(chair: Chair, rail: Rail): TurnedStick | undefined {
  if (rail.round === undefined) return undefined;
  const shape = shapeOf(rail);
  const size = (x: number) => shape.outside(x) - shape.inside(x);
  const xs = [0, ...(size(rail.length / 2) === size(0) ? [] : [rail.length / 2]), rail.length];
  const stations = xs.map((x) => ({ at: x, diameter: size(x) }));
  const run: Run = {
    datum: {
      name: "D",
      says: `the shoulder at the ${rail.ends[0].name} end`,
      along: 0,
      reach: [0, rail.length],
    },
    from: 0,
    to: 0,
    origin: rail.start,
    direction: rail.along,
  };
  const end = (which: 0 | 1): CutEnd => {
    const { name, entered } = rail.ends[which];
    const joint = jointOf(chair, rail.name, entered?.name);
    const outward = which === 0 ? negate(rail.along) : rail.along;
    return {
      name,
      cuts: [],
      datum: "D",
      bevels: [],
      ...(entered ? { enters: entered.name } : {}),
      ...tenonOf(joint, outward),
    };
  };
  return {
    turned: { stations, ...(shape.bow ? { bent: bowed(rail) } : {}) },
    runs: [run],
    ends: [end(0), end(1)],
    mortises: jointsInto(chair, rail.name).flatMap((each) => holesOf(each, [run], () => rail.outward)),
    long: rail.length,
    diameter: Math.max(...stations.map(({ diameter }) => diameter)),
  };
}

/** A station that lies this near to the straight between its neighbours says nothing, mm of diameter. */
const STRAIGHT = 0.1;

/** Both ends and the stations without which the outline would stray: the farthest off first, then each half by itself. */
function fair(stations: Turned["stations"]): Turned["stations"] {
  const [first, last] = [stations[0]!, stations[stations.length - 1]!];
  const off = stations.map((each) => offLine(first, last, each));
  const most = Math.max(...off);
  if (!(most > STRAIGHT)) return [first, last];
  const at = off.indexOf(most);
  return [...fair(stations.slice(0, at + 1)), ...fair(stations.slice(at)).slice(1)];
}

type Station = Turned["stations"][number];

const offLine = (a: Station, b: Station, each: Station): number =>
  Math.abs(a.diameter + ((b.diameter - a.diameter) * (each.at - a.at)) / (b.at - a.at) - each.diameter);

/** The centre line as it is seen square to the plane it is bent in. */
function seenFromSide(post: Post): Spot[] {
  const points = [post.pieces[0]!.start, ...post.pieces.map(({ end }) => end)];
  const direction = post.pieces.reduce((best, piece) =>
    lengthOf(piece) > lengthOf(best) ? piece : best,
  ).direction;
  const turn = post.pieces.reduce<Vec3>(
    (sum, { direction: d }) => along(sum, cross(direction, d), 1),
    [0, 0, 0],
  );
  const across = unit(cross(unit(turn), direction));
  return points.map((p) => [dot(sub(p, points[0]!), direction), dot(sub(p, points[0]!), across)]);
}

const lengthOf = ({ start, end }: { start: Vec3; end: Vec3 }): number => distance(start, end);

function bowed(rail: Rail): Spot[] {
  const shape = shapeOf(rail);
  return Array.from({ length: 25 }, (_, k): Spot => {
    const x = (k / 24) * rail.length;
    return [x, (shape.outside(x) + shape.inside(x)) / 2];
  });
}

/** What one joint wants bored or chopped in a turned member. `front` gives the way that its angle is counted from. */
function holesOf(
  joint: Joint,
  runs: readonly Run[],
  front: (direction: Vec3) => Vec3,
): Omit<Mortise, "letter">[] {
  const run = [...runs].reverse().find((each) => measured(each, joint.root) >= 0) ?? runs[0]!;
  const { direction, origin } = run;
  const zero = front(direction);
  const out = squareTo(sub(joint.root, origin), direction);
  const round = Math.atan2(dot(out, cross(direction, zero)), dot(out, zero));
  const entered = faceEntered(joint);
  const tangent = cross(direction, unit(out));
  const inward = -dot(joint.direction, unit(out));
  const holes = joint.tenon.map((solid, k): Omit<Mortise, "letter"> => {
    const { thick, wide } = joint.sections[k]!;
    const ends = (mouthOf(solid, joint)?.ring ?? [joint.root]).map((p) => measured(run, p));
    const isRound = joint.shape === "round";
    // Dowels each have a place of their own along the axis.
    const middle = ends.reduce((sum, end) => sum + end, 0) / ends.length;
    const [from, to] = isRound ? [middle, middle] : [Math.min(...ends), Math.max(...ends)];
    return {
      is: isRound ? "hole" : "mortise",
      face: "",
      for: joint.part,
      datum: run.datum.name,
      from: [from, from],
      to: [to, to],
      near: [0, 0],
      far: [0, 0],
      gaugedFrom: "",
      ...(joint.facts.through ? {} : { deep: depthOf(solid, entered) }),
      tenon: { thick: thick[1] - thick[0], wide: wide[1] - wide[0] },
      lean: {
        along: Math.atan2(dot(joint.direction, direction), inward),
        across: Math.atan2(dot(joint.direction, tangent), inward),
      },
      ...(isRound ? { diameter: joint.thick } : {}),
      round,
      ...(isMitred(joint) ? { mitred: true as const } : {}),
    };
  });
  return [...holes, ...pegsThrough(joint, run, zero)];
}

/** Pegs run beside the axis, square to it: how far along, which way round they are bored from, and how far off the axis. */
function pegsThrough(joint: Joint, run: Run, zero: Vec3): Omit<Mortise, "letter">[] {
  const pegs = pegsOf(joint);
  if (!pegs) return [];
  const { direction, origin } = run;
  const way = unit(squareTo(joint.acrossThick, direction));
  // Bored from the side nearer to the front.
  const from = dot(way, zero) >= 0 ? way : negate(way);
  return pegs.middles.map((middle) => {
    const x = measured(run, middle);
    const off = Math.abs(dot(squareTo(sub(middle, origin), direction), cross(direction, from)));
    return {
      is: "peg",
      face: "",
      for: joint.part,
      datum: run.datum.name,
      from: [x, x],
      to: [x, x],
      near: [off, off],
      far: [off, off],
      gaugedFrom: "",
      tenon: { thick: pegs.diameter, wide: pegs.diameter },
      lean: { along: 0, across: 0 },
      diameter: pegs.diameter,
      round: Math.atan2(dot(from, cross(direction, zero)), dot(from, zero)),
    };
  });
}
