import { sentence } from "../../../grammar/sentences/sentence.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { designOf, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

/** Shares nearer than this are the same. */
const SAME = 1e-6;

export const moisturesApart: Rule = {
  code: "moistures-apart",
  severity: "warning",
  title: "Parts at different moistures when glued",
  explanation:
    "Two parts that are glued at different moistures move differently as they come to the moisture of the room: a damp tenon shrinks loose, a damp post draws away from the shoulder. Let them lie together until they are alike. (A tenon a little drier than its post is an old way to a joint that tightens: accept it with that reason.) `limit moistures-apart to 4%` changes how far apart they may be.",
  source: sourcesOf("most-moisture-apart"),
  limit: { high: most("most-moisture-apart"), dimension: "share" },
  late: "only",
  find({ chair, limit }) {
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    const percent = (share: number) => `${Number((share * 100).toFixed(1))} %`;
    return [...chair.joints.values()].flatMap((joint) => {
      const part = chair.members.get(joint.part);
      const host = chair.members.get(joint.entered.name);
      // Moisture that nobody gave is taken to be the middle of the climate, which is no reason to say anything.
      if (part?.timber?.moisture === undefined || host?.timber?.moisture === undefined) return [];
      if (joint.facts.glue?.value === "none") return [];
      const [one, other] = [part.timber.moisture / 100, host.timber.moisture / 100];
      const apart = Math.abs(one - other);
      if (apart <= allowed + SAME) return [];
      const own = designOf(chair, joint.part);
      const theirs = designOf(chair, joint.entered.name);
      return tell(
        moisturesApart,
        placeOf(chair.design, [own?.timber, theirs?.timber, chair.design.timber, own]),
        {
          message: sentence("moistures-apart", {
            Part: named(chair, joint.part),
            one: percent(one),
            host: plain(joint.entered.name),
            other: percent(other),
            apart: percent(apart),
            most: percent(allowed),
          }),
          otherwise: sentence("moistures-apart.otherwise"),
          subject: joint.name,
          found: percent(apart),
          allowed: sentence("figure.or-less", { figure: percent(allowed) }),
          badness: apart - allowed,
        },
      );
    });
  },
};
