/**
 * Mortises and holes set out on the laid-open faces of a squared stick.
 */
import type { Joint } from "../../chair/chair.ts";
import { height, lineMeets } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { add, cross, distance, dot, negate, norm, scale, squareTo, sub, unit } from "../../geometry/vec.ts";
import { pegsOf } from "../pegs.ts";
import type { LaidStick } from "./lay.ts";
import { depthOf, faceEntered, isMitred, mouthOf } from "./mouths.ts";
import type { Ends, Mark, Mortise } from "./piece.ts";
import { measured, type Run, runAt } from "./runs.ts";
import { gaugeOf, type SquaredStick } from "./squared.ts";
import { place } from "./strip.ts";

/** A mitred tenon that ends this near to the far face comes out there, mm. */
const SHOWS = 0.5;
/** A mouth stands off its face by no more than this: curves are made of flats, mm. */
const OFF = 0.5;

/** A mortise before it has its letter: what is drawn of it waits for that too. */
interface SetOut {
  mortise: Omit<Mortise, "letter">;
  face: number;
  /** On the page, to be put in order. */
  x: number;
  draw(letter: string): { face: number; mark: Mark }[];
}

interface Place {
  stick: SquaredStick;
  laid: LaidStick;
  runs: readonly Run[];
  face: number;
  stretch: number;
}

/** Everything one joint wants cut in the stick; nothing when its mouth lies on none of the faces. */
export function setOut(stick: SquaredStick, laid: LaidStick, runs: readonly Run[], joint: Joint): SetOut[] {
  const entered = faceEntered(joint);
  const found = whereIs(stick, joint.root, entered);
  if (!found) return [];
  const at: Place = { stick, laid, runs, ...found };
  const round = joint.shape === "round";
  const mortises = joint.tenon.flatMap((solid, which) => {
    const mouth = mouthOf(solid, joint);
    if (!mouth) return [];
    return round
      ? hole(at, joint, middleOf(mouth.ring), boreDepth(solid, middleOf(mouth.ring), joint.direction))
      : slot(at, joint, which, mouth.ring, depthOf(solid, entered));
  });
  return [...mortises, ...pegHoles(at, joint)];
}

/** The face and stretch that a point lies on, by the plane of the face entered. */
function whereIs(
  stick: SquaredStick,
  root: Vec3,
  entered: Plane,
): { face: number; stretch: number } | undefined {
  let best: { face: number; stretch: number; off: number } | undefined;
  for (const [stretch, { planes, solid, direction }] of stick.stretches.entries()) {
    const reach = solid.points.map((p) => dot(p, direction));
    const x = dot(root, direction);
    const beyond = Math.max(0, Math.min(...reach) - x, x - Math.max(...reach));
    for (const [face, plane] of planes.entries()) {
      if (dot(plane.normal, entered.normal) < 0.9 || Math.abs(height(plane, root)) > OFF) continue;
      const off = beyond + (1 - dot(plane.normal, entered.normal));
      if (!best || off < best.off) best = { face, stretch, off };
    }
  }
  return best && { face: best.face, stretch: best.stretch };
}

/** One of a joint's mortises; a haunch lies beside the uppermost, which is the first. */
function slot(at: Place, joint: Joint, which: number, ring: readonly Vec3[], deep: number): SetOut[] {
  const corners = corneredBy(at, joint, ring);
  if (!corners) return [];
  const haunch = which === 0 ? haunchOf(at, joint) : undefined;
  // A fork goes over all of what it meets; what is mitred may end before it is through.
  const isOpen = joint.facts.through !== undefined || joint.shape === "forked";
  const exit = isOpen && (!isMitred(joint) || deep > joint.depthThere - SHOWS);
  const mortise: SetOut["mortise"] = {
    ...common(at, joint, which),
    is: "mortise",
    ...endsOf(corners),
    ...(exit ? { exit: exitOf(at, joint, ring) } : { deep }),
    ...(haunch ? { haunch: haunch.sizes } : {}),
    ...(isMitred(joint) ? { mitred: true as const } : {}),
  };
  return [
    {
      mortise,
      face: at.face,
      x: spotOf(at, ring[0]!)[0],
      draw: (letter) => [
        { face: at.face, mark: ringMark(at, "mortise", ring, letter) },
        ...(haunch ? [{ face: at.face, mark: ringMark(at, "haunch-mortise", haunch.ring) }] : []),
        ...(exit ? exitMarks(at, joint, ring) : []),
      ],
    },
  ];
}

interface Gauged {
  along: number;
  gauge: number;
}

type Corners = [Gauged, Gauged, Gauged, Gauged];

/** Where it starts and ends on both sides, and both sides at its start and its end. */
const endsOf = ([nearLow, nearHigh, farLow, farHigh]: Corners) => ({
  from: [nearLow.along, farLow.along] as Ends,
  to: [nearHigh.along, farHigh.along] as Ends,
  near: [nearLow.gauge, nearHigh.gauge] as Ends,
  far: [farLow.gauge, farHigh.gauge] as Ends,
});

