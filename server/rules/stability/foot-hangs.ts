import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import { trimOf } from "../../chair/stance.ts";
import type { TrimDesign } from "../../design/design.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell } from "../machinery/say.ts";

export const footHangs: Rule = {
  code: "foot-hangs",
  severity: "error",
  title: "Feet not in one plane",
  explanation:
    "After `trim` the chair comes down onto its new feet. With more than three feet they must lie in one plane, or the chair rocks: one foot hangs above the floor while the others stand. Trim feet that stand opposite each other alike. `limit foot-hangs to 1mm` changes the distance.",
  source: sourcesOf("foot-out-of-plane"),
  limit: { high: most("foot-out-of-plane"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return [...chair.hanging].flatMap(([name, gap]) => {
      if (gap <= (limit.high ?? 0) + SAME_LENGTH) return [];
      const post = chair.posts.get(name);
      const trims = chair.design.trims.filter((trim) => post && trimOf(post, [trim]) > 0);
      const others = chair.design.trims;
      const place = placeOf(
        chair.design,
        [...trims, ...others]
          .map((trim) => trim.length)
          .concat(post?.design.place ? [{ ...post.design.place, value: 0 }] : []),
      );
      const found = length(gap, units);
      return tell(footHangs, place, {
        message: sentence("foot-hangs", { foot: name, gap: found, most: length(limit.high ?? 0, units) }),
        fixes: bothSides(trims),
        otherwise: sentence("foot-hangs.otherwise"),
        subject: name,
        found,
        allowed: sentence("figure.or-less", { figure: length(limit.high ?? 0, units) }),
        badness: gap,
      });
    });
  },
};

/** A trim of one foot of a pair, made to cut both. */
function bothSides(trims: readonly TrimDesign[]): Fix[] {
  return trims.flatMap(({ posts }) =>
    posts.flatMap(({ value: ref, at, file }) =>
      ref.side === undefined || file !== undefined
        ? []
        : [
            {
              title: sentence("fix.trim-both", { pair: ref.name }),
              edits: [{ start: at.start, end: at.end, text: ref.name }],
            },
          ],
    ),
  );
}
