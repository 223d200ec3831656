import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import { backrestOf } from "../../chair/values/backrest.ts";
import { printAngle } from "../../design/units.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { figure } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE, tell } from "../machinery/say.ts";
import { comfortCaution, decidersOfTop, isForGrown } from "./comfort.ts";
import { leansOf } from "./rake.ts";

const { backLean } = seats;
const RADIANS = Math.PI / 180;

export const backLeanOutside: Rule = {
  code: "back-lean-outside",
  severity: "warning",
  title: "Back too upright or too laid back",
  explanation: `Measured through the faces that the back is leant on, the lowest and the highest, from square to the seat: rails set back in their posts, bows and slats lean a back otherwise than its posts do. Too upright, it pushes its sitter off the seat; too far back, nobody can eat or write in it. For grown sitters. \`limit back-lean-outside from 2deg to 20deg\` changes the figures. ${comfortCaution}`,
  source: `${capital(backLean.source)} (${backLean.seen}).`,
  limit: { low: backLean.low * RADIANS, high: backLean.high * RADIANS, dimension: "angle" },
  asksForMissing: true,
  find({ chair, limit: { low, high } }) {
    const back = isForGrown(chair) ? backrestOf(chair) : undefined;
    if (!back || leansOf(chair).some(({ lean, declared }) => isOut(lean, declared ?? postsLean))) return [];
    const { rake } = back;
    const over = high !== undefined && rake > high + SAME_ANGLE;
    const bound = over ? high : low;
    if (bound === undefined || (!over && rake >= bound - SAME_ANGLE)) return [];
    const allowed = sentence(over ? "figure.or-less" : "figure.or-more", { figure: printAngle(bound) });
    return [
      tell(backLeanOutside, placeOf(chair.design, decidersOfTop(chair)), {
        message: sentence("back-lean-outside", {
          lean: printAngle(rake),
          low: back.lowest.design.name,
          high: back.highest.design.name,
          allowed,
        }),
        subject: back.highest.name,
        found: printAngle(rake),
        allowed,
        badness: Math.abs(rake - bound),
      }),
    ];
  },
};

/** What the rules about the posts' lean allow. */
const postsLean = figure("seat-back-rake");

function isOut(lean: number, { low, high }: { low?: number; high?: number }): boolean {
  return (low !== undefined && lean < low - SAME_ANGLE) || (high !== undefined && lean > high + SAME_ANGLE);
}