/** A through mortise on the face where it comes out. */
function exitOf(at: Place, joint: Joint, ring: readonly Vec3[]): Mortise["exit"] {
  const { face, out } = exitRing(at, joint, ring);
  const corners = corneredBy({ ...at, face }, joint, out);
  return corners && { face: at.stick.names[face as 0], ...endsOf(corners) };
}

function exitRing(at: Place, joint: Joint, ring: readonly Vec3[]): { face: number; out: Vec3[] } {
  const face = (at.face + 2) % 4;
  const plane = at.stick.stretches[at.stretch]!.planes[face as 0];
  return { face, out: ring.map((p) => lineMeets(plane, p, joint.direction) ?? p) };
}

/** A mouth's corners on the near and the far side of the gauge, each at the low and the high end; undefined unless it has four. */
function corneredBy(at: Place, joint: Joint, ring: readonly Vec3[]): Corners | undefined {
  if (ring.length !== 4) return undefined;
  const { direction } = at.stick.stretches[at.stretch]!;
  const [lengthwise, crosswise] =
    Math.abs(dot(joint.acrossWide, direction)) >= Math.abs(dot(joint.acrossThick, direction))
      ? [joint.acrossWide, joint.acrossThick]
      : [joint.acrossThick, joint.acrossWide];
  const sorted = (some: readonly Vec3[], by: Vec3) => [...some].sort((a, b) => dot(a, by) - dot(b, by));
  const [a, b, c, d] = sorted(ring, crosswise);
  const sides = [
    [a!, b!],
    [c!, d!],
  ]
    .map((side) => sorted(side, lengthwise).map((p) => gauged(at, p)))
    .map((side) => (side[0]!.along <= side[1]!.along ? side : side.reverse()))
    .sort((one, other) => one[0]!.gauge + one[1]!.gauge - other[0]!.gauge - other[1]!.gauge);
  return [sides[0]![0]!, sides[0]![1]!, sides[1]![0]!, sides[1]![1]!];
}

/** A point on the face: along the stick from its run's datum, and square from the arris that the gauge runs on. */
function gauged({ stick, runs, face, stretch }: Place, point: Vec3): Gauged {
  const { planes } = stick.stretches[beside(stick, stretch, point)]!;
  const own = planes[face as 0].normal;
  const edge = planes[gaugeOf(stick, face) as 0];
  return {
    along: measured(runAt(runs, stretch), point),
    gauge: -height(edge, point) / norm(cross(own, edge.normal)),
  };
}

/** The stretch a point lies beside: along a curve the gauge follows it from flat to flat. */
function beside({ stretches }: SquaredStick, stretch: number, point: Vec3): number {
  const { curved, direction } = stretches[stretch]!;
  if (!curved) return stretch;
  const x = dot(point, direction);
  const off = stretches.map(({ solid }) => {
    const reach = solid.points.map((p) => dot(p, direction));
    return Math.max(0, Math.min(...reach) - x, x - Math.max(...reach));
  });
  return off.indexOf(Math.min(...off));
}

/** How deep a bit goes along its own line, whose hole is square to itself: to the deepest of a tenon that ends along the face. */
const boreDepth = ({ points }: Convex, mouth: Vec3, into: Vec3): number =>
  Math.max(...points.map((p) => dot(sub(p, mouth), into)));

function hole(at: Place, joint: Joint, middle: Vec3, deep: number): SetOut[] {
  const spot = gauged(at, middle);
  const mortise: SetOut["mortise"] = {
    ...common(at, joint),
    is: "hole",
    from: [spot.along, spot.along],
    to: [spot.along, spot.along],
    near: [spot.gauge, spot.gauge],
    far: [spot.gauge, spot.gauge],
    diameter: joint.thick,
    ...(joint.facts.through ? {} : { deep }),
  };
  const x = spotOf(at, middle)[0];
  return [{ mortise, face: at.face, x, draw: (letter) => holeMark(at, middle, joint.thick, letter) }];
}

const middleOf = (ring: readonly Vec3[]): Vec3 => scale(ring.reduce(add), 1 / ring.length);

function common(at: Place, joint: Joint, which = 0) {
  const { thick, wide } = joint.sections[which] ?? joint.sections[0]!;
  const { stick, runs, face, stretch } = at;
  return {
    face: stick.names[face as 0],
    for: joint.part,
    datum: runAt(runs, stretch).datum.name,
    gaugedFrom: stick.names[gaugeOf(stick, face) as 0],
    tenon: { thick: thick[1] - thick[0], wide: wide[1] - wide[0] },
    lean: leanIn(at, joint.direction),
  };
}

