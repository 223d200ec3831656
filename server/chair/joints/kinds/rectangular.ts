import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { JointFacts } from "../../../design/design.ts";
import { rectangularForm } from "./forms.ts";
import { COMMON, type JointKind } from "./kind.ts";
import { acrossThickness, acrossWidth, sizeOf, tell, tenonLong, whole } from "./sizing.ts";

/** Whether the text gives a tenon sawn out of the end, by any of its sizes. */
export const asksForTenon = ({ tenonThick, tenonLong, tenonWide }: JointFacts): boolean =>
  (tenonThick ?? tenonLong ?? tenonWide) !== undefined;

/** One tenon sawn out of the end, perhaps with a haunch beside it. */
export const rectangular = {
  form: rectangularForm,
  reads: [...COMMON, "tenonThick", "tenonWide", "tenonLong", "haunch", "mitre", "through"],
  isAsked: asksForTenon,
  sizes(site, frame, faults) {
    const given = site.chosen.facts.tenonThick?.value;
    if (!given) return tell(site, faults, sentence("fault.tenon-no-thickness"));
    const thick = given === "full" ? site.stuff : sizeOf(given, site, frame, site.stuff);
    if (!(thick > 0)) return tell(site, faults, sentence("fault.tenon-thin"));
    const { top, bottom, wide } = acrossWidth(site, frame);
    if (!(wide > 0)) return tell(site, faults, sentence("fault.tenon-narrow"));
    return { thick, wide, shoulders: { ...acrossThickness(site, thick), top, bottom } };
  },
  long: (site, depth, faults) => tenonLong(site.chosen.facts.tenonLong?.value, site, depth, faults),
  sections: (sizes) => [whole(sizes)],
  haunched: true,
  open: false,
} as const satisfies JointKind;
