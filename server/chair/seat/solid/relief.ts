/**
 * The body of a solid seat that is hollowed or bevelled, in convex pieces.
 */
import type { SolidSeatDesign } from "../../../design/solid-seat-design.ts";
import { drawnLater } from "../../../geometry/body.ts";
import { clip, prism } from "../../../geometry/convex.ts";
import { planeThrough } from "../../../geometry/plane.ts";
import type { Body, Convex, Plane, Vec3 } from "../../../geometry/solid.ts";
import { cross, dot, negate, sub } from "../../../geometry/vec.ts";
import type { SeatSurface } from "../../chair.ts";
import type { Spot } from "./edge.ts";
import { depthInside, isFront } from "./hollow.ts";
import { cornersInset, insetThrough } from "./inset.ts";
import { type Bevel, bevelDepth, type Lift, linesOf, POINT } from "./lines.ts";
import type { Strip } from "./mirror.ts";
import type { SeatPlan } from "./plan.ts";
import { ringOf } from "./ring.ts";

/** Steps in which the hollow falls from its rim to its depth. */
const STEPS = 6;
/** The hollow follows an outline that strays from the true one by no more than this share of the seat's depth, 0.25 mm in 400 mm. */
const STRAY = 0.25 / 400;
/** The wood left under the hollow that belongs to its own pieces, as a share of the seat's thickness at most. */
const FLOOR = 1 / 11;

/** Cells are the outline in convex pieces, anticlockwise. */
export function shapedBody(
  solid: SolidSeatDesign,
  plan: SeatPlan,
  cells: readonly Spot[][],
  thick: number,
  lift: Lift,
): Body {
  const slab = (cell: readonly Spot[], from: number, to: number): Convex =>
    prism(
      cell.map((p) => lift(p, to)),
      cell.map((p) => lift(p, from)),
    );
  const hollow = solid.hollow?.value;
  const floor = hollow ? hollow.deep + Math.min(FLOOR * thick, (thick - hollow.deep) / 2) : 0;
  const { ring } = plan;
  const bevels = solid.bevels.map(({ value }) => value);
  const below = bevels.find(({ face }) => face === "below");
  /** The bevels that take wood off between two depths. */
  const planesOf = (from: number, to: number, by: (bevel: Bevel) => Plane[]): Plane[] =>
    bevels.filter(({ deep, face }) => (face === "above" ? deep > from : thick - deep < to)).flatMap(by);
  // An outline that never turns inward is cut whole, or narrows as one solid; another stretch by stretch, each by its own bevel alone.
  const whole = cells.length === 1;
  const parts: Part[] = whole
    ? [{ cell: [...cells[0]!], bevelled: (bevel) => bevelPlanes(bevel, ring, thick, lift) }]
    : bevels.length > 0
      ? bevelledParts(bevels, ring, thick, lift)
      : cells.map((cell) => ({ cell: [...cell], bevelled: () => [] }));
  const outOfBevels = (piece: Convex): Convex[] =>
    whole ? cutOff([piece], planesOf(0, floor, parts[0]!.bevelled)) : [piece];
  const between = (from: number, to: number, shapes: (part: Part) => Spot[][]): Convex[] =>
    parts.flatMap((part) =>
      cutOff(
        shapes(part).map((cell) => slab(cell, from, to)),
        planesOf(from, to, part.bevelled),
      ),
    );
  const narrowing = ({ wide, deep }: Bevel): Convex =>
    prism(
      cornersInset(ring, wide - POINT).map((p) => lift(p, thick)),
      ring.map((p) => lift(p, thick - deep)),
    );
  const lower =
    whole && below && floor <= thick - below.deep
      ? [...between(floor, thick - below.deep, ({ cell }) => [cell]), narrowing(below)]
      : between(floor, thick, ({ cell }) => [cell]);
  const lines = () =>
    linesOf(
      solid,
      ring,
      thick,
      lift,
      (bevel, corners) => bevelFace(bevel, corners, thick, lift),
      hollow?.open ? runOut(plan, hollow) : [],
    );
  if (!hollow) return drawnLater(lower, lines);
  // Only the rim reaches up to the outline, and only what lies under it down to it.
  const { rim, inner } = hollowed(plan, hollow, floor, lift, slab);
  // A hollow that is open in front runs out through the bevel there.
  const bevelled = hollow.open ? inner.flatMap((piece) => outOfBevels(piece)) : inner;
  const pieces = [...(rim ? between(0, floor, ({ cell }) => rim(cell)) : []), ...bevelled, ...lower];
  // No line of sight passes through a hollow alone whose rim is in one plane, so the seat without it is seen as large.
  const unhollowed = () => {
    const all = between(0, whole && below ? thick - below.deep : thick, ({ cell }) => [cell]);
    return whole && below ? [...all, narrowing(below)] : all;
  };
  return drawnLater(pieces, lines, hollow.open ? undefined : unhollowed);
}

