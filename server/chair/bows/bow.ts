import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { BowDesign, LengthUnit } from "../../design/design.ts";
import { partName } from "../../design/identity.ts";
import { printLength } from "../../design/units.ts";
import { loft } from "../../geometry/body.ts";
import { flipped, lineMeets, planeAt } from "../../geometry/plane.ts";
import type { Body, Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { add, along, cross, distance, dot, scale, sub, unit } from "../../geometry/vec.ts";
import type { Bow, MemberFace, SeatSurface } from "../chair.ts";
import { facetRadius, facetsOf } from "../facets.ts";
import type { Fault } from "../fault.ts";
import { type CornerLine, cutBetween } from "../joints/stuff.ts";
import { runOn } from "../posts/run-on.ts";
import { bowPath } from "./path.ts";

/** A bow is drawn in straight stretches that turn by no more than this, radians. */
const TURN = (4 * Math.PI) / 180;
/** And strays from its curve by no more than this share of its length, 0.16 mm in 1200: a bow twice as large has the same stretches. */
const SAG = 0.16 / 1200;
/** Fewest stretches of each half. */
const FEWEST = 4;
/** Faces that turn less than this are one curved face, radians. */
const CURVE = (8 * Math.PI) / 180;

/**
 * A bow in space: a hoop on its feet in a solid seat, or an arm bow that lies by its hands. Undefined where the text leaves something out;
 * what cannot be is among the faults.
 */
export function buildBow(
  design: BowDesign,
  seat: SeatSurface | undefined,
  units: LengthUnit,
  faults: Fault[],
): Bow | undefined {
  const id = { stem: design.name, side: "middle" as const };
  const name = partName(id);
  const section = sectionOf(design);
  if (!section || !isPossible(design, name, units, faults)) return undefined;
  const path = bowPath(design);
  const place = path && placeOf(design, seat, section.ends.wide);
  if (!path || !place) return undefined;
  const { middle, rising } = place;
  const across: Vec3 = [1, 0, 0];
  const normal = cross(across, rising);
  const spot = (s: number): Vec3 => {
    const { u, v } = path.at(s);
    return along(along(middle, across, u), rising, v);
  };
  const way = (s: number): Vec3 => {
    const { du, dv } = path.at(s);
    return along(scale(across, du), rising, dv);
  };
  const sizeAt = (s: number) => {
    const share = Math.abs((2 * s) / path.length - 1);
    const mix = (crown: number, end: number) => crown + (end - crown) * share;
    return { thick: mix(section.thick, section.ends.thick), wide: mix(section.wide, section.ends.wide) };
  };
  const standing = seat && design.feet ? seat.plane : undefined;
  const stations = stationsOf(path);
  const built = bodyAlong(stations.map(spot), stations.map(sizeAt), {
    normal,
    round: section.round,
    first: standing ?? planeAt(spot(0), way(0)),
    last: standing ? flipped(standing) : planeAt(spot(path.length), way(path.length)),
  });
  if (!built) return undefined;
  return {
    is: "bow",
    id,
    name,
    side: "middle",
    design,
    ...(design.timber && { timber: design.timber.value }),
    path,
    spot,
    way,
    normal,
    sizeAt,
    ...(section.round && { round: section.thick }),
    body: built,
    centreLine: stations.map(spot),
    grain: across,
    faces: section.round
      ? []
      : facesOf(spot(path.length / 2), { rising, normal, thick: section.thick, wide: section.wide }),
  };
}

function facesOf(
  crown: Vec3,
  { rising, normal, thick, wide }: { rising: Vec3; normal: Vec3; thick: number; wide: number },
): MemberFace[] {
  const [above, under] =
    Math.abs(normal[2]) > Math.SQRT1_2 ? (["top", "bottom"] as const) : (["back", "front"] as const);
  const sign = (above === "top" ? normal[2] : normal[1]) < 0 ? -1 : 1;
  const face = (name: MemberFace["name"], out: Vec3, by: number): MemberFace => ({
    name,
    plane: planeAt(along(crown, out, by), out),
  });
  return [
    face("outside", rising, thick / 2),
    face("inside", scale(rising, -1), thick / 2),
    face(above, scale(normal, sign), wide / 2),
    face(under, scale(normal, -sign), wide / 2),
  ];
}

interface Sizes {
  thick: number;
  wide: number;
  round: boolean;
  ends: { thick: number; wide: number };
}

function sectionOf({ round, section, tapers }: BowDesign): Sizes | undefined {
  const [thick, wide] = round ? [round.value, round.value] : [section?.value.first, section?.value.second];
  if (thick === undefined || wide === undefined) return undefined;
  const end = tapers[0]?.value;
  return {
    thick,
    wide,
    round: round !== undefined,
    ends: end ? { thick: end.first, wide: round ? end.first : end.second } : { thick, wide },
  };
}

/** Tells what no line can have. */
function isPossible(design: BowDesign, part: string, units: LengthUnit, faults: Fault[]): boolean {
  const { wide, rise, lie } = design;
  const length = (mm: number) => printLength(mm, units);
  const no = (at: Fault["at"], message: string): false => {
    faults.push({ is: "no-room", part, at, message });
    return false;
  };
  if (wide && rise && wide.value.at >= rise.value)
    return no(
      wide.at,
      sentence("fault.bow-widest", {
        at: length(wide.value.at),
        rise: length(rise.value),
        less: length(rise.value * 0.4),
      }),
    );
  if (lie && rise && Math.abs(lie.value.fall) >= rise.value)
    return no(
      lie.at,
      sentence("fault.bow-falls", {
        fall: length(lie.value.fall),
        rise: length(rise.value),
        less: length(rise.value / 2),
      }),
    );
  return true;
}

/** The middle between its ends and the way it rises from there. */
function placeOf(
  design: BowDesign,
  seat: SeatSurface | undefined,
  endWide: number,
): { middle: Vec3; rising: Vec3 } | undefined {
  if (design.feet) {
    const { out, back } = design.feet.value;
    const foot = seat?.plan && lineMeets(seat.plane, [out, back, 0], [0, 0, 1]);
    const rake = design.rake?.value ?? 0;
    return foot && { middle: [0, foot[1], foot[2]], rising: [0, Math.sin(rake), Math.cos(rake)] };
  }
  const [hands, lie, rise] = [design.hands?.value, design.lie?.value, design.rise?.value];
  if (!hands || !lie || rise === undefined) return undefined;
  const sine = lie.fall / rise;
  const rising: Vec3 = [0, Math.sqrt(1 - sine * sine), -sine];
  // The top face lies half the width above the centre line, plumb.
  return { middle: [0, hands.back, lie.up - endWide / 2 / rising[1]], rising };
}

/** Places along it between which it turns by little; its widest and its crown among them. */
function stationsOf(path: Bow["path"]): number[] {
  const half = path.length / 2;
  const firm = [0, ...(path.bend > 0 ? [path.bend] : []), half];
  const left = firm.slice(1).flatMap((to, k) => {
    const from = firm[k]!;
    const [a, b] = [path.at(from), path.at(to)];
    const turned = Math.acos(Math.min(1, Math.max(-1, a.du * b.du + a.dv * b.dv)));
    // Of a chord, the square of its length over eight times the radius.
    const fair = Math.sqrt(((to - from) * turned) / (8 * SAG * path.length));
    const count = Math.max(FEWEST, Math.ceil(turned / TURN), Math.ceil(fair));
    return stepsOf(from, to, count, (s) => path.radiusAt(s));
  });
  const all = [...left, half];
  return [
    ...all,
    ...all
      .slice(0, -1)
      .reverse()
      .map((s) => path.length - s),
  ];
}

/** Places that divide a stretch so that each part turns alike: near together where it bends most. */
function stepsOf(from: number, to: number, count: number, radius: (s: number) => number): number[] {
  const FINE = 200;
  const turns = [0];
  for (let k = 0; k < FINE; k++) {
    const s = from + ((to - from) * (k + 0.5)) / FINE;
    turns.push(turns[k]! + (to - from) / FINE / Math.min(radius(s), 1e5));
  }
  const whole = turns[FINE]!;
  return Array.from({ length: count }, (_, k) => {
    const wanted = (whole * k) / count;
    const at = Math.max(
      1,
      turns.findIndex((turn) => turn >= wanted),
    );
    const share = k === 0 ? 0 : (wanted - turns[at - 1]!) / (turns[at]! - turns[at - 1]!);
    return from + ((to - from) * (at - 1 + share)) / FINE;
  }).map((s, k) => (k === 0 ? from : s));
}

interface Along {
  normal: Vec3;
  round: boolean;
  /** The planes that end it, looking along it. */
  first: Plane;
  last: Plane;
}

/** Stuff along a line in one plane, in straight stretches that meet on the planes that halve their corners. */
function bodyAlong(
  spots: readonly Vec3[],
  sizes: readonly { thick: number; wide: number }[],
  { normal, round, first, last }: Along,
): Body | undefined {
  const pieces: Convex[] = [];
  const rings: [Vec3[], Vec3[]][] = [];
  const facets = facetsOf(Math.max(...sizes.map(({ thick }) => thick / 2)));
  const runs = spots.slice(1).map((to, k) => unit(sub(to, spots[k]!)));
  let joined: Vec3[] | undefined;
  for (const [k, run] of runs.entries()) {
    const [from, to] = [spots[k]!, spots[k + 1]!];
    const out = cross(run, normal);
    const corners = (at: Vec3, { thick, wide }: { thick: number; wide: number }): Vec3[] =>
      round
        ? roundRing(at, out, normal, thick / 2, facets)
        : squareRing(at, out, normal, thick / 2, wide / 2);
    const [a, b] = [corners(from, sizes[k]!), corners(to, sizes[k + 1]!)];
    const own = a.map((p, c): CornerLine => [p, b[c]!]);
    const low = k === 0 ? first : planeAt(from, add(runs[k - 1]!, run));
    const high = k === runs.length - 1 ? last : planeAt(to, add(run, runs[k + 1]!));
    const cut = cutBetween(joined ? runOn(own, joined) : own, low, high, joined);
    if (!cut) return undefined;
    joined = cut.whole ? cut.end : undefined;
    pieces.push(cut.solid);
    rings.push([cut.start, cut.end]);
  }
  return loft(pieces, rings, { round, smoothBelow: CURVE });
}

/** Anticlockwise seen from ahead, whichever way the plane's normal looks. */
function roundRing(at: Vec3, out: Vec3, normal: Vec3, radius: number, facets: number): Vec3[] {
  const r = facetRadius(radius, facets);
  return Array.from({ length: facets }, (_, k) => {
    const angle = (2 * Math.PI * k) / facets;
    return along(along(at, normal, r * Math.cos(angle)), out, r * Math.sin(angle));
  });
}

const squareRing = (at: Vec3, out: Vec3, normal: Vec3, thick: number, wide: number): Vec3[] => {
  const corner = (o: number, n: number) => along(along(at, out, o), normal, n);
  return [corner(thick, -wide), corner(thick, wide), corner(-thick, wide), corner(-thick, -wide)].reverse();
};

/** How far a line passes the centre line of a bow: the place along it, the distance, and the point of the line. */
export function nearestOnBow(bow: Bow, from: Vec3, direction: Vec3): { s: number; off: number; at: Vec3 } {
  const offAt = (s: number) => {
    const p = sub(bow.spot(s), from);
    const t = dot(p, direction);
    return { s, off: distance(p, scale(direction, t)), at: along(from, direction, t) };
  };
  const STEPS = 60;
  const coarse = Array.from({ length: STEPS + 1 }, (_, k) => offAt((bow.path.length * k) / STEPS));
  let best = coarse.reduce((least, each) => (each.off < least.off ? each : least));
  let step = bow.path.length / STEPS;
  while (step > 1e-7) {
    const [low, high] = [Math.max(0, best.s - step), Math.min(bow.path.length, best.s + step)];
    const near = [offAt(low), offAt(high)].reduce((a, b) => (b.off < a.off ? b : a));
    if (near.off < best.off) best = near;
    else step /= 2;
  }
  return best;
}

/** Places at which the tightest bend is looked for. */
const BENDS = 2000;

/** The tightest radius of its inside face, mm. */
export function tightestOf({ path, sizeAt }: Pick<Bow, "path" | "sizeAt">): number {
  const inside = (s: number) => path.radiusAt(s) - sizeAt(s).thick / 2;
  return Math.min(...Array.from({ length: BENDS + 1 }, (_, k) => inside((path.length * k) / 2 / BENDS)));
}
