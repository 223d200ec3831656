import type { SeatDesign } from "../../design/design.ts";
import { dropOnto } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { add, along, between, cross, dot, scale, sub, unit } from "../../geometry/vec.ts";
import type { Rail } from "../chair.ts";
import { shapeOf } from "../rails/rail-outline.ts";
import type { SeatFrame } from "./seat-frame.ts";
import type { SeatOutline } from "./seat-layer.ts";

/** How far over its rails a seat reaches: to a face or the middle of their thickness; or past the inside face by a distance of each rail's own, mm. */
export type Reach = "inside" | "middle" | "outside" | ((rail: Rail) => number);

/** A straight edge of the seat: a point and a direction in its plane. */
interface EdgeLine {
  at: Vec3;
  run: Vec3;
}

/** Points of a bowed edge between its ends. */
const CURVE = 12;

/** The outline over (or within) the rails, with the overhang; undefined when the edges do not close. */
export function outlineOf(
  seat: Pick<SeatDesign, "overhang">,
  frame: SeatFrame,
  plane: Plane,
  reach: Reach,
): SeatOutline | undefined {
  const over = reach === "outside" ? seat.overhang?.value : undefined;
  const back = cross(plane.normal, [1, 0, 0]);
  const pick = (rails: readonly Rail[]) =>
    rails.flatMap((rail) => [edgeAt(rail, 0, reach), edgeAt(rail, 1, reach)]);
  const flat = (points: readonly Vec3[]) => points.map((p) => dropOnto(plane, p));
  const sides = [...frame.sides].sort((a, b) => middleX(b) - middleX(a));
  const sideEnds = flat(pick(sides));
  const crossEnds = flat([...pick(frame.front), ...pick(frame.back)]);
  const front = acrossLine(flat(pick(frame.front)), sideEnds, -1, over?.front ?? 0, back);
  const rear = acrossLine(flat(pick(frame.back)), sideEnds, 1, over?.back ?? 0, back);
  const left = sideLine(flat(pick(sides.slice(0, 1))), crossEnds, 1, over?.out ?? 0, back);
  const right = sideLine(flat(pick(sides.slice(-1))), crossEnds, -1, over?.out ?? 0, back);
  if (!front || !rear || !left || !right) return undefined;
  const corners = [
    meet(front, left, plane),
    meet(rear, left, plane),
    meet(rear, right, plane),
    meet(front, right, plane),
  ];
  const [fl, bl, br, fr] = corners;
  if (!fl || !bl || !br || !fr) return undefined;
  const bowed = [frame.front, frame.back].some((rails) => isBowed(rails));
  const count = bowed ? CURVE : 1;
  const edge = (from: Vec3, to: Vec3, rails: readonly Rail[]) =>
    bowed && typeof reach === "function"
      ? followed(from, to, rails, plane, reach)
      : curve(from, to, rails, plane, count);
  const fore = edge(fl, fr, frame.front);
  const aft = edge(bl, br, frame.back);
  const cells = fore.slice(1).map((to, k) => [fore[k]!, aft[k]!, aft[k + 1]!, to]);
  return { ring: ringOf(fore, aft, frame), front: fore, back: aft, cells };
}

function ringOf(front: Vec3[], back: Vec3[], frame: SeatFrame): Vec3[] {
  const ends = (points: Vec3[]): Vec3[] => [points[0]!, points[points.length - 1]!];
  const fore = isBowed(frame.front) ? front : ends(front);
  const aft = isBowed(frame.back) ? back : ends(back);
  return [fore[0]!, ...aft, ...fore.slice(1).reverse()];
}

/** A point of a rail's inside, middle or outside top line at its first or second end. */
export function edgeAt(rail: Rail, share: number, reach: Reach): Vec3 {
  const shape = shapeOf(rail);
  const x = share * rail.length;
  return along(
    along(along(rail.start, rail.along, x), rail.outward, outAt(rail, x, reach)),
    rail.upward,
    shape.top(x),
  );
}

