import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { SectionBox } from "../../chair.ts";
import { rectangularForm } from "./forms.ts";
import { COMMON, type JointKind } from "./kind.ts";
import { acrossThickness, acrossWidth, placedAcross, sizeOf, tell, whole } from "./sizing.ts";

/**
 * A separate tongue, half its length in either part, square to the shoulder; its grain runs along it and its timber is the rail's. Several
 * lie one above the other, `twin gap` apart, or as far apart as they are wide.
 */
export const looseTenon = {
  form: rectangularForm,
  reads: [...COMMON, "looseTenon", "twin"],
  isAsked: (facts) => facts.looseTenon !== undefined,
  sizes(site, frame, faults) {
    const asked = site.chosen.facts.looseTenon?.value;
    if (!asked) return undefined;
    const thick = sizeOf(asked.thick.value, site, frame, site.stuff);
    if (!(thick > 0)) return tell(site, faults, sentence("fault.loose-tenon-thin"));
    const given = asked.wide && sizeOf(asked.wide.value, site, frame, site.wide);
    const across =
      given === undefined ? acrossWidth(site, frame) : { wide: given, ...placedAcross(site, given) };
    const { top, bottom, wide } = across;
    const gaps = (asked.count - 1) * (site.chosen.facts.twin?.value.gap ?? 0);
    if (!(wide - gaps > 0)) return tell(site, faults, sentence("fault.loose-tenon-narrow"));
    return { thick, wide, shoulders: { ...acrossThickness(site, thick), top, bottom } };
  },
  long: (site) => (site.chosen.facts.looseTenon?.value.long.value ?? 0) / 2,
  sections(sizes, facts) {
    const count = facts.looseTenon?.value.count ?? 1;
    const gap = facts.twin?.value.gap ?? sizes.wide / (2 * count - 1);
    const each = (sizes.wide - (count - 1) * gap) / count;
    return Array.from({ length: count }, (_, k): SectionBox => {
      const high = sizes.wide / 2 - k * (each + gap);
      return { ...whole(sizes), wide: [high - each, high] };
    });
  },
  haunched: false,
  open: false,
  square: true,
  separate: true,
  refuses: ["mitre", "haunch", "through", "dowels", "bridle"],
} as const satisfies JointKind;