/** A convex part of the outline, with the planes that cut a bevel off it. */
interface Part {
  cell: Spot[];
  bevelled: (bevel: Bevel) => Plane[];
}

/** The outline in the strips that bevels take wood off, each with its own planes alone, and what is left inside them. */
function bevelledParts(bevels: readonly Bevel[], ring: readonly Spot[], thick: number, lift: Lift): Part[] {
  const levels = [0, ...new Set(bevels.map(({ wide }) => wide - POINT).sort((a, b) => a - b))];
  const { strips, left } = insetThrough(ring, levels);
  const parts = strips.map(({ level, corners }): Part => {
    const bevelled = (bevel: Bevel): Plane[] => {
      if (bevel.wide - POINT <= levels[level]! + POINT) return [];
      const plane = bevelFace(bevel, corners, thick, lift);
      return plane ? [plane] : [];
    };
    return { cell: corners.map(({ at }) => at), bevelled };
  });
  const inside = left.flatMap(convexCells).map((cell): Part => ({ cell, bevelled: () => [] }));
  return [...parts, ...inside];
}

/** The plane that cuts a bevel off a strip of the outline, looking out of the wood; undefined of a strip that is a mere line. */
function bevelFace(bevel: Bevel, corners: Strip["corners"], thick: number, lift: Lift): Plane | undefined {
  const plane = planeOfMost(corners.map(({ at, moved }) => lift(at, bevelDepth(bevel, moved, thick))));
  const spot = corners[0]?.at;
  if (!plane || !spot) return undefined;
  // Its wood lies on the side of the middle between both faces.
  const off = dot(plane.normal, lift(spot, bevel.face === "above" ? thick : 0)) - plane.offset;
  return off < 0 ? plane : { normal: negate(plane.normal), offset: -plane.offset };
}

/** The plane of points that lie in one, through the three of them that stand widest apart; undefined when they lie in a line. */
function planeOfMost(points: readonly Vec3[]): Plane | undefined {
  const [a] = points;
  if (!a) return undefined;
  const size = (v: Vec3) => dot(v, v);
  const farthest = (by: (p: Vec3) => number) => points.reduce((best, p) => (by(p) > by(best) ? p : best), a);
  const b = farthest((p) => size(sub(p, a)));
  const c = farthest((p) => size(cross(sub(b, a), sub(p, a))));
  return planeThrough(a, b, c);
}

const cutOff = (pieces: readonly Convex[], planes: readonly Plane[]): Convex[] =>
  pieces.flatMap((piece) => {
    let left: Convex | null = piece;
    for (const plane of planes) left = left && clip(left, plane);
    return left ?? [];
  });

/** The seat's upper part, down to `floor`: what of a cell belongs to the rim, the slope of the hollow in strips, and what lies under its level middle. */
function hollowed(
  plan: SeatPlan,
  hollow: NonNullable<SolidSeatDesign["hollow"]>["value"],
  floor: number,
  lift: Lift,
  slab: (cell: readonly Spot[], from: number, to: number) => Convex,
): { rim?: (cell: readonly Spot[]) => Spot[][]; inner: Convex[] } {
  const ring = ringOf(simpler(plan, hollow.open));
  const still = (k: number) => hollow.open && isFront(plan, ring[k]!, ring[(k + 1) % ring.length]!);
  const levels = levelsOf(hollow);
  const all = hollow.rim > 0 ? [0, ...levels] : levels;
  const first = hollow.rim > 0 ? 1 : 0;
  const { strips, left } = insetThrough(ring, all, still);
  const inner: Convex[] = [];
  // The rim runs from the hollow's edge out to the outline itself, which has more corners.
  const edges = hollow.rim > 0 ? insetThrough(ring, [0, hollow.rim], still).left : undefined;
  for (const { level, corners } of strips) {
    if (level < first) continue;
    for (const ring of flat(corners.map(({ at, moved }) => ({ at, deep: depthInside(hollow, moved) }))))
      inner.push(
        prism(
          ring.map(({ at }) => lift(at, floor)),
          ring.map(({ at, deep }) => lift(at, deep)),
        ),
      );
  }
  inner.push(...left.flatMap(convexCells).map((cell) => slab(cell, hollow.deep, floor)));
  return { ...(edges && { rim: rimOf(edges) }), inner };
}

interface Corner {
  at: Spot;
  deep: number;
}

