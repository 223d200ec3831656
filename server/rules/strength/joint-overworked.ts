import { sentence } from "../../../grammar/sentences/sentence.ts";
import { printMargin } from "../../design/units.ts";
import { jointPlace, sizesOf } from "../joints/joint-places.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { designOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";
import { isHeldTogether, overworked, spanOf, strengthCaution, stretcherBelow } from "./work.ts";

/** Most joints that are told one by one; the others work less. */
const MOST_TOLD = 6;

export const jointOverworked: Rule = {
  code: "joint-overworked",
  severity: "warning",
  title: "Joint asked for more than it bears",
  explanation: `Under the loads of \`strength\` and of the file's own \`load\` blocks each joint passes on a moment, a pull and a push. Its demand, \`PART.END.demand\`, is that over what the joint bears. From 1 it is asked for more than tested joints of its size bore, with the margin that 95 in 100 of them had. A wider tenon (a deeper rail), a longer one, a stretcher or a stronger timber helps. \`limit joint-overworked to 0.8\` asks for more in hand. ${strengthCaution}`,
  source: sourcesOf("most-demand"),
  limit: { high: most("most-demand"), dimension: "number", of: "as margin" },
  asksForMissing: true,
  late: "only",
  find({ chair, tree, limit, late }) {
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    let told = 0;
    if (!isHeldTogether(chair)) return [];
    return (late?.strength.joints ?? []).flatMap((ruling) => {
      const joint = chair.joints.get(ruling.name);
      const verdict = overworked(ruling, allowed);
      if (!joint || !verdict.is || told >= MOST_TOLD) return [];
      told++;
      const sizes = sizesOf(joint);
      const part = designOf(chair, joint.part);
      const section = part && "section" in part ? part.section : undefined;
      const place = jointPlace(chair, joint);
      const near = jointPlace(chair, joint, section, sizes.long, sizes.wide);
      const rail = chair.rails.get(joint.part);
      return tell(
        verdict.unsure ? { ...jointOverworked, severity: "information" } : jointOverworked,
        { ...place, ...(near.deciders && { deciders: near.deciders }) },
        {
          message: sentence("joint-overworked", {
            part: plain(joint.part),
            host: plain(joint.entered.name),
            demand: printMargin(verdict.unsure ? ruling.high : ruling.demand),
            load: ruling.title,
            most: printMargin(allowed),
            span: spanOf(ruling, verdict.unsure),
          }),
          otherwise: sentence("joint-overworked.otherwise"),
          subject: joint.name,
          found: printMargin(ruling.demand),
          allowed: sentence("figure.or-less", { figure: printMargin(allowed) }),
          badness: (verdict.unsure ? ruling.high : ruling.demand) - allowed,
          fixes: rail ? stretcherBelow(chair, tree.text, rail) : [],
        },
      );
    });
  },
};
