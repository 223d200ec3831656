/**
 * How far the heels can be drawn back under a chair, which is how people rise.
 */
import type { Chair, Rail } from "../chair/chair.ts";
import { middleSection } from "../chair/rails/rail-outline.ts";
import { movePoint } from "../geometry/motion.ts";
import { sizesOf } from "./sizes.ts";

interface HeelStop {
  rail: Rail;
  /** How far behind the knees the heels come before the shin meets the rail, mm on the floor. */
  reach: number;
  /** How much further back the rail would have to lie for a reach, mm. */
  backFor: (reach: number) => number;
}

/** Above this share of the seat's height a rail is at the knee, where a shin hardly moves. */
const KNEE = 0.75;

/**
 * The rails across a chair that stop a shin turning about the seat's front edge, the one that stops it first in front. Rails that the
 * seat lies on are where the knee is, and stop nothing.
 */
export function heelStops(chair: Chair): HeelStop[] {
  const { seat, stance } = chair;
  const height = sizesOf(chair).seatHeight;
  if (!seat || height === undefined || height <= 0) return [];
  const knee = movePoint(stance, seat.front.middle)[1];
  const carries = new Set(seat.design.on.map(({ value }) => value.name));
  const stops: HeelStop[] = [];
  for (const rail of chair.rails.values()) {
    if (Math.abs(rail.along[0]) < Math.SQRT1_2 || carries.has(rail.design.name)) continue;
    const corners = middleSection(rail).map((corner) => movePoint(stance, corner));
    const met = corners
      .filter(([, , z]) => z > 0 && z < KNEE * height)
      .map(([, y, z]) => ({ behind: y - knee, share: (height - z) / height }));
    if (met.length === 0) continue;
    const first = met.reduce((a, b) => (b.behind / b.share < a.behind / a.share ? b : a));
    stops.push({
      rail,
      reach: first.behind / first.share,
      backFor: (reach) => Math.max(0, ...met.map(({ behind, share }) => reach * share - behind)),
    });
  }
  return stops.sort((a, b) => a.reach - b.reach);
}
