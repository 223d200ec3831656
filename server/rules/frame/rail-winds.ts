import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import { railNamed } from "../../chair/member.ts";
import { printAngle } from "../../design/units.ts";
import { faultsOf } from "../machinery/faults.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { type Candidate, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE, tell } from "../machinery/say.ts";

export const railWinds: Rule = {
  code: "rail-winds",
  severity: "warning",
  title: "Rail between posts in wind",
  explanation:
    "A rail that stands with its posts leans as they do. When the posts at its two ends lean differently the rail would have to be twisted; it takes the mean and its two joints take up the difference, which only works while that is small. Let it stand plumb, or lean the posts alike. `limit rail-winds to 2deg` changes the angle.",
  source: sourcesOf("wind"),
  limit: { high: most("wind"), dimension: "angle" },
  find({ chair, limit }) {
    return faultsOf(chair, "wind").flatMap(({ fault, place }) => {
      if (fault.difference <= (limit.high ?? 0) + SAME_ANGLE) return [];
      const found = printAngle(fault.difference);
      const allowed = printAngle(limit.high ?? 0);
      const leans = placeOf(chair.design, leansOf(chair, fault.part));
      return tell(
        railWinds,
        { ...place, deciders: [...(place.deciders ?? []), ...(leans.deciders ?? [])] },
        {
          message: sentence("rail-winds", { Rail: named(chair, fault.part), lean: found, most: allowed }),
          otherwise: sentence("rail-winds.otherwise"),
          subject: fault.part,
          found,
          allowed: sentence("figure.or-less", { figure: allowed }),
          badness: fault.difference,
        },
      );
    });
  },
};

/** What leans the posts at a rail's ends. */
function leansOf(chair: Chair, rail: string): Candidate[] {
  const posts = railNamed(chair, rail)?.ends.map(
    ({ entered }) => chair.posts.get(entered?.name ?? "")?.design,
  );
  return (posts ?? []).flatMap((post) =>
    [post?.splay, post?.rake, post].filter((each) => each !== undefined),
  );
}
