import { sentence } from "../../../grammar/sentences/sentence.ts";
import { printSlope } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
import { isHeldTogether, strengthCaution, stretcherBelow } from "./work.ts";

export const frameTooLimp: Rule = {
  code: "frame-too-limp",
  severity: "warning",
  title: "Frame that wobbles",
  explanation: `A chair that gives way level as soon as it is leant on feels weak and works its joints loose. The seat is pushed level as the standards push it, its feet kept from sliding, and may move by so much of its height. Deeper rails, a stretcher, or stouter legs help. How stiff joints are decides most of it and is known least. \`limit frame-too-limp to 1:40\` asks for a stiffer one. ${strengthCaution}`,
  source: sourcesOf("most-sway"),
  limit: { high: Math.atan(most("most-sway")), dimension: "angle", of: "slope" },
  asksForMissing: true,
  late: "only",
  find({ chair, tree, limit, late }) {
    const { units } = chair.design;
    if (!isHeldTogether(chair)) return [];
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    return (late?.strength.sways ?? []).flatMap((sway) => {
      const lean = (mm: number) => Math.atan2(mm, sway.height);
      const [middle, low, high] = [sway.mm, sway.low, sway.high].map(lean) as [number, number, number];
      // Limp joints alone are no verdict: every chair has them by that figure.
      if (!(sway.height > 0) || middle <= allowed) return [];
      const unsure = low <= allowed;
      const rails = (chair.seat?.design.on ?? []).flatMap(({ value }) =>
        [...chair.rails.values()].filter(({ id }) => id.stem === value.name),
      );
      const along = rails.filter(({ along: [x, y] }) =>
        sway.towards === "forward" ? Math.abs(y) > Math.abs(x) : Math.abs(x) > Math.abs(y),
      );
      const sections = along.map(({ design }) => ("section" in design ? design.section : undefined));
      const span = unsure
        ? sentence("frame-too-limp.span", {
            low: length(sway.low, units),
            high: length(sway.high, units),
          })
        : "";
      return tell(
        unsure ? { ...frameTooLimp, severity: "information" } : frameTooLimp,
        placeOf(chair.design, [...sections, chair.seat?.design]),
        {
          message: sentence(`frame-too-limp.${sway.towards}`, {
            moves: length(sway.mm, units),
            load: sway.title,
            most: length(Math.tan(allowed) * sway.height, units),
            span,
          }),
          otherwise: sentence("frame-too-limp.otherwise"),
          subject: "seat",
          found: `${length(sway.mm, units)} (${printSlope(middle)})`,
          allowed: sentence("figure.or-less", { figure: printSlope(allowed) }),
          badness: Math.min(high, middle) - allowed,
          fixes: along.slice(0, 1).flatMap((rail) => stretcherBelow(chair, tree.text, rail)),
        },
      );
    });
  },
};
