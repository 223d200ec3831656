import { sentence } from "../../../grammar/sentences/sentence.ts";
import { pegsOf } from "../../joinery/pegs.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell, written } from "../machinery/say.ts";
import { jointPlace, judgedJoints, tenonOf } from "./joint-places.ts";

export const pegMisplaced: Rule = {
  code: "peg-misplaced",
  severity: "warning",
  title: "Peg too near an edge",
  explanation:
    "A peg's hole wants wood around it: near the end of the tenon it splits out along the grain when the joint is drawn up, near the edge of the post it breaks the arris. Use a thinner peg or another `setback`, which is from the shoulder to the middle of the hole; without one the hole lies halfway along the tenon, or nearer its shoulder if the tenon is long. `limit peg-misplaced to 7mm` changes the figure.",
  source: sourcesOf("wood-around-peg"),
  limit: { low: least("wood-around-peg"), dimension: "length" },
  find({ chair, limit, tree }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    return judgedJoints(chair, "peg-misplaced").flatMap((joint) => {
      const pegs = pegsOf(joint);
      if (!pegs) return [];
      const worst = [
        { where: sentence("peg-near.end"), wood: pegs.toEnd },
        { where: sentence("peg-near.shoulder"), wood: pegs.toShoulder },
        {
          where: sentence((joint.facts.peg?.value.count ?? 1) > 1 ? "peg-near.peg-or-edge" : "peg-near.edge"),
          wood: pegs.toEdge,
        },
      ].sort((a, b) => a.wood - b.wood)[0];
      if (!worst || worst.wood >= allowed - SAME_LENGTH) return [];
      const room = pegs.toEnd + pegs.toShoulder >= 2 * allowed;
      const setback = length(pegs.setback + (pegs.toEnd - pegs.toShoulder) / 2, units);
      const crowded = worst.wood === pegs.toEdge;
      const place = jointPlace(chair, joint, joint.facts.peg);
      const line = /^[^\n;#}]*/.exec(tree.text.slice(place.start))?.[0].trimEnd() ?? "";
      const given = / setback (.*)$/.exec(line);
      const start = place.start + (given ? given.index : line.length);
      return tell(pegMisplaced, place, {
        message: sentence("peg-misplaced", {
          tenon: tenonOf(joint),
          wood: length(Math.max(0, worst.wood), units),
          where: worst.where,
          least: lengthOrMore(allowed, units),
        }),
        otherwise: crowded
          ? sentence("peg-misplaced.otherwise-several")
          : sentence("peg-misplaced.otherwise"),
        subject: joint.name,
        found: length(worst.wood, units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
        badness: allowed - worst.wood,
        ...(room && !crowded
          ? {
              fixes: [
                {
                  title: sentence("fix.set-from-shoulder", { figure: written(setback) }),
                  edits: [{ start, end: place.start + line.length, text: ` setback ${written(setback)}` }],
                },
              ],
            }
          : {}),
      });
    });
  },
};
