import { sentence } from "../../../grammar/sentences/sentence.ts";
import { isOnFloor } from "../../chair/posts/on-floor.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { listed, tell } from "../machinery/say.ts";
import { type Tie, tiesOf } from "./ties.ts";

export const postTiedOneWay: Rule = {
  code: "post-tied-one-way",
  severity: "warning",
  title: "Post tied in one direction only",
  explanation:
    "A post stands firm when members hold it in two directions, such as a front rail and a side rail. Held in one only, it swings about its joints in the other as soon as someone leans; held by nothing, it falls. Add a rail or stretcher the other way. `limit post-tied-one-way to 20deg` says how far apart two directions must be.",
  source: sourcesOf("tied-apart"),
  limit: { low: least("tied-apart"), dimension: "angle" },
  asksForMissing: true,
  find({ chair, limit }) {
    const ties = tiesOf(chair);
    return [...chair.posts.values()].flatMap((post) => {
      // A solid seat holds the leg that is let into it every way.
      if (!isOnFloor(post.design) || post.design.intoSeat) return [];
      const holding = ties.get(post.name) ?? [];
      const apart = widestApart(holding);
      if (apart >= (limit.low ?? 0)) return [];
      const names = [...new Set(holding.map(({ rail }) => plain(rail.name)))];
      const name = named(chair, post.name);
      const message =
        names.length === 0
          ? sentence("post-tied-one-way.none", { Post: name })
          : sentence("post-tied-one-way", { Post: name, way: wayOf(holding), rails: listed(names) });
      return tell(postTiedOneWay, placeOf(chair.design, [post.design]), {
        message,
        otherwise:
          names.length === 0
            ? sentence("post-tied-one-way.otherwise-none")
            : sentence("post-tied-one-way.otherwise", { way: otherWay(holding) }),
        subject: post.name,
        found: names.length === 0 ? sentence("found.no-direction") : sentence("found.one-direction"),
        allowed: sentence("found.two-directions"),
        badness: (limit.low ?? 0) - apart,
      });
    });
  },
};

/** The widest angle between any two members seen from above, up to a right angle. */
function widestApart(ties: readonly Tie[]): number {
  let widest = 0;
  for (const [k, a] of ties.entries()) {
    for (const b of ties.slice(k + 1)) {
      const cross = Math.abs(a.run[0] * b.run[1] - a.run[1] * b.run[0]);
      const sine = cross / (Math.hypot(a.run[0], a.run[1]) * Math.hypot(b.run[0], b.run[1]));
      widest = Math.max(widest, Math.asin(Math.min(1, sine || 0)));
    }
  }
  return widest;
}

const goesAcross = (ties: readonly Tie[]): boolean =>
  ties.every(({ run }) => Math.abs(run[0]) > Math.abs(run[1]));
const wayOf = (ties: readonly Tie[]): string =>
  sentence(goesAcross(ties) ? "way.across" : "way.front-to-back");
const otherWay = (ties: readonly Tie[]): string =>
  sentence(goesAcross(ties) ? "way.front-to-back" : "way.across");
