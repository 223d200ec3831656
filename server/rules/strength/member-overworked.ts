import { sentence } from "../../../grammar/sentences/sentence.ts";
import { printMargin } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { designOf, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";
import { overworkedMembers } from "./members.ts";
import { spanOf, strengthCaution } from "./work.ts";

export const memberOverworked: Rule = {
  code: "member-overworked",
  severity: "warning",
  title: "Part asked for more than its wood bears",
  explanation: `Under the loads of \`strength\` and of the file's own \`load\` blocks a part is bent, pulled, pressed, sheared and twisted. Its demand, \`PART.demand\`, is that over what its wood bears there, less mortises and with the slope of its grain. From 1 it breaks on the mean. A stouter section, a mortise elsewhere or less deep, a straighter piece or a stronger timber helps. \`limit member-overworked to 0.8\` asks for more in hand. ${strengthCaution}`,
  source: sourcesOf("most-demand"),
  limit: { high: most("most-demand"), dimension: "number", of: "as margin" },
  asksForMissing: true,
  late: "only",
  find({ chair, limit, late }) {
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    return overworkedMembers(chair, late, allowed, false).map(({ ruling, unsure }) => {
      const part = designOf(chair, ruling.name);
      const section = part && "section" in part ? part.section : undefined;
      const round = part && "round" in part ? part.round : undefined;
      return tell(
        unsure ? { ...memberOverworked, severity: "information" } : memberOverworked,
        placeOf(chair.design, [section, round, part]),
        {
          message: sentence("member-overworked", {
            Part: named(chair, ruling.name),
            demand: printMargin(unsure ? ruling.high : ruling.demand),
            load: ruling.title,
            most: printMargin(allowed),
            span: spanOf(ruling, unsure),
          }),
          otherwise: sentence("member-overworked.otherwise"),
          subject: ruling.name,
          found: printMargin(ruling.demand),
          allowed: sentence("figure.or-less", { figure: printMargin(allowed) }),
          badness: (unsure ? ruling.high : ruling.demand) - allowed,
        },
      );
    });
  },
};
