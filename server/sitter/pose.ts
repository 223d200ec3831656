/**
 * How a sitter sits in a chair, seen from the side: where the joints come to lie. Places are [back, up] as the chair stands, mm.
 */

import type { Chair } from "../chair/chair.ts";
import { backrestOf } from "../chair/values/backrest.ts";
import { moveDirection, movePoint } from "../geometry/motion.ts";
import type { SitterBody } from "./body.ts";
import data from "./proportions.json" with { type: "json" };
import { sizesOf } from "./sizes.ts";

export type SidePlace = readonly [back: number, up: number];

export interface Pose {
  /** The backmost point of the hips, on the seat. */
  seated: SidePlace;
  hip: SidePlace;
  /** The hollow behind the knee, on the underside of the thigh. */
  kneeHollow: SidePlace;
  knee: SidePlace;
  ankle: SidePlace;
  /** Back and front of the sole. */
  heel: SidePlace;
  toe: SidePlace;
  /** How far the sole hangs above the floor; 0 when the feet rest on it. */
  hangs: number;
  waist: SidePlace;
  chest: SidePlace;
  shoulder: SidePlace;
  neck: SidePlace;
  head: SidePlace;
  elbow: SidePlace;
  wrist: SidePlace;
  fingers: SidePlace;
}

/** How much thicker a body is where it sits than its thigh is in the middle. */
const HIP = 0.62;

/**
 * A body put into a chair as far back as its thighs let it: against the back, or with the knees at the seat's front edge if the seat is
 * too deep for it. Feet on the floor ahead of the knees, or hanging. Nothing without a seat.
 */
export function poseOf(chair: Chair, { measures, shoes }: SitterBody): Pose | undefined {
  const { seat, stance } = chair;
  const sizes = sizesOf(chair);
  if (!seat || sizes.seatHeight === undefined) return undefined;
  const sag = seat.design.sag?.value ?? 0;
  const [, frontBack, frontUp] = movePoint(stance, seat.front.middle);
  const [, behindBack, behindUp] = movePoint(stance, seat.back.middle);
  const depth = Math.hypot(behindBack - frontBack, behindUp - frontUp) || 1;
  // Along the seat to the back, and square to it up.
  const u: SidePlace = [(behindBack - frontBack) / depth, (behindUp - frontUp) / depth];
  const onSeat = (along: number, above = 0): SidePlace => [
    frontBack + u[0] * along - u[1] * above,
    frontUp - sag + u[1] * along + u[0] * above,
  ];
  const { stature } = measures;
  const thigh = measures["thigh-clearance"];
  const length = measures["buttock-popliteal-length"];
  const behind = Math.min(sizes.seatDepth ?? depth, length);
  const hipThick = thigh * HIP;
  const kneeThick = data.thick.knee * stature;
  const seated = onSeat(behind);
  const kneeHollow = onSeat(behind - length);
  const knee = onSeat(behind - length - kneeThick * 0.5, kneeThick);

  // The lower leg reaches from the hollow of the knee to the sole, heels included.
  const leg = measures["popliteal-height"] + shoes;
  const hangs = Math.max(0, kneeHollow[1] - leg);
  const ahead = Math.sqrt(Math.max(0, leg ** 2 - kneeHollow[1] ** 2));
  const ankleHeight = data.ankleHeight * stature;
  const foot = data.foot * stature;
  const sole = hangs;
  const heelBack = knee[0] - Math.min(ahead, leg * 0.6) + foot * 0.12;
  const heel: SidePlace = [heelBack, sole];
  const toe: SidePlace = [heelBack - foot, sole];
  const ankle: SidePlace = [heelBack - foot * 0.24, sole + shoes + ankleHeight];

  const lean = leanOf(chair);
  const up = (along: number, forward = 0): SidePlace => [
    seated[0] + Math.sin(lean) * along - Math.cos(lean) * forward,
    seated[1] + Math.cos(lean) * along + Math.sin(lean) * forward,
  ];
  const high = measures["shoulder-height-sitting"];
  const crown = measures["sitting-height"];
  const { shoulder: shoulderThick, chest: chestThick, waist: waistThick } = data.thick;
  const shoulder = up(high - shoulderThick * stature, shoulderThick * stature * 1.35);
  const elbow: SidePlace = [
    shoulder[0] - stature * 0.015,
    seated[1] + measures["elbow-rest-height"] + data.thick.elbow * stature,
  ];
  const wrist: SidePlace = [elbow[0] - data.forearm * stature, elbow[1] + stature * 0.01];
  return {
    seated,
    hip: onSeat(behind - hipThick, hipThick),
    kneeHollow,
    knee,
    ankle,
    heel,
    toe,
    hangs,
    waist: up(high * 0.4, waistThick * stature * 1.15),
    chest: up(high * 0.72, chestThick * stature * 1.08),
    shoulder,
    neck: up(high + stature * 0.02, shoulderThick * stature * 1.5),
    head: up(crown - (data.headHeight * stature) / 2, shoulderThick * stature * 1.75),
    elbow,
    wrist,
    fingers: [wrist[0] - data.hand * stature * 0.75, wrist[1] - stature * 0.005],
  };
}

/** How far the sitter's back leans from plumb: as the chair's does, upright without one. */
function leanOf(chair: Chair): number {
  const back = backrestOf(chair);
  if (!back) return 0;
  const [, y, z] = moveDirection(chair.stance, back.run);
  return Math.atan2(y, z);
}
