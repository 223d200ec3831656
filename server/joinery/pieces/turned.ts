/**
 * Turned stuff: its outline by stations along its axis, and its holes by how far along and how far round.
 */
import type { Chair, Joint, Post, Rail } from "../../chair/chair.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import {
  along,
  angleBetween,
  between,
  cross,
  distance,
  dot,
  negate,
  norm,
  squareTo,
  sub,
  unit,
} from "../../geometry/vec.ts";
import { pegsOf } from "../pegs.ts";
import { hollowed } from "./hollowed.ts";
import { depthOf, faceEntered, isMitred, jointOf, jointsInto, mouthOf } from "./mouths.ts";
import { type Line, lineOf } from "./outline.ts";
import type { CutEnd, Mortise, Spot, Turned } from "./piece.ts";
import { measured, type Run, runsOf } from "./runs.ts";
import { planeTowards, rolled } from "./squared.ts";
import { footDatum, jointOfPost, placeOf } from "./stick-of.ts";
import { type EndFrame, tenonOf } from "./tenon.ts";

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
  const own = bends ? placeRuns(runs) : undefined;
  const turned: Turned = {
    stations: fair(stations),
    faces: sidesOf(post),
    ...(own ? { bent: seenFromSide(post), axis: axisFrom(post, own) } : {}),
  };
  const last = post.pieces[post.pieces.length - 1]!;
  const endOf = (name: "foot" | "top"): CutEnd => {
    const joint = jointOfPost(chair, post, name);
    const [piece, which] = name === "top" ? ([last, 1] as const) : ([first, 0] as const);
    const outward = which === 1 ? piece.direction : negate(piece.direction);
    const axis = which === 1 ? piece.end : piece.start;
    return {
      name,
      cuts: [],
      datum: which === 1 ? runs[runs.length - 1]!.datum.name : "D1",
      bevels: [],
      ...slantOf(piece, which),
      ...(joint ? { enters: joint.entered.name } : {}),
      ...tenonOf(
        joint,
        roundFrame(
          sidesOf(post),
          front(piece.direction),
          outward,
          axis,
          piece.radii![which],
          piece.direction,
        ),
      ),
    };
  };
  const sized = (run: Run, x: number): number => radiusAt(stations, run.datum.along + x);
  return {
    turned,
    runs,
    ends: [endOf("foot"), endOf("top")],
    mortises: jointsInto(chair, post.name).flatMap((each) => holesOf(each, runs, front, sized)),
    long: at,
    diameter: Math.max(...stations.map(({ diameter }) => diameter)),
  };
}

/** The longest run's line; the other runs' datums are placed from it. */
function placeRuns(runs: readonly Run[]): Line {
  const own = runs.reduce((best, run) => (run.datum.reach[1] > best.datum.reach[1] ? run : best));
  const line = lineOf(own.origin, own.direction, front(own.direction));
  for (const run of runs) if (run !== own) run.datum.place = placeOf(run, own, line);
  return line;
}

/** Where a bent post's axis lies off a line, from end to end. */
const axisFrom = (post: Post, { origin, direction, ways }: Line): NonNullable<Turned["axis"]> =>
  [post.pieces[0]!.start, ...post.pieces.map(({ end }) => end)].map((p) => {
    const off = sub(p, origin);
    return { at: dot(off, direction), off: [dot(off, ways[0]), dot(off, ways[1])] };
  });

/** The way that angles round a post are counted from. */
const front = (direction: Vec3): Vec3 => unit(squareTo([0, -1, 0], direction));

const sidesOf = ({ side }: Post): EndFrame["names"] =>
  side === "middle"
    ? ["front", "left", "back", "right"]
    : side === "left"
      ? ["front", "outside", "back", "inside"]
      : ["front", "inside", "back", "outside"];

/** Turned stuff as if it were squared about its front. */
function roundFrame(
  names: EndFrame["names"],
  zero: Vec3,
  outward: Vec3,
  axis: Vec3,
  radius: number,
  direction = outward,
): EndFrame {
  const ways = rolled(zero, direction);
  return { names, ways, outward, inside: (face, at) => radius - dot(sub(at, axis), ways[face as 0]) };
}

