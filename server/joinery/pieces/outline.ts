/**
 * The outline of squared stuff that is not plain: how far each arris lies from one straight line along the stick, at stations along it.
 */
import type { Rail } from "../../chair/chair.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import { planeAt, threePlanes } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { add, along, angleBetween, dot, squareTo, sub, unit } from "../../geometry/vec.ts";
import type { Outline, OutlineRow } from "./piece.ts";
import { rolled, type SquaredStick, type Stretch } from "./squared.ts";

/** The straight line that offsets are taken from: a point of it, its direction, and the four ways that the faces look, square to it. */
export interface Line {
  origin: Vec3;
  direction: Vec3;
  ways: readonly [Vec3, Vec3, Vec3, Vec3];
}

export const lineOf = (origin: Vec3, direction: Vec3, first: Vec3): Line => ({
  origin,
  direction,
  ways: rolled(first, direction),
});

/** Marks along a curve stand so near that a straight from one to the next strays by no more than this, mm. */
const STRAY = 0.06;
/** Nearer than this is one station, mm. */
const SAME = 0.02;
/** Runs that turn by less than this go on straight, radians. */
const TURN = 1e-6;

/** The outline of a rail or slat that is tapered, arched or bowed; undefined for plain stuff. `every` is the widest spacing of marks, mm. */
export function outlineOfRail(
  rail: Rail,
  forward: boolean,
  cuts: readonly number[],
  every: number,
): Outline | undefined {
  const shape = shapeOf(rail);
  const tapered = [0, 1 / 3, 1].some(
    (share) =>
      Math.abs(shape.straightBottom(share * rail.length) - shape.straightBottom(0)) > 1e-9 ||
      (!rail.bow && Math.abs(shape.inside(share * rail.length) - shape.inside(0)) > 1e-9),
  );
  if (shape.arcs.length === 0 && !tapered) return undefined;
  const [low, high] = [Math.min(0, ...cuts), Math.max(rail.length, ...cuts)];
  const own = (x: number) => (forward ? x : rail.length - x);
  const row = (at: number): OutlineRow => {
    const x = own(at);
    const faces = [shape.top(x), shape.outside(x), -shape.bottom(x), -shape.inside(x)];
    return { at, offsets: faces.map((v) => [v, v] as const) };
  };
  const curved = shape.arcs.map(({ from, chord, arc }) => {
    const [a, b] = [own(from), own(from + chord)].sort((p, q) => p - q) as [number, number];
    // A bow runs on to its shoulders' farthest corners.
    return rail.bow !== undefined && arc === shape.bow ? { from: low, to: high } : { from: a, to: b };
  });
  const knots = [
    low,
    0,
    rail.length,
    high,
    ...shape.bends.map(own),
    ...curved.flatMap(({ from, to }) => [from, to]),
  ];
  const xs = stations(
    knots,
    (x) => curved.some(({ from, to }) => x >= from && x <= to),
    (a, b, c) => straysBy(row(a), row(b), row(c)),
    every,
  );
  return { rows: xs.map(row), line: "outside top arris", square: true };
}

/** The outline of a post that is tapered or bent, about the line of the run that is laid level. */
export function outlineOfPost(stick: SquaredStick, line: Line, every: number): Outline | undefined {
  const { stretches } = stick;
  const straight = stretches.every(
    (stretch) =>
      angleBetween(stretch.direction, line.direction) < TURN &&
      stretch.planes.every(({ normal }, k) => angleBetween(normal, line.ways[k]!) < TURN),
  );
  if (straight) return undefined;
  const seams = stretches.slice(1).map(({ start, direction }, k) => {
    return planeAt(start, add(stretches[k]!.direction, direction));
  });
  const x = (p: Vec3) => dot(sub(p, line.origin), line.direction);
  // Where each arris passes from one stretch to the next; both ends are left open.
  const passes = [0, 1, 2, 3].map((arris) =>
    seams.map((seam, k) => x(onArris(stretches[k]!.planes, arris, seam) ?? stretches[k + 1]!.start)),
  );
  const offsetAt = (arris: number, at: number): Vec3 => {
    const after = passes[arris]!.findIndex((pass) => at < pass);
    const { planes, start } = stretches[after < 0 ? stretches.length - 1 : after]!;
    return (
      onArris(planes, arris, planeAt(along(line.origin, line.direction, at), line.direction)) ??
      along(start, line.direction, at - x(start))
    );
  };
  const row = (at: number): OutlineRow => {
    const corners = [0, 1, 2, 3].map((arris) => sub(offsetAt(arris, at), line.origin));
    // Each face between the arris before it and the one after it.
    const offsets = line.ways.map(
      (way, k) => [dot(corners[(k + 3) % 4]!, way), dot(corners[k]!, way)] as const,
    );
    return { at, offsets };
  };
  const ends = endsAlong(stick).map((points) => points.map(x));
  const [low, high] = [Math.min(...ends[0]!), Math.max(...ends[1]!)];
  const curves = stretches.flatMap(({ curved }, k) => {
    if (!curved) return [];
    const from = k === 0 ? [low] : passes.map((pass) => pass[k - 1]!);
    const to = k === stretches.length - 1 ? [high] : passes.map((pass) => pass[k]!);
    return [{ from: Math.min(...from), to: Math.max(...to) }];
  });
  const isCurved = (at: number) => curves.some(({ from, to }) => at >= from && at <= to);
  const seamsTold = seams.flatMap((_, k) =>
    stretches[k]!.curved && stretches[k + 1]!.curved ? [] : passes.map((pass) => pass[k]!),
  );
  const xs = stations(
    [low, high, ...seamsTold],
    isCurved,
    (a, b, c) => straysBy(row(a), row(b), row(c)),
    every,
  );
  return { rows: xs.map(row), line: "centre line", square: stretches.every(isSquare) };
}

