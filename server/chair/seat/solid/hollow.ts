/**
 * The hollow of a solid seat: how deep it is at a place.
 */
import type { SolidSeatDesign } from "../../../design/solid-seat-design.ts";
import type { Vec3 } from "../../../geometry/solid.ts";
import { along, dot, sub } from "../../../geometry/vec.ts";
import type { SeatSurface } from "../../chair.ts";
import type { Spot } from "./edge.ts";
import { backwardOf } from "./on-face.ts";
import type { SeatPlan } from "./plan.ts";

type Hollow = NonNullable<SolidSeatDesign["hollow"]>["value"];

/** How deep it is so far inside the outline, mm: D·sin²(90°·t/L) with t less the rim. */
export function depthInside({ deep, over, rim }: Hollow, inside: number): number {
  const share = Math.min(1, Math.max(0, (inside - rim) / over));
  return deep * Math.sin((Math.PI / 2) * share) ** 2;
}

/** Whether a stretch of the outline belongs to the front edge. */
export const isFront = ({ frontCorner }: Pick<SeatPlan, "frontCorner">, [, s]: Spot, [, v]: Spot): boolean =>
  frontCorner !== undefined && Math.max(s, v) <= frontCorner[1] + 1e-6;

/** How deep a seat is hollowed at a place on its top, out and behind its front edge; 0 on the rim and outside. */
export const hollowAt = (plan: SeatPlan, hollow: Hollow, spot: Spot): number =>
  depthInside(hollow, insideBy(plan, spot, hollow.open));

/** How far a place lies inside the outline, or inside all of it but the front edge, mm; 0 outside. */
export function insideBy(plan: SeatPlan, [x, s]: Spot, butFront = false): number {
  const { ring } = plan;
  let inside = false;
  let least = Number.POSITIVE_INFINITY;
  for (const [k, a] of ring.entries()) {
    const b = ring[(k + 1) % ring.length]!;
    if (a[1] > s !== b[1] > s && x < a[0] + ((b[0] - a[0]) * (s - a[1])) / (b[1] - a[1])) inside = !inside;
    if (butFront && isFront(plan, a, b)) continue;
    const run: Spot = [b[0] - a[0], b[1] - a[1]];
    const share = ((x - a[0]) * run[0] + (s - a[1]) * run[1]) / (run[0] ** 2 + run[1] ** 2);
    const t = Math.min(1, Math.max(0, share));
    least = Math.min(least, Math.hypot(x - a[0] - run[0] * t, s - a[1] - run[1] * t));
  }
  return inside ? least : 0;
}

/** Places along the middle at which the lowest is looked for, and rounds in which it is closed in on. */
const STEPS = 40;
const ROUNDS = 24;

/** The lowest point of the hollow, on the middle line, as `level` measures heights; undefined without a hollow. */
export function lowestOfHollow(seat: SeatSurface, level: (p: Vec3) => number): number | undefined {
  const hollow = seat.design.solid?.hollow?.value;
  if (!hollow || !seat.plan) return undefined;
  const { plan, plane, front } = seat;
  const back = backwardOf(plane);
  const at = (s: number): number =>
    level(along(along(front.middle, back, s), plane.normal, -hollowAt(plan, hollow, [0, s])));
  const step = plan.deep / STEPS;
  const steps = Array.from({ length: STEPS - 1 }, (_, k) => step * (k + 1));
  const heights = steps.map(at);
  const lowest = steps[heights.indexOf(Math.min(...heights))]!;
  let [low, high] = [lowest - step, lowest + step];
  for (let round = 0; round < ROUNDS; round++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (at(a) < at(b)) high = b;
    else low = a;
  }
  return at((low + high) / 2);
}

/** The least wood between a blind bore, given by points of its wall, and the hollow; undefined without a hollow. */
export function woodUnderHollow(seat: SeatSurface, points: readonly Vec3[]): number | undefined {
  const hollow = seat.design.solid?.hollow?.value;
  const { plan, plane, front } = seat;
  if (!hollow || !plan || points.length === 0) return undefined;
  const back = backwardOf(plane);
  return Math.min(
    ...points.map((p) => {
      const below = plane.offset - dot(plane.normal, p);
      return below - hollowAt(plan, hollow, [p[0], dot(sub(p, front.middle), back)]);
    }),
  );
}
