/**
 * Seats on a ring of rails of any number of sides: three-sided, cornerwise, five-sided. A four-sided one with a rail in front and one
 * behind is left to `seat-outline.ts`, which also knows open frames.
 */
import type { SeatDesign } from "../../design/design.ts";
import { dropOnto, planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { add, along, between, cross, dot, scale, sub, unit } from "../../geometry/vec.ts";
import type { Rail } from "../chair.ts";
import { shapeOf } from "../rails/rail-outline.ts";
import { type Drop, type SeatFrame, topMiddle } from "./seat-frame.ts";
import type { SeatOutline } from "./seat-layer.ts";
import { edgeAlong, edgeAt, type Reach } from "./seat-outline.ts";

/** Points of a bowed edge. */
const CURVE = 12;
/** An edge that looks less than this far from straight ahead, or behind, is the front or the back edge, radians. */
const AHEAD = Math.PI / 6;

/** The rails in order round the ring they close; undefined when they close none, or the four-sided one with a front and a back. */
export function ringOf(frame: SeatFrame): Rail[] | undefined {
  const rails = [...frame.front, ...frame.back, ...frame.sides];
  if (rails.length < 3 || isFourSquare(frame)) return undefined;
  const nodes = (rail: Rail) => rail.ends.map(({ entered }) => entered?.name);
  const round: Rail[] = [];
  const left = new Set(rails);
  let [rail] = rails;
  let node = rail && nodes(rail)[1];
  const first = rail && nodes(rail)[0];
  while (rail) {
    round.push(rail);
    left.delete(rail);
    const at: string | undefined = node;
    const next: Rail[] = [...left].filter((each) => at !== undefined && nodes(each).includes(at));
    if (next.length > 1) return undefined;
    [rail] = next;
    if (rail) node = nodes(rail).find((each) => each !== at);
  }
  return left.size === 0 && node === first ? round : undefined;
}

/** One rail across in front, one behind, each from one side of the chair to the other, and a rail on either side. */
function isFourSquare({ front, back, sides }: SeatFrame): boolean {
  const across = [...front, ...back];
  const crosses = across.every((rail) => {
    const [a, b] = [rail.start[0], rail.end[0]];
    return a * b < 0 && Math.abs(rail.along[0]) > Math.cos(AHEAD);
  });
  return front.length > 0 && back.length > 0 && sides.length === 2 && crosses;
}

/** The plane nearest to the middles of the rails' tops, level across the chair, looking up. */
export function planeOfRing(rails: readonly Rail[], drop?: Drop): Plane {
  const tops = rails.map((rail) => topMiddle(rail, drop));
  const middle = scale(tops.reduce<Vec3>(add, [0, 0, 0]), 1 / tops.length);
  const spread = tops.reduce((sum, p) => sum + (p[1] - middle[1]) ** 2, 0);
  const rise = tops.reduce((sum, p) => sum + (p[1] - middle[1]) * (p[2] - middle[2]), 0);
  return planeAt(middle, [0, -rise / Math.max(spread, 1), 1]);
}

/** An edge of the ring, its direction anticlockwise from above, and the way it looks out. */
interface Side {
  rail: Rail;
  at: Vec3;
  run: Vec3;
  out: Vec3;
}

/** The outline along the rails of a ring, moved out by the overhang; undefined when its edges do not close or it is not convex. */
export function outlineOfRing(
  seat: Pick<SeatDesign, "overhang">,
  rails: readonly Rail[],
  plane: Plane,
  reach: Reach,
): SeatOutline | undefined {
  const back = cross(plane.normal, [1, 0, 0]);
  const over = reach === "outside" ? seat.overhang?.value : undefined;
  const tops = rails.map((rail) => dropOnto(plane, topMiddle(rail)));
  const centre = scale(tops.reduce<Vec3>(add, [0, 0, 0]), 1 / tops.length);
  const sides = rails.map((rail): Side => {
    const [a, b] = [0, 1].map((share) => dropOnto(plane, edgeAt(rail, share, reach))) as [Vec3, Vec3];
    const forth = unit(sub(b, a));
    const turns = dot(cross(sub(a, centre), forth), plane.normal) > 0;
    const run = turns ? forth : scale(forth, -1);
    const out = cross(run, plane.normal);
    const by =
      lookOf(out, back) === "front" ? over?.front : lookOf(out, back) === "back" ? over?.back : over?.out;
    return { rail, at: along(a, out, by ?? 0), run, out };
  });
  const turning = inTurn(sides, plane);
  const corners = turning.map((side, k) => meet(turning[(k + turning.length - 1) % turning.length]!, side));
  if (corners.some((corner) => corner === undefined)) return undefined;
  const points = corners as Vec3[];
  if (!isConvex(points, plane)) return undefined;
  const ring = turning.flatMap((side, k) =>
    bowed(side, points[k]!, points[(k + 1) % points.length]!, plane, reach),
  );
  const edge = (way: Vec3) => edgeTowards(turning, points, way, plane, reach);
  const [front, behind] = [edge(scale(back, -1)), edge(back)];
  return {
    ring: fromFrontLeft(ring, front[0]!),
    front,
    back: behind,
    cells: isConvex(ring, plane) ? [ring] : [points],
  };
}

function lookOf(out: Vec3, back: Vec3): "front" | "back" | "side" {
  const ahead = dot(out, back);
  return ahead > Math.cos(AHEAD) ? "back" : ahead < -Math.cos(AHEAD) ? "front" : "side";
}

/** Anticlockwise from above. */
function inTurn(sides: readonly Side[], plane: Plane): Side[] {
  const right: Vec3 = [1, 0, 0];
  const up = cross(plane.normal, right);
  const angle = ({ out }: Side) => Math.atan2(dot(out, up), dot(out, right));
  return [...sides].sort((a, b) => angle(a) - angle(b));
}

function meet(a: Side, b: Side): Vec3 | undefined {
  const rate = dot(a.run, b.out);
  return Math.abs(rate) < 1e-6 ? undefined : along(a.at, a.run, dot(sub(b.at, a.at), b.out) / rate);
}

function isConvex(ring: readonly Vec3[], plane: Plane): boolean {
  return ring.every((p, k) => {
    const [before, next] = [ring[(k + ring.length - 1) % ring.length]!, ring[(k + 1) % ring.length]!];
    return dot(cross(sub(p, before), sub(next, p)), plane.normal) > -1e-6;
  });
}

/** The points from a side's first corner up to, but not with, its second; along the curve of a bowed rail. */
function bowed({ rail, run, out }: Side, from: Vec3, to: Vec3, plane: Plane, reach: Reach): Vec3[] {
  if (!rail.bow) return [from];
  const shape = shapeOf(rail);
  const forth = dot(rail.along, run) > 0;
  if (typeof reach === "function") {
    const points = edgeAlong(rail, reach, plane);
    return [from, ...(forth ? points : points.reverse())];
  }
  return Array.from({ length: CURVE }, (_, k) => {
    const share = k / CURVE;
    const rise = k === 0 ? 0 : shape.outside(rail.length * (forth ? share : 1 - share));
    return along(between(from, to, share), out, rise);
  });
}

/** The edge that looks one way, from left to right: that of a rail, or else across the ring's widest with its furthest corner in the middle. */
function edgeTowards(
  sides: readonly Side[],
  corners: readonly Vec3[],
  way: Vec3,
  plane: Plane,
  reach: Reach,
): Vec3[] {
  const facing = sides.findIndex(({ out }) => dot(out, way) > Math.cos(AHEAD));
  const leftFirst = (points: Vec3[]) =>
    points[0]![0] < points[points.length - 1]![0] ? points.reverse() : points;
  if (facing >= 0) {
    const [a, b] = [corners[facing]!, corners[(facing + 1) % corners.length]!];
    const curve = [...bowed(sides[facing]!, a, b, plane, reach), b];
    return leftFirst(curve);
  }
  const across = [...corners].sort((a, b) => b[0] - a[0]);
  const furthest = [...corners].sort((a, b) => dot(b, way) - dot(a, way))[0]!;
  return [across[0]!, furthest, across[across.length - 1]!];
}

/** The ring begun at the corner that is front left. */
function fromFrontLeft(ring: readonly Vec3[], corner: Vec3): Vec3[] {
  const at = ring.reduce((best, p, k) => (far(p, corner) < far(ring[best]!, corner) ? k : best), 0);
  return [...ring.slice(at), ...ring.slice(0, at)];
}

const far = (a: Vec3, b: Vec3): number => Math.hypot(...sub(a, b));
