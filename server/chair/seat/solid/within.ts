import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { LengthUnit, PostDesign } from "../../../design/design.ts";
import { printLength } from "../../../design/units.ts";
import type { Vec3 } from "../../../geometry/solid.ts";
import type { SeatSurface } from "../../chair.ts";
import type { Fault } from "../../fault.ts";
import type { Spot } from "./edge.ts";
import { spotOnSeat } from "./on-face.ts";

/** The fault of a leg whose place lies outside the seat's outline, with a figure that lies within; undefined of one that is in it. */
export function outsideSeat(
  seat: SeatSurface,
  design: PostDesign,
  part: string,
  at: Vec3,
  units: LengthUnit,
): Fault | undefined {
  const place = design.intoSeat ?? design.onSeat;
  if (!seat.plan || !place) return undefined;
  const [x, s] = spotOnSeat(seat, at);
  const { half } = seat.plan;
  const end = half[half.length - 1]![1];
  const length = (mm: number) => printLength(mm, units);
  const whole = (mm: number) => Math.floor(mm / STEP) * STEP;
  if (s <= 0 || s >= end) {
    const inside = seat.front.middle[1] + (s <= 0 ? 0 : end);
    const message =
      s <= 0
        ? sentence("fault.place-before", { by: length(-s), least: length(inside) })
        : sentence("fault.place-behind", { by: length(s - end), most: length(whole(inside)) });
    return { is: "no-room", part, at: place.at, message };
  }
  const most = halfAt(half, s);
  if (Math.abs(x) < most) return undefined;
  const message = sentence("fault.place-outside", {
    by: length(Math.abs(x) - most),
    most: length(whole(most)),
  });
  return { is: "no-room", part, at: place.at, message };
}

/** Whether a place on one of a solid seat's faces lies within its outline. */
export function isOnPlan(seat: SeatSurface, at: Vec3): boolean {
  const [x, s] = spotOnSeat(seat, at);
  return Math.abs(x) < halfAt(seat.plan?.half ?? [], s);
}

/** Figures are told to this, mm. */
const STEP = 0.5;

/** How far out the outline is at a distance behind the front edge: the farthest where it runs across there. */
export function halfAt(half: readonly Spot[], s: number): number {
  let most = 0;
  for (const [k, [x, y]] of half.entries()) {
    const next = half[k + 1];
    if (!next || s < y || s > next[1]) continue;
    const share = next[1] > y ? (s - y) / (next[1] - y) : 1;
    most = Math.max(most, x + (next[0] - x) * share, ...(next[1] > y ? [] : [x]));
  }
  return most;
}
