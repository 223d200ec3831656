import type { Chair, Joint } from "../chair/chair.ts";
import type { LengthUnit } from "../design/design.ts";
import { printLength } from "../design/units.ts";
import type { Rule } from "../rules/rule.ts";
import type { Study } from "../study.ts";
import { againstRules } from "./about-joint-rules.ts";
import { jointsCalled } from "./chair-parts.ts";
import { code } from "./markdown.ts";

/** A joint as cut, in one phrase: `tenon 7.3 mm × 52 mm, 28 mm long`. */
export function cutSizes(joint: Joint, unit: LengthUnit): string {
  const length = (mm: number) => printLength(mm, unit);
  if (joint.shape === "none") return "no tenon";
  if (joint.shape === "round") return `round tenon ⌀ ${length(joint.thick)}, ${length(joint.long)} long`;
  return `tenon ${length(joint.thick)} × ${length(joint.wide)}, ${length(joint.long)} long`;
}

/** A joint's sizes as cut, beside what the rules ask and what they found. */
export function aboutJoint(joint: Joint, rules: readonly Rule[], { problems, design }: Study): string[] {
  const length = (mm: number) => printLength(mm, design.units);
  const lines = [`${code(joint.name)}: ${cutSizes(joint, design.units)}`];
  if (joint.shape === "rectangular") {
    const { outside, inside, top, bottom } = joint.shoulders;
    lines.push(
      `Shoulders: outside ${length(outside)}, inside ${length(inside)}, top ${length(top)}, bottom ${length(bottom)}`,
    );
  }
  lines.push(...againstRules(joint, rules, design));
  if (joint.shape !== "none") lines.push(`Beside the mortise at least ${length(joint.mortiseWall)} of wood`);
  for (const { subject, code: rule, found, allowed } of problems) {
    if (subject === joint.name && found)
      lines.push(`${code(rule)}: found ${found}${allowed ? `, allowed ${allowed}` : ""}`);
  }
  return lines;
}

/** Most uses of a joint told one by one. */
const MOST_USES = 12;

/** A named joint: every place it is used, with its size there. */
export function aboutJointDesign(chair: Chair, name: string, unit: LengthUnit): string[] {
  const uses = jointsCalled(chair, name);
  if (!uses.length) return ["Not used"];
  const lines = uses.slice(0, MOST_USES).map((joint) => `${code(joint.name)}: ${cutSizes(joint, unit)}`);
  if (uses.length > MOST_USES) lines.push(`and ${uses.length - MOST_USES} more`);
  return lines;
}
