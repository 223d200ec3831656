import { armsOf } from "../chair/arms.ts";
import type { Chair, Rail } from "../chair/chair.ts";
import { backrestOf } from "../chair/values/backrest.ts";
import { movePoint } from "../geometry/motion.ts";
import { lineMeets } from "../geometry/plane.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { along, between } from "../geometry/vec.ts";
import type { ChairWeight } from "../timber/weight.ts";
import type { Loaded } from "./load-cases.ts";

/** Free fall, m/s²: standard gravity (CGPM 1901). */
export const gravity = 9.80665;

/** Where the standards' loads act on a chair with a seat, as it stands, and its own weight; nothing when it has no seat. */
export function loadedOf(chair: Chair, weight: ChairWeight): Loaded | undefined {
  const places = placesOf(chair);
  return places && { ...places, weight: { at: weight.centre, force: [0, 0, -weight.mass * gravity] } };
}

/** The same without its own weight. */
export function placesOf(chair: Chair): Omit<Loaded, "weight"> | undefined {
  const { seat, stance } = chair;
  if (!seat) return undefined;
  const outline = seat.outline.map((point) => movePoint(stance, point));
  const middle = movePoint(stance, between(seat.front.middle, seat.back.middle, 0.5));
  const back = backOf(chair);
  return {
    seat: outline,
    unloadedHeight: middle[2],
    seatHeight: middle[2] - (seat.design.sag?.value ?? 0),
    ...(back && { back }),
    arms: armsOf(chair).map((arm) => ({ outer: movePoint(stance, outerMiddle(arm)) })),
  };
}

/** The middle of an arm's outer edge: an arm lies centred, so its outside arris is the outer edge, bow included. */
function outerMiddle(rail: Rail): Vec3 {
  return along(between(rail.start, rail.end, 0.5), rail.outward, rail.bow ?? 0);
}

/** Where the back meets the seat, y on the centre line, and the height of its top. */
function backOf(chair: Chair): Loaded["back"] {
  const found = backrestOf(chair);
  if (!found || !chair.seat) return undefined;
  const junction = lineMeets(chair.seat.plane, found.at, found.run);
  if (!junction) return undefined;
  const top = movePoint(chair.stance, found.top);
  return { junction: movePoint(chair.stance, junction)[1], top: top[2], topAt: top[1] };
}
