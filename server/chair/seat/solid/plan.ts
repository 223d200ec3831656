import type { Span } from "../../../../grammar/problem.ts";
import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { LengthUnit } from "../../../design/design.ts";
import type { SolidSeatDesign } from "../../../design/solid-seat-design.ts";
import { printLength } from "../../../design/units.ts";
import { type Corner, cornerBetween } from "./corner.ts";
import { centreOf, type EndEdge, edgeThrough, onEdge, type Spot } from "./edge.ts";
import { ringOf } from "./ring.ts";
import { sideThrough } from "./side.ts";
import type { Curve } from "./spline.ts";

/** A seat's outline in its top face. */
export interface SeatPlan {
  /** Its half out from the middle line, from the middle of the front edge to the middle of the back edge: no step turns by much. */
  half: Spot[];
  /** The whole of it, anticlockwise from the front. */
  ring: Spot[];
  /** The half without a tail. */
  bare: Spot[];
  /** Where the front edge ends on the left, at the corner's arc; none of a round seat. */
  frontCorner?: Spot;
  /** Along the middle, without a tail. */
  deep: number;
  /** Its width by the distance behind the front edge, between the first and the last station; of a round one everywhere. */
  widthAt(at: number): number;
  /** The first and the last station; none of a round one. */
  stations?: { first: number; last: number };
  widest: number;
}

/** What keeps a text from having an outline, or a corner from being round, on its own place. */
export interface PlanTrouble {
  at: Span;
  message: string;
}

/**
 * Outlines are drawn in chords that stray from the curve by no more than this share of the seat's depth, 0.03 mm in 400 mm: a seat twice
 * as large has the same corners.
 */
const STRAY = 0.03 / 400;
/** No stretch of a side is halved that is shorter than this share of the depth. */
const SHORTEST = 1 / 400;
/** Steps over which the widest place is looked for. */
const SEARCH = 400;

/** The outline that the text gives; `troubles` tells what could not be had, and without a whole outline there is none. */
export function planOf(
  solid: SolidSeatDesign,
  at: Span,
  units: LengthUnit,
  troubles: PlanTrouble[],
): SeatPlan | undefined {
  if (solid.round) return roundPlan(solid.round.value);
  const deep = solid.deep?.value;
  if (deep === undefined || !isInOrder(solid, at, deep, units, troubles)) return undefined;
  const widths = solid.widths.map(({ value }) => value);
  const [first, last] = [widths[0]!, widths[widths.length - 1]!];
  const side = sideThrough(widths);
  const front = edgeThrough(-1, 0, first.wide / 2, first.at);
  const back = edgeThrough(1, deep, last.wide / 2, deep - last.at);
  const length = (mm: number) => printLength(mm, units);
  for (const [edge, width] of [
    [front, solid.widths[0]!],
    [back, solid.widths[solid.widths.length - 1]!],
  ] as const) {
    const rise = edge === front ? first.at : deep - last.at;
    if (rise <= edge.half) continue;
    const which = edge === front ? "front" : "back";
    troubles.push({
      at: width.at,
      message: sentence("fault.seat-edge", {
        edge: which,
        rise: length(rise),
        across: length(2 * edge.half),
        most: length(edge.half),
      }),
    });
    return undefined;
  }
  const steps = Array.from({ length: SEARCH + 1 }, (_, k) => first.at + ((last.at - first.at) * k) / SEARCH);
  if (steps.some((s) => side.at(s) <= 0)) {
    troubles.push({
      at: solid.widths[0]!.at,
      message: sentence("fault.seat-widths-nothing"),
    });
    return undefined;
  }
  const corner = (edge: EndEdge, from: number, to: number, radius: number, name: string): Corner => {
    const found = cornerBetween(edge, side, from, to, radius);
    if (found) return found;
    const most = mostOf(radius, (r) => cornerBetween(edge, side, from, to, r) !== undefined);
    troubles.push({
      at: solid.corner?.at ?? at,
      message: sentence("fault.seat-corner", { which: name, radius: length(radius), most: length(most) }),
    });
    return cornerBetween(edge, side, from, to, most) ?? cornerBetween(edge, side, from, to, 0)!;
  };
  const radii = solid.corner?.value ?? { front: 0, back: 0 };
  const middle = (first.at + last.at) / 2;
  const fore = corner(front, first.at, radii.back > 0 ? middle : last.at, radii.front, "front");
  const aft = corner(back, last.at, radii.front > 0 ? middle : first.at, radii.back, "back");
  const tail = tailOf(solid, aft, units, troubles);
  const stray = STRAY * deep;
  const begun = [
    ...edgeSpots(front, 0, fore.onEdge[0], stray),
    ...arcSpots(fore, fore.onEdge, fore.onSide, stray),
    ...sideSpots(side, fore.onSide[1], aft.onSide[1], solid, deep),
    ...arcSpots(aft, aft.onSide, aft.onEdge, stray),
  ];
  const bare = apart([...begun, ...edgeSpots(back, 0, aft.onEdge[0], stray).reverse()]);
  const half = [
    ...begun,
    ...edgeSpots(back, tail ? tail.wide / 2 : 0, aft.onEdge[0], stray).reverse(),
    ...(tail
      ? ([
          [tail.wide / 2, deep + tail.long],
          [0, deep + tail.long],
        ] as Spot[])
      : []),
  ];
  return {
    half: apart(half),
    ring: ringOf(apart(half)),
    bare,
    frontCorner: fore.onEdge,
    deep,
    widthAt: (s) => 2 * side.at(s),
    stations: { first: first.at, last: last.at },
    widest: 2 * Math.max(...steps.map((s) => side.at(s))),
  };
}

