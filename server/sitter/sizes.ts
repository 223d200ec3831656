import { armsOf } from "../chair/arms.ts";
import type { Chair } from "../chair/chair.ts";
import { backrestOf } from "../chair/values/backrest.ts";
import { movePoint } from "../geometry/motion.ts";
import { height, lineMeets } from "../geometry/plane.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { along, between, distance } from "../geometry/vec.ts";
import type { ChairSizes } from "./fit.ts";

/** The sizes of a chair that meet a sitter, mm, as it stands; empty without a seat. */
export function sizesOf(chair: Chair): ChairSizes {
  const { seat } = chair;
  if (!seat) return {};
  const sag = seat.design.sag?.value ?? 0;
  const sizes: ChairSizes = { seatHeight: movePoint(chair.stance, seat.front.middle)[2] - sag };
  const back = backrestOf(chair);
  const junction = back && lineMeets(seat.plane, back.at, back.run);
  // Members of a long back stand beside the middle: depth is measured straight back. A seat without a back has none to lean on.
  if (junction)
    sizes.seatDepth = distance(seat.front.middle, [seat.front.middle[0], junction[1], junction[2]]);
  if (back) sizes.backTop = height(seat.plane, back.top) + sag;
  const arms = armsOf(chair);
  if (arms.length > 0) {
    const tops = arms.map((arm) => height(seat.plane, between(arm.start, arm.end, 0.5)) + sag);
    sizes.armHeight = tops.reduce((sum, top) => sum + top, 0) / tops.length;
  }
  const clear = clearWidth(arms);
  sizes.seatWidth = clear ?? seatWidth(chair);
  if (clear !== undefined) sizes.betweenArms = true;
  return sizes;
}

/** Between the inside edges of the arms at their middles, if there are two. */
function clearWidth(arms: ReturnType<typeof armsOf>): number | undefined {
  const [a, b] = arms.map(
    (arm): Vec3 => along(between(arm.start, arm.end, 0.5), arm.outward, (arm.bow ?? 0) - arm.thick),
  );
  return a && b ? Math.abs(a[0] - b[0]) : undefined;
}

/** The widest of a solid seat that runs to a corner in front, which is sat on with a leg on either side, mm; nothing for any other. */
export function widthAstride({ seat }: Pick<Chair, "seat">): number | undefined {
  const widest = seat?.plan?.widest;
  if (!seat?.plan?.stations || widest === undefined) return undefined;
  return distance(seat.front.left, seat.front.right) < widest / 2 ? widest : undefined;
}

/** At the middle of the seat's depth, or its widest where that is what is sat on. */
function seatWidth(chair: Chair): number {
  const astride = widthAstride(chair);
  if (astride !== undefined) return astride;
  const { front, back, plan } = chair.seat!;
  if (plan) return plan.widthAt(plan.deep / 2);
  return (distance(front.left, front.right) + distance(back.left, back.right)) / 2;
}
