import type { PartRef } from "../../design/design.ts";
import { planeAt } from "../../geometry/plane.ts";
import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { add, along, cross, dot, scale, sub, unit } from "../../geometry/vec.ts";
import type { Rail } from "../chair.ts";
import { shapeOf } from "../rails/rail-outline.ts";

/** Which rails carry the seat, and where they lie. */
export interface SeatFrame {
  front: Rail[];
  back: Rail[];
  /** Those that run fore and aft. */
  sides: Rail[];
}

/** Sorts the rails named into front, back and sides by how they lie, not by what they are called. */
export function seatFrame(refs: readonly PartRef[], rails: ReadonlyMap<string, Rail>): SeatFrame {
  const all = refs.flatMap((ref) => railsOf(ref, rails));
  const across = all.filter((rail) => Math.abs(rail.along[0]) > Math.SQRT1_2);
  const sides = all.filter((rail) => !across.includes(rail));
  const back = (rail: Rail) => topMiddle(rail)[1];
  const ordered = [...across].sort((a, b) => back(a) - back(b));
  const first = ordered[0];
  const last = ordered[ordered.length - 1];
  if (!first || !last) return { front: [], back: [], sides };
  const fellows = (of: Rail) => across.filter((rail) => rail.design === of.design);
  if (first.design !== last.design) return { front: fellows(first), back: fellows(last), sides };
  // One row of rails only: it is the front one if the side rails run back from it.
  const reach = sides.map((rail) => topMiddle(rail)).map((p) => p[1]);
  const behind = reach.some((y) => y < back(first));
  return behind ? { front: [], back: fellows(first), sides } : { front: fellows(first), back: [], sides };
}

function railsOf(ref: PartRef, rails: ReadonlyMap<string, Rail>): Rail[] {
  const full = ref.side ? `${ref.name}.${ref.side}` : ref.name;
  const own = rails.get(full);
  if (own) return [own];
  return [...rails.values()].filter((rail) => rail.name.startsWith(`${full}.`));
}

/** How far below its top edge a rail carries the seat, mm. */
export type Drop = (rail: Rail) => number;
const none: Drop = () => 0;

/** A point of a rail's top: a share of the way along it, in the middle of its thickness there; so far below as the seat rests. */
function topAt(rail: Rail, share: number, drop: Drop): Vec3 {
  const shape = shapeOf(rail);
  const x = rail.length * share;
  const p = along(along(rail.start, rail.along, x), rail.outward, (shape.outside(x) + shape.inside(x)) / 2);
  return along(p, rail.upward, shape.top(x) - drop(rail));
}

export const topMiddle = (rail: Rail, drop = none): Vec3 => topAt(rail, 0.5, drop);

/** The plane the seat lies on, looking up; where front or back has no rail, the side rails' ends stand in for it. */
export function bearingPlane({ front, back, sides }: SeatFrame, drop = none): Plane | undefined {
  const ends = sides.map(
    (rail) => [topAt(rail, 0, drop), topAt(rail, 1, drop)].sort((a, b) => a[1] - b[1]) as [Vec3, Vec3],
  );
  const fore = front.length > 0 ? front.map((rail) => topMiddle(rail, drop)) : ends.map((pair) => pair[0]);
  const aft = back.length > 0 ? back.map((rail) => topMiddle(rail, drop)) : ends.map((pair) => pair[1]);
  if (fore.length === 0 || aft.length === 0) return undefined;
  const a = mean(fore);
  const run = sub(mean(aft), a);
  if (Math.abs(run[1]) < 1) return undefined;
  const normal = unit(cross([1, 0, 0], unit([0, run[1], run[2]])));
  return planeAt(a, dot(normal, [0, 0, 1]) < 0 ? scale(normal, -1) : normal);
}

const mean = (points: readonly Vec3[]): Vec3 => scale(points.reduce<Vec3>(add, [0, 0, 0]), 1 / points.length);