/** A ring of corners, as it is where they lie in one plane, else in triangles: where corners of the outline run together they do not. */
function flat(ring: readonly Corner[]): Corner[][] {
  const [first, ...rest] = ring;
  if (!first) return [];
  const triangles = rest.slice(1).map((corner, k): [Corner, Corner, Corner] => [first, rest[k]!, corner]);
  const volumeOf = ([a, b, c]: readonly [Corner, Corner, Corner], d: Corner): number => {
    const from = ({ at, deep }: Corner): Vec3 => [at[0] - d.at[0], at[1] - d.at[1], deep - d.deep];
    return dot(from(a), cross(from(b), from(c)));
  };
  const widest = triangles.reduce((best, each) =>
    areaOf(each.map(({ at }) => at)) > areaOf(best.map(({ at }) => at)) ? each : best,
  );
  return ring.every((corner) => Math.abs(volumeOf(widest, corner)) < 1e-6) ? [[...ring]] : triangles;
}

/** Where a hollow that is open in front runs out through the front edge: places of that edge with their depths, from the right to the left. */
function runOut(plan: SeatPlan, hollow: NonNullable<SolidSeatDesign["hollow"]>["value"]): Corner[] {
  const ring = ringOf(simpler(plan, true));
  const fronts = ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length]!;
    return isFront(plan, a, b) ? [[a, b] as const] : [];
  });
  const isOn = ([x, s]: Spot) =>
    fronts.some(([[ax, as], [bx, bs]]) => {
      const [u, v] = [bx - ax, bs - as];
      const size = Math.hypot(u, v);
      const along = ((x - ax) * u + (s - as) * v) / size;
      return Math.abs((x - ax) * v - (s - as) * u) / size < ON && along > -ON && along < size + ON;
    });
  const levels = [...(hollow.rim > 0 ? [0] : []), ...levelsOf(hollow)];
  const { strips, left } = insetThrough(ring, levels, (k) =>
    isFront(plan, ring[k]!, ring[(k + 1) % ring.length]!),
  );
  const last = hollow.rim + hollow.over;
  const all = [
    ...strips.flatMap(({ corners }) => corners),
    ...left.flatMap((each) => each.map((at) => ({ at, moved: last }))),
  ].filter(({ at }) => isOn(at));
  return all
    .sort((a, b) => a.at[0] - b.at[0])
    .filter(({ at: [x] }, k, sorted) => k === 0 || x - sorted[k - 1]!.at[0] > ON)
    .map(({ at, moved }) => ({ at, deep: depthInside(hollow, moved) }));
}

/** Places nearer than this to the front edge are on it, mm. */
const ON = 1e-5;

/** The distances inside the outline between which a hollow's solid falls in straights. */
const levelsOf = ({ rim, over }: NonNullable<SolidSeatDesign["hollow"]>["value"]): number[] =>
  Array.from({ length: STEPS + 1 }, (_, k) => rim + (over * k) / STEPS);

/** The hollow's contours from its rim in, out and behind the front edge; none without one. The steps are those of its solid. */
export function hollowContours({
  plan,
  design,
}: Pick<SeatSurface, "plan" | "design">): { deep: number; ring: Spot[] }[] {
  const hollow = design.solid?.hollow?.value;
  if (!hollow || !plan) return [];
  const ring = ringOf(simpler(plan, hollow.open));
  const still = (k: number) => hollow.open && isFront(plan, ring[k]!, ring[(k + 1) % ring.length]!);
  return levelsOf(hollow).flatMap((inside) => {
    const left = inside > 0 ? insetThrough(ring, [0, inside], still).left : [ring];
    return left.map((each) => ({ deep: depthInside(hollow, inside), ring: each }));
  });
}

/** The outline of a seat moved in, corner for corner: where corners run together they stand in one place. As drawn, in its top face. */
export function insetOutline({ outline, front, plane }: SeatSurface, by: number): Vec3[] {
  const back = cross(plane.normal, [1, 0, 0]);
  const ring = outline.map((p): Spot => [p[0], dot(sub(p, front.middle), back)]);
  return cornersInset(ring, by - POINT).map(([x, s]) => {
    const [px, py, pz] = front.middle;
    return [px + x, py + back[1] * s, pz + back[2] * s];
  });
}

/** What is less than this share of the ring that it lies outside is left out. */
const CRUMB = 1e-8;

/** What of a cell of the outline lies outside the rings inside it, in convex pieces: each of their edges cuts off all that lies beyond it. */
function rimOf(inner: readonly Spot[][]): (cell: readonly Spot[]) => Spot[][] {
  const cores = inner.flatMap(convexCells);
  return (cell) =>
    cores.reduce<Spot[][]>((left, core) => left.flatMap((each) => outsideOf(each, core)), [[...cell]]);
}

