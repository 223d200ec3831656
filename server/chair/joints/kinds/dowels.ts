import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { SectionBox } from "../../chair.ts";
import { roundForm } from "./forms.ts";
import { COMMON, type JointKind } from "./kind.ts";
import { acrossThickness, tell, whole } from "./sizing.ts";

/** Dowels instead of a tenon, half of each in either part, spread evenly over the width that the shoulders leave. */
export const dowels = {
  form: roundForm,
  reads: [...COMMON, "dowels", "mitre", "through"],
  isAsked: (facts) => facts.dowels !== undefined,
  sizes(site, _frame, faults) {
    const { facts } = site.chosen;
    const { count, diameter, long } = facts.dowels?.value ?? { count: 0, diameter: 0, long: 0 };
    if (!(diameter > 0 && long > 0)) return undefined;
    const [top, bottom] = [facts.shoulderTop?.value ?? 0, facts.shoulderBottom?.value ?? 0];
    const step = (site.wide - top - bottom) / count;
    if (step <= diameter) return tell(site, faults, sentence("fault.dowels"));
    const beside = (step - diameter) / 2;
    return {
      thick: diameter,
      wide: diameter + (count - 1) * step,
      shoulders: { ...acrossThickness(site, diameter), top: top + beside, bottom: bottom + beside },
    };
  },
  long: (site) => (site.chosen.facts.dowels?.value.long ?? 0) / 2,
  sections(sizes, facts) {
    const { thick, wide } = sizes;
    const count = facts.dowels?.value.count ?? 1;
    const step = count > 1 ? (wide - thick) / (count - 1) : 0;
    return Array.from({ length: count }, (_, k): SectionBox => {
      const middle = k * step - (wide - thick) / 2;
      return { ...whole(sizes), wide: [middle - thick / 2, middle + thick / 2] };
    });
  },
  haunched: false,
  open: false,
} as const satisfies JointKind;