/** The radius of the outline at a distance along the axis. */
function radiusAt(stations: Turned["stations"], x: number): number {
  const next = Math.max(
    1,
    stations.findIndex(({ at }) => at >= x),
  );
  const [a, b] = [stations[next - 1]!, stations[next] ?? stations[stations.length - 1]!];
  const share = b.at > a.at ? Math.min(1, Math.max(0, (x - a.at) / (b.at - a.at))) : 1;
  return (a.diameter + (b.diameter - a.diameter) * share) / 2;
}

/** How an end is cut that is not cut square to the axis: its angle, and where round from the front it is longest. */
function slantOf({ solid, direction }: Post["pieces"][number], which: 0 | 1): Pick<CutEnd, "slant"> {
  const outward = which === 0 ? negate(direction) : direction;
  return slant(planeTowards(solid, outward).normal, outward, direction, front(direction));
}

/** The same by the plane it is cut to. */
function slant(normal: Vec3, outward: Vec3, direction: Vec3, zero: Vec3): Pick<CutEnd, "slant"> {
  const lean = angleBetween(normal, outward);
  if (lean < 1e-3) return {};
  // The cut runs farthest out where it faces inward most.
  const longest = negate(unit(squareTo(normal, direction)));
  const round = Math.atan2(dot(longest, cross(direction, zero)), dot(longest, zero));
  return { slant: { angle: Math.PI / 2 - lean, round } };
}

/** A turned rail or slat; undefined for a squared one. */
export function turnedRail(chair: Chair, rail: Rail): TurnedStick | undefined {
  if (rail.round === undefined) return undefined;
  const shape = shapeOf(rail);
  const size = (x: number) => shape.outside(x) - shape.inside(x);
  const xs = [0, ...shape.bends, rail.length].sort((a, b) => a - b);
  const stations = fair(xs.map((x) => ({ at: x, diameter: size(x) })));
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
    const { shoulder } = rail.ends[which];
    const axis = which === 0 ? rail.start : rail.end;
    return {
      name,
      cuts: [],
      datum: "D",
      bevels: [],
      ...(shoulder ? slant(negate(shoulder.normal), outward, rail.along, rail.outward) : {}),
      ...(entered ? { enters: entered.name } : {}),
      ...hollowed(chair, rail, which),
      ...tenonOf(
        joint,
        roundFrame(
          names,
          rail.outward,
          outward,
          axis,
          size(axis === rail.start ? 0 : rail.length) / 2,
          rail.along,
        ),
      ),
    };
  };
  const below = dot(rolled(rail.outward, rail.along)[1], rail.upward) < 0;
  const names: EndFrame["names"] = below
    ? ["outside", "bottom", "inside", "top"]
    : ["outside", "top", "inside", "bottom"];
  return {
    turned: {
      stations,
      faces: names,
      ...(shape.bow
        ? { bent: bowed(rail), axis: bowed(rail).map(([at, y]) => ({ at, off: [y, 0] as const })) }
        : {}),
    },
    runs: [run],
    ends: [end(0), end(1)],
    mortises: jointsInto(chair, rail.name).flatMap((each) =>
      holesOf(
        each,
        [run],
        () => rail.outward,
        (_, x) => radiusAt(stations, x),
      ),
    ),
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
  radius: (run: Run, x: number) => number,
): Omit<Mortise, "letter">[] {
  const run = [...runs].reverse().find((each) => measured(each, joint.root) >= 0) ?? runs[0]!;
  const zero = front(run.direction);
  const cut = joint.tenon.map((solid, k) =>
    joint.shape === "round"
      ? boreOf(joint, k, run, zero, (x) => radius(run, x))
      : chopOf(joint, solid, k, run, zero),
  );
  return [...cut, ...pegsThrough(joint, run, zero)];
}

/** The angle round from the front of a way out of the axis. */
const roundOf = ({ direction }: Run, zero: Vec3, out: Vec3): number =>
  Math.atan2(dot(out, cross(direction, zero)), dot(out, zero));

