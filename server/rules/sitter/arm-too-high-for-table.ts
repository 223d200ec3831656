import { capital } from "../../../grammar/wording.ts";
import { armsOf } from "../../chair/arms.ts";
import { movePoint } from "../../geometry/motion.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import type { Rule } from "../machinery/rule.ts";

import { comfortCaution, decidersOfRail, isForGrown, tellLength } from "./comfort.ts";

export const armTooHighForTable: Rule = {
  code: "arm-too-high-for-table",
  severity: "information",
  title: "Arms do not go under a table",
  explanation: `Arms that meet the rail of a table keep the chair, and its sitter, away from it. The figure is the underside of that rail: measure your own and say \`limit arm-too-high-for-table to 640mm\`. ${comfortCaution}`,
  source: `${capital(seats.underTable.source)}.`,
  limit: { high: seats.underTable.high, dimension: "length" },
  asksForMissing: true,
  find({ chair, limit: { high } }) {
    if (!isForGrown(chair)) return [];
    const tops = armsOf(chair).map((arm) => ({
      arm,
      // It is the front end that goes under.
      top: Math.max(...[arm.start, arm.end].map((end) => movePoint(chair.stance, end)[2])),
    }));
    const [highest] = tops.sort((a, b) => b.top - a.top);
    if (!highest || high === undefined) return [];
    const { arm, top } = highest;
    const said = { says: "sitter.arms-reach", size: top } as const;
    return tellLength(
      armTooHighForTable,
      chair,
      { ...said, subject: arm.name, at: decidersOfRail(arm) },
      { high },
    );
  },
};
