import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Rail } from "../../chair/chair.ts";
import type { StickDesign } from "../../design/design.ts";
import { distance } from "../../geometry/vec.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { plainBoth } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, SAME_LENGTH, tell } from "../machinery/say.ts";

export const sticksTooFarApart: Rule = {
  code: "sticks-too-far-apart",
  severity: "warning",
  title: "Sticks too far apart for a back",
  explanation:
    "A back of sticks carries its sitter on several at once. Where they stand far apart, one alone takes the load and is felt, and a child's head may get between them. The gap is measured between neighbours of one row, halfway up. Put in more sticks, or nearer together. Where children use the chair, follow the rules of your country for openings. `limit sticks-too-far-apart to 90mm` changes the figure.",
  source: sourcesOf("gap-between-sticks"),
  limit: { high: most("gap-between-sticks"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.high ?? most("gap-between-sticks");
    const rows = new Map<StickDesign, Rail[]>();
    for (const stick of chair.sticks.values()) {
      const design = stick.design as StickDesign;
      if (stick.side !== "right") rows.set(design, [...(rows.get(design) ?? []), stick]);
    }
    return [...rows].flatMap(([design, sticks]) => {
      const gaps = sticks.slice(1).map((stick, k) => ({ gap: gapBetween(sticks[k]!, stick), k }));
      if (gaps.length === 0) return [];
      const { gap, k } = gaps.reduce((widest, each) => (each.gap > widest.gap ? each : widest));
      if (gap <= allowed + SAME_LENGTH) return [];
      return tell(
        sticksTooFarApart,
        placeOf(chair.design, [design.count, design.feet, design.heads, design]),
        {
          message: sentence("sticks-too-far-apart", {
            ...plainBoth(sticks[k]!.name, sticks[k + 1]!.name),
            gap: length(gap, units),
            most: lengthOrLess(allowed, units),
          }),
          otherwise: sentence("sticks-too-far-apart.otherwise"),
          subject: sticks[k + 1]!.name,
          found: length(gap, units),
          allowed: `${lengthOrLess(allowed, units)} or less`,
          badness: gap - allowed,
        },
      );
    });
  },
};

/** Between two sticks halfway up, mm. */
function gapBetween(a: Rail, b: Rail): number {
  const middle = ({ start, end }: Rail) =>
    [0, 1, 2].map((i) => (start[i]! + end[i]!) / 2) as [number, number, number];
  return distance(middle(a), middle(b)) - (a.thick + b.thick) / 2;
}
