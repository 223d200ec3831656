import { sentence } from "../../../../grammar/sentences/sentence.ts";
import { dot } from "../../../geometry/vec.ts";
import { forkedForm } from "./forms.ts";
import { COMMON, type JointKind } from "./kind.ts";
import { acrossThickness, acrossWidth, sizeOf, tell, tenonLong, whole } from "./sizing.ts";

/**
 * The end is forked over the whole of what it meets. A third of the rail is left out between the fork's tines, unless the text says how
 * much.
 */
export const fork = {
  form: forkedForm,
  reads: [...COMMON, "bridle", "tenonThick", "tenonWide", "tenonLong", "mitre", "through"],
  isAsked: (facts) => facts.bridle !== undefined,
  sizes(site, frame, faults) {
    const given = site.chosen.facts.tenonThick?.value;
    const thick = given && given !== "full" ? sizeOf(given, site, frame, site.stuff) : site.stuff / 3;
    const { top, bottom, wide } = acrossWidth(site, frame);
    const { outside, inside } = acrossThickness(site, thick);
    if (Math.abs(dot(frame.acrossThick, site.wood.grain)) > Math.SQRT1_2)
      return tell(site, faults, sentence("fault.fork-grain"));
    if (thick > 0 && wide > 0 && outside > 0 && inside > 0)
      return { thick, wide, shoulders: { outside, inside, top, bottom } };
    return tell(site, faults, sentence("fault.fork-thin"));
  },
  long: (site, depth, faults) =>
    depth > 0 ? depth : tenonLong(site.chosen.facts.tenonLong?.value, site, depth, faults),
  sections(sizes) {
    const { thick, shoulders } = sizes;
    return [
      { ...whole(sizes), thick: [thick / 2, thick / 2 + shoulders.outside] },
      { ...whole(sizes), thick: [-thick / 2 - shoulders.inside, -thick / 2] },
    ];
  },
  haunched: false,
  open: true,
} as const satisfies JointKind;
