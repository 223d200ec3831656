import { sentence } from "../../../../grammar/sentences/sentence.ts";
import { roundForm } from "./forms.ts";
import { COMMON, type JointKind } from "./kind.ts";
import { asksForTenon } from "./rectangular.ts";
import { acrossThickness, placedAcross, tell, tenonLong, whole } from "./sizing.ts";

/** A turned tenon: as the text says, or the whole of turned stuff where its tenon has no other thickness. */
export const round = {
  form: roundForm,
  reads: [...COMMON, "round", "tenonLong", "mitre", "through"],
  isAsked: (facts, site) =>
    facts.round !== undefined ||
    (site.round !== undefined &&
      asksForTenon(facts) &&
      (facts.tenonThick === undefined || facts.tenonThick.value === "full")),
  sizes(site, _frame, faults) {
    if (site.chosen.facts.round?.value.tip !== undefined && site.entered.kind !== "seat")
      return tell(site, faults, sentence("fault.round-taper"));
    const diameter = site.chosen.facts.round?.value.diameter ?? site.round ?? 0;
    if (!(diameter > 0)) return undefined;
    const shoulders = { ...acrossThickness(site, diameter), ...placedAcross(site, diameter) };
    return { thick: diameter, wide: diameter, shoulders };
  },
  long: (site, depth, faults) => {
    const { round: turned, tenonLong: own } = site.chosen.facts;
    return tenonLong(turned?.value.long ?? own?.value, site, depth, faults);
  },
  sections(sizes, { round: turned }) {
    const { diameter = 1, tip = diameter } = turned?.value ?? {};
    return [{ ...whole(sizes), ...(tip < diameter && { tip: tip / diameter }) }];
  },
  haunched: false,
  open: false,
} as const satisfies JointKind;
