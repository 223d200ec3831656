import { sentence } from "../../../grammar/sentences/sentence.ts";
import { grainOf } from "../../chair/grain.ts";
import { printSlope } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE, tell } from "../machinery/say.ts";

export const shortGrain: Rule = {
  code: "short-grain",
  severity: "warning",
  title: "Grain runs out of a curved post",
  explanation:
    "A curved post that is sawn from a straight board has grain that runs out at its sides where it turns from it, and it breaks there. `back.grain-slope` gives it, at its least in the board. At 1 in 10 the bending strength is down to 81 %, at 1 in 5 to 55 %, and it breaks sooner still under a blow. Bend the post less, or bend the wood itself: steam it, or glue it up of thin strips. `limit short-grain to 1:8` changes the slope.",
  source: sourcesOf("post-grain-slope"),
  limit: { high: Math.atan(most("post-grain-slope")), dimension: "angle", of: "slope" },
  find({ chair, limit }) {
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    return [...chair.posts.values()].flatMap((post) => {
      const slope = grainOf(post)?.slope ?? 0;
      if (slope <= allowed + SAME_ANGLE) return [];
      const knees = [...post.design.knees].sort((a, b) => Math.abs(b.value.slope) - Math.abs(a.value.slope));
      const place = placeOf(chair.design, [...knees, post.design.rake, post.design.splay, post.design]);
      return tell(shortGrain, place, {
        message: sentence("short-grain", {
          Post: named(chair, post.name),
          slope: printSlope(slope),
          allowed: printSlope(allowed),
        }),
        otherwise: sentence("short-grain.otherwise"),
        subject: post.name,
        found: printSlope(slope),
        allowed: sentence("figure.or-less", { figure: printSlope(allowed) }),
        badness: slope - allowed,
      });
    });
  },
};
