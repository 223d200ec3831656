import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Design, LengthUnit, SlatDesign } from "../../design/design.ts";
import { type PartId, partName } from "../../design/identity.ts";
import { printLength } from "../../design/units.ts";
import { height, lineMeets } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, dot, negate, squareTo, sub, unit } from "../../geometry/vec.ts";
import { attempt } from "../attempt.ts";
import type { Post, Rail, RailEnd, Side } from "../chair.ts";
import type { Fault } from "../fault.ts";
import type { Host } from "../joints/host.ts";
import { hostOf } from "../joints/hosting.ts";
import { madeOnce, type Reuse } from "../made.ts";
import { copyOf } from "../member.ts";
import { type Built, fullName, stationOn } from "./course.ts";
import { bowSign } from "./rail-curves.ts";
import type { RailFrame } from "./rail-frame.ts";
import { keepShape, shapeOf } from "./rail-outline.ts";
import { alongStick, makeStick } from "./stick.ts";

/** Slat edges and gaps depend on each other through the fan; they settle in a few rounds. */
const ROUNDS = 12;

/**
 * The slats of one row, from the first rail's first end on. Where the rails are a pair, a row stands on each side.
 * `posts` gives the posts that a rail lies over, for rows under a rail without shoulders.
 */
export function buildSlats(
  design: Design,
  slat: SlatDesign,
  { built, posts }: { built: Built; posts: (rail: Rail) => Post[] },
  faults: Fault[],
  reuse: Reuse,
): Rail[] {
  if (!slat.from || !slat.to) return [];
  const middle = fullName(design, slat.from.value, "middle") && fullName(design, slat.to.value, "middle");
  const sides: Side[] = middle ? ["middle"] : ["left", "right"];
  return sides.flatMap((side) => {
    const from = built(fullName(design, slat.from!.value, side) ?? "");
    const to = built(fullName(design, slat.to!.value, side) ?? "");
    if (from?.is !== "rail" || to?.is !== "rail") return [];
    const same = [from, to].flatMap((rail) => [rail.body, ...posts(rail).map((post) => post?.body)]);
    const given = { same, equal: [slat, side, design.units] };
    return madeOnce<Rail[]>(reuse, partName({ stem: slat.name, side }), given, {
      faults,
      make: () => row(slat, side, edgeOf(from, to, posts), edgeOf(to, from, posts), design.units, faults),
      copy: (made) => made.map((each) => copyOf(each, slat)),
    });
  });
}

/** The edge of a rail that a row of slats enters: its middle line, between the shoulders or posts at its ends. */
interface Edge {
  rail: Rail;
  /** Along the rail's straight, mm from its first shoulder. */
  from: number;
  to: number;
  /** Runs against the other rail's direction. */
  reversed: boolean;
  point: (x: number) => Vec3;
  host: (x: number) => Host;
}

function edgeOf(rail: Rail, other: Rail, posts: (rail: Rail) => Post[]): Edge {
  const shape = shapeOf(rail);
  const rises = dot(sub(other.start, rail.start), rail.upward) > 0;
  const rim = rises ? shape.top : shape.bottom;
  const point = (x: number): Vec3 =>
    along(
      along(along(rail.start, rail.along, x), rail.outward, (shape.outside(x) + shape.inside(x)) / 2),
      rail.upward,
      rim(x),
    );
  const ends = rail.ends.map((end, which) => {
    const x = which === 0 ? 0 : rail.length;
    const plane = end.shoulder ?? postFace(rail, which, posts(rail), point(x));
    return plane ? meetAlong(point, x, plane, rail.along) : x;
  });
  return { rail, from: ends[0]!, to: ends[1]!, reversed: false, point, host: (x) => hostOf(rail, x) };
}

/** The face, looking along the rail, of the post that one end of a rail lies over. */
function postFace(rail: Rail, which: number, posts: Post[], near: Vec3): Plane | undefined {
  const post = posts[which];
  return post && hostOf(post).face(which === 0 ? rail.along : negate(rail.along), near);
}

