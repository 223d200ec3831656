import { sentence } from "../../../grammar/sentences/sentence.ts";
import { printMargin } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { designOf, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
import { archLeaves, overworkedMembers } from "./members.ts";
import { spanOf, strengthCaution } from "./work.ts";

export const railSlenderAtArch: Rule = {
  code: "rail-slender-at-arch",
  severity: "warning",
  title: "Rail too slender at its arch",
  explanation: `An arch takes wood from the middle of a rail, where a sitter on it bends it most, and bending goes with the square of what is left of its depth. A flatter arch or a deeper rail helps; the ends keep their wide tenons. \`limit rail-slender-at-arch to 0.8\` asks for more in hand. ${strengthCaution}`,
  source: sourcesOf("most-demand"),
  limit: { high: most("most-demand"), dimension: "number", of: "as margin" },
  asksForMissing: true,
  late: "only",
  find({ chair, limit, late }) {
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    return overworkedMembers(chair, late, allowed, true).map(({ ruling, unsure }) => {
      const part = designOf(chair, ruling.name);
      const arches = part?.is === "rail" ? part.arches : [];
      const rail = chair.rails.get(ruling.name);
      const deep = archLeaves(chair, ruling) * Math.max(rail?.wide ?? 0, rail?.thick ?? 0);
      return tell(
        unsure ? { ...railSlenderAtArch, severity: "information" } : railSlenderAtArch,
        placeOf(chair.design, [...arches, part && "section" in part ? part.section : undefined, part]),
        {
          message: sentence("rail-slender-at-arch", {
            Rail: named(chair, ruling.name),
            deep: length(deep, chair.design.units),
            demand: printMargin(unsure ? ruling.high : ruling.demand),
            load: ruling.title,
            most: printMargin(allowed),
            span: spanOf(ruling, unsure),
          }),
          otherwise: sentence("rail-slender-at-arch.otherwise"),
          subject: ruling.name,
          found: printMargin(ruling.demand),
          allowed: sentence("figure.or-less", { figure: printMargin(allowed) }),
          badness: (unsure ? ruling.high : ruling.demand) - allowed,
        },
      );
    });
  },
};
