import type { JointKind } from "./kind.ts";
import { asksForTenon, rectangular } from "./rectangular.ts";
import { whole } from "./sizing.ts";

/** Two tenons one above the other, with wood between; one where the gap leaves nothing of them. */
export const twin = {
  ...rectangular,
  reads: [...rectangular.reads, "twin"],
  isAsked: (facts) => facts.twin !== undefined && asksForTenon(facts),
  sections(sizes, facts) {
    const all = whole(sizes);
    const gap = facts.twin?.value.gap ?? 0;
    if (gap >= sizes.wide) return [all];
    return [
      { ...all, wide: [gap / 2, sizes.wide / 2] },
      { ...all, wide: [-sizes.wide / 2, -gap / 2] },
    ];
  },
} as const satisfies JointKind;