function meetAlong(point: (x: number) => Vec3, start: number, plane: Plane, direction: Vec3): number {
  let x = start;
  for (let round = 0; round < 6; round++) x -= height(plane, point(x)) / dot(plane.normal, direction);
  return x;
}

function row(
  slat: SlatDesign,
  side: Side,
  lower: Edge,
  upper: Edge,
  units: LengthUnit,
  faults: Fault[],
): Rail[] {
  upper.reversed = dot(lower.rail.along, upper.rail.along) < 0;
  const sizes = sizesOf(slat);
  if (!sizes) return [];
  const { spots, spare, span } = slat.stations
    ? { spots: givenSpots(slat, lower, upper), spare: 0, span: 0 }
    : evenSpots(slat, sizes.wide, lower, upper);
  if (spare < -1e-9) {
    const part = partName({ stem: slat.name, side });
    const [wanted, found] = [span - spare, span].map((mm) => printLength(mm, units));
    const message = sentence("fault.slats-wide", { number: spots.length, needed: wanted, found });
    faults.push({ is: "no-room", part, at: slat.count?.at ?? slat.at, message });
    return [];
  }
  return spots.flatMap(([x, y], k) => {
    const id: PartId = { stem: slat.name, ...(spots.length > 1 && { row: k + 1 }), side };
    return (
      attempt(partName(id), slat.at, faults, () =>
        buildSlat(slat, id, sizes, { edge: lower, x }, { edge: upper, x: y }, faults),
      ) ?? []
    );
  });
}

interface Sizes {
  thick: number;
  wide: number;
  round: boolean;
}

function sizesOf(slat: SlatDesign): Sizes | undefined {
  if (slat.round) return { thick: slat.round.value, wide: slat.round.value, round: true };
  return slat.section && { thick: slat.section.value.first, wide: slat.section.value.second, round: false };
}

/** A share of an edge, counted in the lower rail's direction. */
const atShare = (edge: Edge, share: number): number =>
  edge.reversed ? edge.to + (edge.from - edge.to) * share : edge.from + (edge.to - edge.from) * share;

function givenSpots(slat: SlatDesign, lower: Edge, upper: Edge): [number, number][] {
  return slat.stations!.value.map((station) => {
    const x = stationOn(lower.rail, station);
    return [x, atShare(upper, (x - lower.from) / (lower.to - lower.from))];
  });
}

/** Equal gaps on each edge by itself, those next the posts included; slats that fan take up more of an edge than their width. */
function evenSpots(
  slat: SlatDesign,
  wide: number,
  lower: Edge,
  upper: Edge,
): { spots: [number, number][]; spare: number; span: number } {
  const count = Math.max(0, Math.min(500, Math.round(slat.count?.value ?? 0)));
  let spots: [number, number][] = Array.from({ length: count }, (_, k) => {
    const share = (k + 0.5) / count;
    return [atShare(lower, share), atShare(upper, share)];
  });
  const edges = [lower, upper] as const;
  let spare = 0;
  let span = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const frames = spots.map(([x, y]) => axisOf(lower, x, upper, y));
    const places = edges.map((edge, which) => {
      const widths = frames.map((frame, k) => footprint(edge, spots[k]![which]!, frame, wide));
      const room = edge.to - edge.from - widths.reduce((a, b) => a + b, 0);
      if (which === 0 || room < spare) {
        spare = room;
        span = edge.to - edge.from;
      }
      let x = edge.reversed ? edge.to : edge.from;
      const step = edge.reversed ? -1 : 1;
      return widths.map((width) => {
        x += step * (room / (count + 1) + width / 2);
        const middle = x;
        x += (step * width) / 2;
        return middle;
      });
    });
    const next = spots.map((_, k): [number, number] => [places[0]![k]!, places[1]![k]!]);
    const moved = Math.max(
      0,
      ...next.map((spot, k) => Math.max(Math.abs(spot[0] - spots[k]![0]), Math.abs(spot[1] - spots[k]![1]))),
    );
    spots = next;
    if (moved < 1e-10) break;
  }
  return { spots, spare: count > 0 ? spare : 0, span };
}

