import type { Chair, Joint } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength, printQuantity } from "../../design/units.ts";
import { pegsOf } from "../../joinery/pegs.ts";
import { tellings } from "../../rules/joints/tellings.ts";
import type { Rule } from "../../rules/machinery/rule.ts";
import type { Study } from "../../study.ts";
import { jointsCalled } from "../names/chair-parts.ts";
import { closesIn } from "./about-assembly.ts";
import { againstRules } from "./about-joint-rules.ts";
import { demandLine, jointMovesLine, rulingOf } from "./about-strength.ts";
import { code } from "./markdown.ts";

/** A joint as cut, in one phrase: `tenon 7.3 mm × 52 mm, 28 mm long`. */
export const cutSizes = (joint: Joint, unit: LengthUnit): string =>
  tellings[joint.kind].asCut(joint, (mm) => printLength(mm, unit));

/** A joint's sizes as cut, beside what the rules ask and what they found. */
export function aboutJoint(joint: Joint, rules: readonly Rule[], study: Study): string[] {
  const { problems, design, chair } = study;
  const length = (mm: number) => printLength(mm, design.units);
  const lines = [
    `${code(joint.name)}: ${cutSizes(joint, design.units)}`,
    ...demandLine(rulingOf(study, "joints", joint.name)),
  ];
  if (joint.shape === "rectangular") {
    const { outside, inside, top, bottom } = shouldersOf(joint, chair);
    lines.push(
      `Shoulders: outside ${length(outside)}, inside ${length(inside)}, top ${length(top)}, bottom ${length(bottom)}`,
    );
  }
  lines.push(...againstRules(joint, rules, design));
  if (joint.shape !== "none") {
    lines.push(`Beside the mortise at least ${length(joint.mortiseWall)} of wood`);
    lines.push(...heldBy(joint, design.units));
  }
  lines.push(...jointMovesLine(study, joint.name));
  const closes = closesIn(chair, joint.name);
  if (closes) lines.push(closes);
  for (const { subject, code: rule, found, allowed } of problems) {
    if (subject === joint.name && found)
      lines.push(`${code(rule)}: found ${found}${allowed ? `, allowed ${allowed}` : ""}`);
  }
  return lines;
}

/** By the faces of the part: of one that lies flat the tenon's thickness stands up. */
function shouldersOf({ part, shoulders }: Joint, chair: Chair): Joint["shoulders"] {
  const { outside, inside, top, bottom } = shoulders;
  return chair.rails.get(part)?.flat
    ? { top: outside, bottom: inside, outside: top, inside: bottom }
    : shoulders;
}

/** What holds it: glue, pegs, the fit. */
function heldBy(joint: Joint, unit: LengthUnit): string[] {
  const length = (mm: number) => printLength(mm, unit);
  const { glue, fit } = joint.facts;
  const area = printQuantity({ number: joint.glueArea, dimension: "area" }, unit);
  const lines = [
    glue?.value === "none"
      ? "No glue"
      : `Glued long grain to long grain over ${area}${glue ? `, ${glue.value}` : ""}`,
  ];
  const pegs = pegsOf(joint);
  if (pegs)
    lines.push(
      `${pegs.count === 1 ? "A peg" : `${pegs.count} pegs`} ⌀ ${length(pegs.diameter)}, ${length(pegs.setback)} from the shoulder${pegs.draw ? `, drawn ${length(pegs.draw)}` : ""}; ${length(pegs.toEnd)} of wood to the tenon's end`,
    );
  if (fit && fit.value !== 0)
    lines.push(
      fit.value > 0
        ? `${length(fit.value)} loose in its mortise`
        : `${length(-fit.value)} tight in its mortise`,
    );
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