/** What of a convex ring lies outside another, in convex pieces. */
function outsideOf(ring: readonly Spot[], core: readonly Spot[]): Spot[][] {
  const pieces: Spot[][] = [];
  const least = CRUMB * areaOf(core);
  let left: Spot[] = [...ring];
  for (const [k, at] of core.entries()) {
    const [u, v] = core[(k + 1) % core.length]!;
    const out: Spot = [v - at[1], at[0] - u];
    const beyond = clipped(left, [-out[0], -out[1]], at);
    if (beyond.length >= 3 && areaOf(beyond) > least) pieces.push(beyond);
    left = clipped(left, out, at);
    if (left.length < 3) break;
  }
  return pieces;
}

/** What is left of a convex ring behind a line through a point; its normal looks out. */
function clipped(ring: readonly Spot[], normal: Spot, at: Spot): Spot[] {
  const [ox, oy] = at;
  const [nx, ny] = normal;
  const kept: Spot[] = [];
  let a = ring[ring.length - 1];
  if (!a) return kept;
  let h = (a[0] - ox) * nx + (a[1] - oy) * ny;
  for (const b of ring) {
    const g = (b[0] - ox) * nx + (b[1] - oy) * ny;
    if ((h > 1e-9 && g < -1e-9) || (h < -1e-9 && g > 1e-9)) {
      const t = h / (h - g);
      kept.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
    }
    if (g <= 1e-9) kept.push(b);
    a = b;
    h = g;
  }
  return kept;
}

const areaOf = (ring: readonly Spot[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);

/** A ring as convex cells: itself where it never turns inward, else separated at each corner that does. */
function convexCells(ring: readonly Spot[]): Spot[][] {
  const count = ring.length;
  for (const [k, b] of ring.entries()) {
    const a = ring[(k + count - 1) % count]!;
    const c = ring[(k + 1) % count]!;
    const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    if (turn > -1e-6) continue;
    // Right across the seat to the corner opposite, which is this one mirrored.
    const twin = ring.findIndex(([x, y]) => Math.abs(x + b[0]) < 1e-4 && Math.abs(y - b[1]) < 1e-4);
    if (twin < 0 || Math.abs(twin - k) < 2 || Math.abs(twin - k) === count - 1) continue;
    const [low, high] = [Math.min(k, twin), Math.max(k, twin)];
    return [
      ...convexCells(ring.slice(low, high + 1)),
      ...convexCells([...ring.slice(high), ...ring.slice(0, low + 1)]),
    ];
  }
  return [[...ring]];
}

/** The outline's half with no more corners than the hollow needs; the front edge as it is where the hollow runs out there. */
function simpler(plan: SeatPlan, open: boolean): Spot[] {
  const { half } = plan;
  const kept = open ? half.filter((spot, k) => k > 0 && isFront(plan, half[k - 1]!, spot)).length : 0;
  return [...half.slice(0, kept), ...fewer(half.slice(kept), STRAY * plan.deep)];
}

/** The points of a line that keep its chords near it (Douglas and Peucker, 1973). */
function fewer(spots: readonly Spot[], stray: number): Spot[] {
  const [first, last] = [spots[0]!, spots[spots.length - 1]!];
  const run: Spot = [last[0] - first[0], last[1] - first[1]];
  const size = Math.hypot(...run);
  const off = spots.map(([x, y]) => Math.abs((x - first[0]) * run[1] - (y - first[1]) * run[0]) / size);
  const most = Math.max(...off);
  if (spots.length < 3 || most <= stray) return [first, last];
  const at = off.indexOf(most);
  return [...fewer(spots.slice(0, at + 1), stray).slice(0, -1), ...fewer(spots.slice(at), stray)];
}

/** The planes that cut a bevel off, one for each stretch of the outline, looking out of the wood. */
function bevelPlanes({ wide, deep, face }: Bevel, ring: readonly Spot[], thick: number, lift: Lift): Plane[] {
  const [edge, inside] = face === "above" ? [deep, 0] : [thick - deep, thick];
  return ring.flatMap((a, k) => {
    const b = ring[(k + 1) % ring.length]!;
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const inward: Spot = [(-(b[1] - a[1]) * wide) / size, ((b[0] - a[0]) * wide) / size];
    const plane = planeThrough(
      lift(a, edge),
      lift(b, edge),
      lift([a[0] + inward[0], a[1] + inward[1]], inside),
    );
    if (!plane) return [];
    const out = sub(lift(a, edge), lift([a[0] + inward[0], a[1] + inward[1]], edge));
    return dot(plane.normal, out) > 0 ? [plane] : [{ normal: negate(plane.normal), offset: -plane.offset }];
  });
}