function outAt(rail: Rail, x: number, reach: Reach): number {
  const shape = shapeOf(rail);
  if (typeof reach === "function") return shape.inward(x, shape.thick(x) - reach(rail));
  if (reach === "middle") return (shape.outside(x) + shape.inside(x)) / 2;
  return shape[reach](x);
}

/** A frame that keeps a clearance follows each rail to the point: the places along one, from its first shoulder to its second. */
export const edgeAlong = (rail: Rail, reach: Reach, plane: Plane): Vec3[] =>
  Array.from({ length: CURVE + 1 }, (_, k) => dropOnto(plane, edgeAt(rail, k / CURVE, reach)));

const middleX = (rail: Rail): number => (rail.start[0] + rail.end[0]) / 2;

/** The front or back edge: through its rails' ends, or level through the sides' ends; moved out by its overhang. */
function acrossLine(
  own: Vec3[],
  sides: Vec3[],
  sign: 1 | -1,
  over: number,
  back: Vec3,
): EdgeLine | undefined {
  if (own.length > 0) {
    const ordered = [...own].sort((a, b) => b[0] - a[0]);
    return lineThrough(ordered[0]!, ordered[ordered.length - 1]!, scale(back, sign * over));
  }
  const last = [...sides].sort((a, b) => sign * (b[1] - a[1]))[0];
  return last && { at: along(last, back, sign * over), run: [1, 0, 0] };
}

/** A side edge: through the side rail's ends, or from the outermost end in front to the outermost end behind. */
function sideLine(own: Vec3[], across: Vec3[], sign: 1 | -1, over: number, back: Vec3): EdgeLine | undefined {
  if (own.length >= 2) {
    const run = unit(sub(own[1]!, own[0]!));
    const out: Vec3 = unit(along([sign, 0, 0], run, -dot([sign, 0, 0], run)));
    return lineThrough(own[0]!, own[1]!, scale(out, over));
  }
  const outermost = [...across].sort((a, b) => sign * (b[0] - a[0])).slice(0, 2);
  const [a, b] = outermost;
  if (!a || !b) return undefined;
  if (Math.abs(dot(sub(b, a), back)) < 1) return { at: along(a, [sign, 0, 0], over), run: back };
  return lineThrough(a, b, [sign * over, 0, 0]);
}

function lineThrough(a: Vec3, b: Vec3, shift: Vec3): EdgeLine | undefined {
  const run = sub(b, a);
  if (Math.hypot(...run) < 1e-6) return undefined;
  return { at: add(a, shift), run: unit(run) };
}

function meet(a: EdgeLine, b: EdgeLine, plane: Plane): Vec3 | undefined {
  const side = cross(plane.normal, b.run);
  const rate = dot(a.run, side);
  if (Math.abs(rate) < 1e-6) return undefined;
  return along(a.at, a.run, dot(sub(b.at, a.at), side) / rate);
}

/** An edge from left to right that follows its one bowed rail from shoulder to shoulder; as many places on a straight one. */
function followed(left: Vec3, right: Vec3, rails: readonly Rail[], plane: Plane, reach: Reach): Vec3[] {
  if (!isBowed(rails))
    return Array.from({ length: CURVE + 3 }, (_, k) => between(left, right, k / (CURVE + 2)));
  const points = edgeAlong(rails[0]!, reach, plane);
  return [left, ...(points[0]![0] < points[CURVE]![0] ? points.reverse() : points), right];
}

const isBowed = (rails: readonly Rail[]): boolean => rails.length === 1 && (rails[0]!.bow ?? 0) !== 0;

/** An edge from left to right, curved as its one bowed rail is. */
function curve(left: Vec3, right: Vec3, rails: readonly Rail[], plane: Plane, count: number): Vec3[] {
  const rail = isBowed(rails) ? rails[0] : undefined;
  const shape = rail && shapeOf(rail);
  const out = rail && unit(along(rail.outward, plane.normal, -dot(rail.outward, plane.normal)));
  return Array.from({ length: count + 1 }, (_, k) => {
    const p = between(left, right, k / count);
    if (!rail || !shape || !out || k === 0 || k === count) return p;
    return along(p, out, shape.outside((rail.length * k) / count));
  });
}