/** How far a direction into the stick leans from square to the face, as that lies there: on a taper or a curve it is the face that counts. */
function leanIn({ stick, face, stretch }: Place, into: Vec3): Mortise["lean"] {
  const { planes, direction } = stick.stretches[stretch]!;
  const { normal } = planes[face as 0];
  const lengthwise = unit(squareTo(direction, normal));
  const across = cross(normal, lengthwise);
  const gauge = planes[gaugeOf(stick, face) as 0].normal;
  const away = dot(across, gauge) < 0 ? across : negate(across);
  const inward = -dot(into, normal);
  return {
    along: Math.atan2(dot(into, lengthwise), inward),
    across: Math.atan2(dot(into, away), inward),
  };
}

/** The haunch's socket beside the mortise, by its corners as the mortise has them. */
function haunchOf(at: Place, joint: Joint) {
  const mouth = joint.haunch && mouthOf(joint.haunch, joint);
  const corners = mouth && corneredBy(at, joint, mouth.ring);
  if (!mouth || !corners) return undefined;
  const deep = depthOf(joint.haunch!, faceEntered(joint));
  const sloped = joint.facts.haunch?.value.sloped === true;
  return { ring: mouth.ring, sizes: { ...endsOf(corners), deep, sloped } };
}

/** Pegs are bored from the face side or face edge where they cross it, else from the first face they come to. */
function pegHoles(at: Place, joint: Joint): SetOut[] {
  const pegs = pegsOf(joint);
  if (!pegs) return [];
  const { stick, stretch } = at;
  const { planes } = stick.stretches[stretch]!;
  const crossing = [0, 1, 2, 3].filter((k) => Math.abs(dot(planes[k as 0].normal, joint.acrossThick)) > 0.7);
  const face = crossing.find((k) => k === stick.side || k === stick.edge) ?? crossing[0];
  if (face === undefined) return [];
  const on: Place = { ...at, face };
  return pegs.middles.flatMap((middle) => {
    const point = lineMeets(planes[face as 0], middle, joint.acrossThick);
    if (!point) return [];
    const spot = gauged(on, point);
    const inward = dot(joint.acrossThick, planes[face as 0].normal) < 0 ? 1 : -1;
    const mortise: SetOut["mortise"] = {
      ...common(on, joint),
      is: "peg",
      from: [spot.along, spot.along],
      to: [spot.along, spot.along],
      near: [spot.gauge, spot.gauge],
      far: [spot.gauge, spot.gauge],
      diameter: pegs.diameter,
      tenon: { thick: pegs.diameter, wide: pegs.diameter },
      ...pegDepth(on, point, scale(joint.acrossThick, inward), pegs.diameter, joint.thick, middle),
      lean: leanIn(on, scale(joint.acrossThick, inward)),
    };
    const x = spotOf(on, point)[0];
    return [{ mortise, face, x, draw: (letter: string) => holeMark(on, point, pegs.diameter, letter) }];
  });
}

/** Wood that is left under a peg's hole at the least: with less it is bored right through, mm. */
const UNDER = 5;

/** A peg's hole goes a diameter on into the wood behind the tenon, by common practice; right through where little would be left. */
function pegDepth(
  { stick, face, stretch }: Place,
  from: Vec3,
  into: Vec3,
  diameter: number,
  thick: number,
  middle: Vec3,
): Pick<Mortise, "deep"> {
  const own = stick.stretches[stretch]!.planes[face as 0];
  const far = lineMeets(stick.stretches[stretch]!.planes[((face + 2) % 4) as 0], from, into);
  const square = (length: number) => -length * dot(into, own.normal);
  const deep = square(distance(from, middle) + thick / 2 + diameter);
  const whole = far ? square(distance(from, far)) : deep;
  return deep + UNDER > whole ? {} : { deep };
}

const panelAt = ({ laid, face, stretch }: Place): number => laid.panelOf(face, stretch);

const spotOf = (at: Place, point: Vec3) => place(at.laid.faces[at.face]!.panels[panelAt(at)]!, point);

function ringMark(at: Place, is: Mark["is"], ring: readonly Vec3[], letter?: string): Mark {
  const panel = panelAt(at);
  return {
    is,
    spots: ring.map((p) => spotOf(at, p)),
    closed: true,
    panels: ring.map(() => panel),
    ...(letter === undefined ? {} : { letter }),
  };
}

function holeMark(at: Place, point: Vec3, diameter: number, letter: string) {
  const mark: Mark = { is: "hole", spots: [spotOf(at, point)], panels: [panelAt(at)], diameter, letter };
  return [{ face: at.face, mark }];
}

/** Where a through mortise comes out on the face opposite. */
function exitMarks(at: Place, joint: Joint, ring: readonly Vec3[]) {
  const { face, out } = exitRing(at, joint, ring);
  return [{ face, mark: ringMark({ ...at, face }, "exit", out) }];
}

/** Letters in the order of the stick: A to Z, then AA. */
export function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last;
}