/** A hole by the point of the surface that the bit starts on; its depth runs along the bore, which ends square to itself. */
function boreOf(
  joint: Joint,
  which: number,
  run: Run,
  zero: Vec3,
  radius: (x: number) => number,
): Omit<Mortise, "letter"> {
  const { direction, origin } = run;
  const { thick, wide } = joint.sections[which]!;
  const middle = ([low, high]: readonly number[]) => (low! + high!) / 2;
  const start = along(along(joint.root, joint.acrossThick, middle(thick)), joint.acrossWide, middle(wide));
  // Where the bore's own line comes through the surface: the radius changes little on the way.
  let entry = start;
  for (let round = 0; round < 6; round++) {
    const out = squareTo(sub(entry, origin), direction);
    const over = norm(out) - radius(measured(run, entry));
    entry = along(entry, joint.direction, -over / Math.min(-0.1, dot(unit(out), joint.direction)));
  }
  const out = unit(squareTo(sub(entry, origin), direction));
  const tangent = cross(direction, out);
  const inward = -dot(joint.direction, out);
  const x = measured(run, entry);
  const deep = Math.max(...joint.tenon[which]!.points.map((p) => dot(sub(p, entry), joint.direction)));
  return {
    is: "hole",
    face: "",
    for: joint.part,
    datum: run.datum.name,
    from: [x, x],
    to: [x, x],
    near: [0, 0],
    far: [0, 0],
    gaugedFrom: "",
    ...(joint.facts.through ? {} : { deep }),
    tenon: { thick: thick[1] - thick[0], wide: wide[1] - wide[0] },
    lean: {
      along: Math.atan2(dot(joint.direction, direction), inward),
      across: Math.atan2(dot(joint.direction, tangent), inward),
    },
    diameter: joint.thick,
    round: roundOf(run, zero, out),
  };
}

/** A mortise by the way that the flat it is chopped from looks, and how far its middle lies off the axis there. */
function chopOf(
  joint: Joint,
  solid: Joint["tenon"][number],
  which: number,
  run: Run,
  zero: Vec3,
): Omit<Mortise, "letter"> {
  const { direction, origin } = run;
  const { thick, wide } = joint.sections[which]!;
  const entered = faceEntered(joint);
  const out = unit(squareTo(entered.normal, direction));
  const tangent = cross(direction, out);
  const inward = -dot(joint.direction, out);
  const mouth = mouthOf(solid, joint)?.ring ?? Array.from({ length: 4 }, () => joint.root);
  // The mouth's middle line: of the middles of two opposite sides, those that lie farther apart along the axis.
  const middles = mouth.map((p, k) => between(p, mouth[(k + 1) % mouth.length]!, 0.5));
  const lies = (p: Vec3): [number, number] => [measured(run, p), dot(sub(p, origin), tangent)];
  const lines = [0, 1].map((k) => [middles[k]!, middles[k + 2]!].map(lies).sort(([a], [b]) => a - b));
  const reach = (line: [number, number][]): number => line[1]![0] - line[0]![0];
  const [first, last] = (reach(lines[0]!) > reach(lines[1]!) ? lines[0]! : lines[1]!) as [
    [number, number],
    [number, number],
  ];
  const turn = Math.atan2(last[1] - first[1], last[0] - first[0]);
  const off = (first[1] + last[1]) / 2;
  const [from, to] = [first[0], last[0]];
  return {
    is: "mortise",
    face: "",
    for: joint.part,
    datum: run.datum.name,
    from: [from, from],
    to: [to, to],
    near: [off, off],
    far: [off, off],
    gaugedFrom: "",
    ...(joint.facts.through ? {} : { deep: depthOf(solid, entered) }),
    tenon: { thick: thick[1] - thick[0], wide: wide[1] - wide[0] },
    lean: {
      along: Math.atan2(dot(joint.direction, direction), inward),
      across: Math.atan2(dot(joint.direction, tangent), inward),
    },
    round: roundOf(run, zero, out),
    turn,
    ...(isMitred(joint) ? { mitred: true as const } : {}),
  };
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
