import { tightestOf } from "../../chair/bows/bow.ts";
import { stripLength } from "../../chair/bows/strip.ts";
import type { Bow, Chair } from "../../chair/chair.ts";
import { seatLeanOf } from "../../chair/seat/solid/leg.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printAngle, printLength } from "../../design/units.ts";
import { cutSizes } from "./about-joint.ts";

/** What is worth knowing of a bow: its section, the strip it is bent from, its tightest bend, and its feet. */
export function aboutBow(chair: Chair, bow: Bow, unit: LengthUnit): string[] {
  const length = (mm: number) => printLength(mm, unit);
  const { thick, wide } = bow.sizeAt(bow.path.length / 2);
  const size = bow.round === undefined ? `${length(thick)} × ${length(wide)}` : `⌀ ${length(bow.round)}`;
  const lines = [
    `${size}, ${length(bow.path.length)} along its centre line`,
    `Bent from a strip ${length(stripLength(bow, chair))} long, to ${length(tightestOf(bow))} inside at its tightest`,
  ];
  const lean = seatLeanOf(chair.seat, bow);
  if (lean)
    lines.push(
      `Leans ${printAngle(lean.lean)} from square to the seat, sight line ${printAngle(lean.sightLine)}`,
    );
  const foot = [...chair.joints.values()].find(({ part, shape }) => part === bow.name && shape !== "none");
  if (foot) lines.push(`Each foot: ${cutSizes(foot, unit)}`);
  return lines;
}
