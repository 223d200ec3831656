import { capital } from "../../../grammar/wording.ts";
import { armsOf } from "../../chair/arms.ts";
import { fitNamed } from "../../sitter/fit.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { sizesOf } from "../../sitter/sizes.ts";
import type { Rule } from "../machinery/rule.ts";

import { comfortCaution, decidersOfRail, isForGrown, tellLength } from "./comfort.ts";

export const armHeightOutside: Rule = {
  code: "arm-height-outside",
  severity: "warning",
  title: "Arms too high or too low",
  explanation: `Arms too high lift the shoulders; too low, nobody reaches them without leaning over. A sitter with an \`elbow-rest-height\` is judged by that. For grown sitters. \`limit arm-height-outside from 160mm to 260mm\` changes the figures. ${comfortCaution}`,
  source: `${capital(seats.arm.source)} (${seats.arm.seen}).`,
  limit: { low: seats.arm.low, high: seats.arm.high, dimension: "length" },
  asksForMissing: true,
  find({ chair, limit }) {
    const sizes = sizesOf(chair);
    const [arm] = armsOf(chair);
    if (!isForGrown(chair) || !arm || sizes.armHeight === undefined) return [];
    const sitter = chair.design.sitter.value;
    const own =
      sitter.is === "named" ? fitNamed(sizes, sitter).find(({ check }) => check.name === "arms") : undefined;
    const range = own
      ? {
          low: sizes.armHeight - ((own.high ?? own.own) - own.own),
          high: sizes.armHeight + (own.own - (own.low ?? own.own)),
        }
      : limit;
    const said = {
      says: "sitter.arms",
      size: sizes.armHeight,
    } as const;
    return tellLength(
      armHeightOutside,
      chair,
      { ...said, subject: arm.name, at: decidersOfRail(arm) },
      range,
    );
  },
};
