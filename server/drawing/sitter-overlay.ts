/**
 * A sitter in the side view, to scale, sitting as the chair lets them.
 */
import type { Chair } from "../chair/chair.ts";
import { printLength } from "../design/units.ts";
import { bodyOf } from "../sitter/body.ts";
import { type Pose, poseOf } from "../sitter/pose.ts";
import data from "../sitter/proportions.json" with { type: "json" };
import { limb, oval } from "./limbs.ts";
import type { Overlay, OverlayStroke, Point } from "./sheet.ts";

/** The sitter of a chair's text, and what is said of them on the sheet; nothing without a seat. */
export function sitterOverlay(chair: Chair): { overlay: Overlay; note: string } | undefined {
  const body = bodyOf(chair.design.sitter.value);
  const pose = poseOf(chair, body);
  if (!pose) return undefined;
  const unit = chair.design.units;
  const { stature } = body.measures;
  const whom = body.whom.replace(/^./, (letter) => letter.toUpperCase());
  return {
    overlay: { name: "sitter", strokes: figureOf(pose, stature), words: [] },
    note: `${whom}: stature ${printLength(Math.round(stature), unit)}, heels ${printLength(Math.round(body.shoes), unit)}.`,
  };
}

function figureOf(pose: Pose, stature: number): OverlayStroke[] {
  const thick = Object.fromEntries(
    Object.entries(data.thick).map(([name, share]) => [name, share * stature]),
  ) as Record<keyof typeof data.thick, number>;
  const hip = Math.hypot(pose.hip[0] - pose.seated[0], pose.hip[1] - pose.seated[1]) / Math.SQRT2;
  const calf = between(pose.knee, pose.ankle, 0.34);
  const tilt = Math.atan2(pose.head[0] - pose.neck[0], pose.head[1] - pose.neck[1]);
  const lying: OverlayStroke[] = [
    limb(pose.hip, hip, pose.waist, thick.waist),
    limb(pose.waist, thick.waist, pose.chest, thick.chest),
    limb(pose.chest, thick.chest, pose.shoulder, thick.shoulder),
    limb(pose.shoulder, thick.neck, pose.neck, thick.neck * 0.9),
    limb(pose.neck, thick.neck * 0.9, pose.head, thick.neck * 0.9),
    oval(pose.head, (data.headLength * stature) / 2, (data.headHeight * stature) / 2, -tilt * 0.5),
    limb(pose.hip, hip, pose.knee, thick.knee),
    limb(pose.knee, thick.knee, calf, thick.calf),
    limb(calf, thick.calf, pose.ankle, thick.ankle),
    footOf(pose, thick),
  ].map((points) => ({ points, is: "body" }));
  const arm: OverlayStroke[] = [
    limb(pose.shoulder, thick.shoulder * 0.62, pose.elbow, thick.elbow),
    limb(pose.elbow, thick.elbow, pose.wrist, thick.wrist),
    limb(pose.wrist, thick.wrist, pose.fingers, thick.toe),
  ].map((points) => ({ points, is: "arm" }));
  return [...lying, ...arm];
}

/** The foot in its shoe: flat below, from the heel to the toe, up to the ankle. */
function footOf({ heel, toe, ankle }: Pose, thick: Record<"ankle" | "toe", number>): Point[] {
  return [
    heel,
    [ankle[0] + thick.ankle * 1.05, ankle[1]],
    [ankle[0] - thick.ankle, ankle[1] + thick.ankle * 0.2],
    between(ankle, [toe[0], toe[1] + thick.toe * 2], 0.62),
    [toe[0] + thick.toe * 0.6, toe[1] + thick.toe * 2],
    [toe[0], toe[1] + thick.toe],
    toe,
  ];
}

const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];
