/**
 * A joint's sizes beside the figures the rules judge them by.
 */
import type { Joint } from "../../chair/chair.ts";
import type { Bound, Design } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";
import { stuffOf } from "../../rules/joints/joint-places.ts";
import { tellings } from "../../rules/joints/tellings.ts";
import { boundsOf } from "../../rules/machinery/limits.ts";
import type { Rule } from "../../rules/machinery/rule.ts";
import { code } from "./markdown.ts";

interface Figures {
  limit: Bound;
  also: Bound;
}

/** Thickness and length of a tenon, each with what is allowed after the file's `limit` lines. */
export function againstRules(joint: Joint, rules: readonly Rule[], design: Design): string[] {
  const { judgedBy } = tellings[joint.kind];
  if (!judgedBy.includes("tenon-too-thin")) return [];
  const figures = (rule: string): Figures | undefined => {
    const row = rules.find((each) => each.code === rule);
    return row && boundsOf(row, design);
  };
  const [thin, thick, long] = [
    figures("tenon-too-thin"),
    figures("tenon-too-thick"),
    figures("tenon-too-long"),
  ];
  const length = (mm: number) => printLength(mm, design.units);
  const stuff = stuffOf(joint);
  const lines: string[] = [];
  if (thin && thick && joint.facts.tenonThick?.value !== "full") {
    const least = Math.max((thin.limit.low ?? 0) * stuff, thin.also.low ?? 0);
    const most = (thick.limit.high ?? 1) * stuff;
    lines.push(
      `Thickness ${length(joint.thick)} on stuff of ${length(stuff)}; ${length(least)} to ${length(most)} is allowed (${code("tenon-too-thin")}, ${code("tenon-too-thick")})`,
    );
  }
  if (long && !joint.facts.through && joint.depthThere > 0) {
    const most = joint.depthThere - (long.limit.low ?? 0);
    lines.push(
      `Length ${length(joint.long)} into ${length(joint.depthThere)}; up to ${length(most)} is allowed (${code("tenon-too-long")})`,
    );
  }
  return lines;
}
