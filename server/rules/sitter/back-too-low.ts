import { capital } from "../../../grammar/wording.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { sizesOf } from "../../sitter/sizes.ts";
import type { Rule } from "../machinery/rule.ts";

import { comfortCaution, decidersOfTop, isForGrown, tellLength } from "./comfort.ts";

export const backTooLow: Rule = {
  code: "back-too-low",
  severity: "warning",
  title: "Back too low",
  explanation: `A back that ends at the waist carries nobody and catches the spine. Raise its highest member, or leave the back out. For grown sitters. \`limit back-too-low to 250mm\` changes the figure. ${comfortCaution}`,
  source: `${capital(seats.backTop.source)}.`,
  limit: { low: seats.backTop.low, dimension: "length" },
  asksForMissing: true,
  find({ chair, limit }) {
    const top = isForGrown(chair) ? sizesOf(chair).backTop : undefined;
    if (top === undefined) return [];
    const said = { says: "sitter.back-ends", size: top } as const;
    return tellLength(backTooLow, chair, { ...said, subject: "seat", at: decidersOfTop(chair) }, limit);
  },
};