/** Whether the faces beside each other are square to each other across the stretch's own line. */
const isSquare = ({ planes, direction }: Stretch): boolean => {
  const across = planes.map(({ normal }) => unit(squareTo(normal, direction)));
  return across.every((way, k) => Math.abs(dot(way, across[(k + 1) % 4]!)) < TURN);
};

const onArris = (planes: readonly Plane[], arris: number, at: Plane): Vec3 | undefined =>
  threePlanes(planes[arris]!, planes[(arris + 1) % 4]!, at);

/** The farthest corners at both ends. */
function endsAlong({ stretches }: SquaredStick): [Vec3[], Vec3[]] {
  return [stretches[0]!.solid.points, stretches[stretches.length - 1]!.solid.points];
}

/** How far the middle one of three rows lies from the straight between the others. */
function straysBy(a: OutlineRow, b: OutlineRow, c: OutlineRow): number {
  const t = (b.at - a.at) / (c.at - a.at);
  return Math.max(
    ...b.offsets.flatMap((pair, k) =>
      pair.map((v, side) => {
        const [p, q] = [a.offsets[k]![side as 0]!, c.offsets[k]![side as 0]!];
        return Math.abs(p + (q - p) * t - v);
      }),
    ),
  );
}

/** The knots, and between those on a curve marks at even distances from the datum. */
function stations(
  knots: readonly number[],
  curved: (x: number) => boolean,
  strays: (a: number, b: number, c: number) => number,
  every: number,
): number[] {
  const sorted = [...knots].sort((a, b) => a - b).filter((x, k, all) => k === 0 || x - all[k - 1]! > SAME);
  const found = [...sorted];
  for (const [k, to] of sorted.entries()) {
    const from = sorted[k - 1];
    if (from === undefined || !curved((from + to) / 2)) continue;
    const spacing = [1, 1 / 2, 1 / 4, 1 / 5, 1 / 10]
      .map((part) => part * every)
      .find((step) => {
        const marks = between(from, to, step);
        return marks.every((mark, at) => at === 0 || fine(marks[at - 1]!, mark));
      });
    const marks = between(from, to, spacing ?? every / 10);
    found.push(...marks.slice(1, -1));
  }
  return found.sort((a, b) => a - b);

  function fine(a: number, b: number): boolean {
    return [1 / 4, 1 / 2, 3 / 4].every((t) => strays(a, a + (b - a) * t, b) <= STRAY);
  }
}

/** Both ends and the whole multiples of a step between them, none too near an end. */
function between(from: number, to: number, step: number): number[] {
  const marks: number[] = [];
  for (let k = Math.ceil((from + step / 5) / step); k * step < to - step / 5; k++) marks.push(k * step);
  return [from, ...marks, to];
}

/** Rise and radius of each arch and bow, and where it begins and ends along the stick. */
export function curvesOf(rail: Rail, forward: boolean): Outline["curves"] {
  const shape = shapeOf(rail);
  const curves = shape.arcs.map(({ from, chord, arc }) => {
    const [a, b] = (forward ? [from, from + chord] : [rail.length - from - chord, rail.length - from]) as [
      number,
      number,
    ];
    const is = arc === shape.bow ? "bow" : "arch";
    const above = rail.arch?.above !== undefined && Math.abs(arc.rise(chord / 2) - rail.arch.above) < 1e-9;
    const rise = arc.rise(chord / 2);
    const face = is === "bow" ? "outside" : above ? "top" : "bottom";
    const towards = is === "bow" ? ((rail.bow ?? 0) > 0 ? "outside" : "inside") : "top";
    return { is, face, towards, from: a, to: b, rise, radius: arc.radius } as const;
  });
  return curves.filter(({ rise }) => rise > 0);
}