function isInOrder(
  solid: SolidSeatDesign,
  at: Span,
  deep: number,
  units: LengthUnit,
  troubles: PlanTrouble[],
): boolean {
  const length = (mm: number) => printLength(mm, units);
  if (solid.widths.length < 2) {
    const message = sentence("fault.seat-two-widths", {
      one: length(deep / 40),
      other: length((deep * 7) / 8),
    });
    troubles.push({ at: solid.widths[0]?.at ?? at, message });
    return false;
  }
  for (const [k, { value, at: place }] of solid.widths.entries()) {
    const before = solid.widths[k - 1]?.value;
    if (before && value.at <= before.at) {
      const message = sentence("fault.seat-widths-order", {
        at: length(value.at),
        before: length(before.at),
      });
      troubles.push({ at: place, message });
      return false;
    }
  }
  const last = solid.widths[solid.widths.length - 1]!;
  if (last.value.at > deep) {
    const message = sentence("fault.seat-last-width", { at: length(last.value.at), deep: length(deep) });
    troubles.push({ at: last.at, message });
    return false;
  }
  return true;
}

/** The tail where the back edge is wide enough for it. */
function tailOf(
  { tail }: SolidSeatDesign,
  aft: Corner,
  units: LengthUnit,
  troubles: PlanTrouble[],
): { wide: number; long: number } | undefined {
  if (!tail || tail.value.wide <= 2 * aft.onEdge[0]) return tail?.value;
  const [found, most] = [tail.value.wide, 2 * aft.onEdge[0]].map((mm) => printLength(mm, units));
  troubles.push({
    at: tail.at,
    message: sentence("fault.seat-tail", { found, most }),
  });
  return undefined;
}

function roundPlan(diameter: number): SeatPlan {
  const r = diameter / 2;
  const count = Math.ceil(Math.PI / stepFor(r, STRAY * diameter));
  const half = Array.from({ length: count + 1 }, (_, k): Spot => {
    const angle = (Math.PI * k) / count;
    return [k === count ? 0 : r * Math.sin(angle), r - r * Math.cos(angle)];
  });
  const widthAt = (s: number) => 2 * Math.sqrt(Math.max(0, s * (diameter - s)));
  return { half, ring: ringOf(half), bare: half, deep: diameter, widthAt, widest: diameter };
}

/** The angle by which an arc of that radius may turn at each chord that strays so far from it, radians. */
const stepFor = (radius: number, stray: number): number =>
  2 * Math.acos(Math.max(0, 1 - stray / Math.max(radius, stray)));

/** Points of an end edge from one distance out to another, both of them in it. */
function edgeSpots(edge: EndEdge, from: number, to: number, stray: number): Spot[] {
  if (edge.radius === undefined) return [onEdge(edge, from), onEdge(edge, to)];
  const angles = [from, to].map((x) => Math.asin(Math.min(1, x / edge.radius!)));
  const centre = centreOf(edge);
  return turns(angles[0]!, angles[1]!, edge.radius, stray).map((a) => [
    edge.radius! * Math.sin(a),
    centre + edge.way * edge.radius! * Math.cos(a),
  ]);
}

/** Points of a corner's arc between the two where it touches. */
function arcSpots({ centre, radius }: Corner, from: Spot, to: Spot, stray: number): Spot[] {
  if (radius === 0) return [from];
  const angle = ([x, y]: Spot) => Math.atan2(y - centre[1], x - centre[0]);
  return turns(angle(from), angle(to), radius, stray).map((a) => [
    centre[0] + radius * Math.cos(a),
    centre[1] + radius * Math.sin(a),
  ]);
}

function turns(from: number, to: number, radius: number, stray: number): number[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / stepFor(radius, stray) - 1e-9));
  return Array.from({ length: count + 1 }, (_, k) => from + ((to - from) * k) / count);
}

/** Points of a side: its stations, and between them as many as keep the chords near the curve. */
function sideSpots(side: Curve, from: number, to: number, { widths }: SolidSeatDesign, deep: number): Spot[] {
  const inner = widths.map(({ value }) => value.at).filter((s) => s > from + 1e-6 && s < to - 1e-6);
  const firm = [from, ...inner, to];
  return firm.flatMap((s, k): Spot[] => {
    const next = firm[k + 1];
    if (next === undefined) return [[side.at(s), s]];
    return [[side.at(s), s], ...between(side, s, next, deep)];
  });
}

/** Halves a stretch until its chord lies near enough to the curve. */
function between(side: Curve, from: number, to: number, deep: number): Spot[] {
  const middle = (from + to) / 2;
  const off = Math.max(
    ...[0.25, 0.5, 0.75].map((t) => {
      const s = from + (to - from) * t;
      return Math.abs(side.at(s) - (side.at(from) * (1 - t) + side.at(to) * t));
    }),
  );
  if (off <= STRAY * deep || to - from < SHORTEST * deep) return [];
  return [
    ...between(side, from, middle, deep),
    [side.at(middle), middle],
    ...between(side, middle, to, deep),
  ];
}

/** Without points that fall together. */
const apart = (spots: readonly Spot[]): Spot[] =>
  spots.filter((spot, k) => {
    const before = spots[k - 1];
    return !before || Math.hypot(spot[0] - before[0], spot[1] - before[1]) > 1e-6;
  });

/** The greatest of the figures up to one that will do; 0 where none does. */
function mostOf(figure: number, does: (figure: number) => boolean): number {
  let [good, bad] = [0, figure];
  for (let k = 0; k < 30; k++) {
    const middle = (good + bad) / 2;
    if (does(middle)) good = middle;
    else bad = middle;
  }
  return Math.floor(good * 10) / 10;
}
