import { between } from "../geometry/vec.ts";
import type { Chair, Rail } from "./chair.ts";

/** Arms: members lying flat, fore-and-aft, above the seat, beside it. */
export function armsOf(chair: Chair): Rail[] {
  const seat = chair.seat;
  if (!seat) return [];
  return [...chair.rails.values()].filter((rail) => {
    if (rail.is !== "rail" || Math.abs(rail.along[1]) < Math.SQRT1_2) return false;
    const lying =
      "flat" in rail.design && (rail.design.flat?.value || rail.design.ends.some((end) => end.over));
    const middle = between(rail.start, rail.end, 0.5);
    return Boolean(lying) && middle[2] > seat.front.middle[2] + 50;
  });
}