interface Axis {
  start: Vec3;
  end: Vec3;
  direction: Vec3;
  outward: Vec3;
  /** Across the slat's width, towards the first end of the rail it starts from. */
  upward: Vec3;
}

/** Where a slat runs from one edge to the other: its middle line, its face lying with the first rail's. */
function axisOf(lower: Edge, x: number, upper: Edge, y: number): Axis {
  const start = lower.point(x);
  const end = upper.point(y);
  const direction = unit(sub(end, start));
  const { rail } = lower;
  const shape = shapeOf(rail);
  const slope = (shape.outside(x + 0.01) - shape.outside(x - 0.01)) / 0.02;
  const face = along(rail.outward, rail.along, -slope);
  const outward = unit(squareTo(face, direction));
  const across = cross(direction, outward);
  return { start, end, direction, outward, upward: dot(across, rail.along) < 0 ? across : negate(across) };
}

/** How much of an edge, along the rail's straight, a slat takes up. */
function footprint(edge: Edge, x: number, axis: Axis, wide: number): number {
  const tangent = sub(edge.point(x + 0.01), edge.point(x - 0.01));
  return wide * Math.abs(dot(tangent, edge.rail.along) / dot(tangent, axis.upward));
}

function buildSlat(
  slat: SlatDesign,
  id: PartId,
  sizes: Sizes,
  lower: { edge: Edge; x: number },
  upper: { edge: Edge; x: number },
  faults: Fault[],
): Rail | undefined {
  const { side } = id;
  const name = partName(id);
  const axis = axisOf(lower.edge, lower.x, upper.edge, upper.x);
  const hosts = [lower.edge.host(lower.x), upper.edge.host(upper.x)] as const;
  const cuts: [Plane, Plane] = [
    hosts[0].face(axis.direction, axis.start),
    hosts[1].face(negate(axis.direction), axis.end),
  ];
  const arris = sizes.round
    ? axis.start
    : along(along(axis.start, axis.outward, sizes.thick / 2), axis.upward, sizes.wide / 2);
  const start = lineMeets(cuts[0], arris, axis.direction);
  const end = lineMeets(cuts[1], arris, axis.direction);
  if (!start || !end || dot(sub(end, start), axis.direction) <= 0) return undefined;
  const frame: RailFrame = { ...axis, start, end, along: axis.direction, cuts, free: [0, Infinity], wind: 0 };
  const rise = slat.bow ? slat.bow.value.rise * bowSign(slat.bow.value.towards, side, axis.outward) : 0;
  const past = [hosts[0].fallBack(sizes.thick / 2, start), hosts[1].fallBack(sizes.thick / 2, end)] as const;
  const enters = [hosts[0].pieces, hosts[1].pieces] as const;
  const stick = makeStick(frame, { ...sizes, tapers: [], past, enters, ...(rise ? { bow: rise } : {}) });
  const ends = [slat.from!.value.name, slat.to!.value.name].map(
    (endName, which): RailEnd => ({
      name: endName,
      entered: hosts[which]!.entered,
      shoulder: cuts[which]!,
      ...stick.shoulders[which]!,
    }),
  ) as [RailEnd, RailEnd];
  for (const [which, end] of ends.entries()) {
    const found = hosts[which]!.check(end.corners, cuts[which]!);
    const common = { part: name, end: end.name, at: slat.at, towards: end.entered!.name };
    if (found.gap !== undefined) faults.push({ is: "end-reaches-nothing", ...common, gap: found.gap });
    else if (found.off > 0.05) faults.push({ is: "rail-misses-post", ...common, by: found.off });
  }
  const built: Rail = {
    is: "slat",
    id,
    name,
    side,
    design: slat,
    ...(slat.timber && { timber: slat.timber.value }),
    ends,
    start,
    end,
    along: axis.direction,
    outward: axis.outward,
    upward: axis.upward,
    thick: sizes.thick,
    wide: sizes.wide,
    length: stick.length,
    body: stick.body,
    ...alongStick(frame, stick),
  };
  if (sizes.round) built.round = sizes.thick;
  if (stick.shape.bow) {
    built.bow = rise;
    built.roundLength = stick.shape.bow.length;
  }
  return keepShape(built, stick.shape);
}
