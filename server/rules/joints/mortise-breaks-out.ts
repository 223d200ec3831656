import { sentence } from "../../../grammar/sentences/sentence.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";

export const mortiseBreaksOut: Rule = {
  code: "mortise-breaks-out",
  severity: "error",
  title: "Mortise breaks out at the side",
  explanation:
    "The mortise lies partly outside the post or rail it is cut in, beside a face that runs along it, so that there is no wall there to hold the tenon. Set the tenon further in with `set`, make it thinner, move the rail on the post with `face`, or make the post thicker. In turned stuff it is measured where the mortise comes nearest the axis.",
  source: "It follows from the shape.",
  find({ chair }) {
    const { units } = chair.design;
    return judgedJoints(chair, "mortise-breaks-out").flatMap((joint) => {
      // A separate tongue has a mortise in the part's own end too.
      const own = joint.socketWall !== undefined && joint.socketWall < joint.mortiseWall;
      const wall = own ? joint.socketWall! : joint.mortiseWall;
      if (wall >= -SAME_LENGTH) return [];
      const out = length(-wall, units);
      const { facts } = joint;
      const place = jointPlace(
        chair,
        joint,
        facts.set?.value.from === "outside" ? facts.set : sizesOf(joint).thick,
      );
      return tell(mortiseBreaksOut, place, {
        message: own
          ? sentence("mortise-breaks-out.own", { tenon: tenonOf(joint), part: plain(joint.part), out })
          : sentence("mortise-breaks-out", { tenon: tenonOf(joint), host: plain(joint.entered.name), out }),
        otherwise: sentence("mortise-breaks-out.otherwise"),
        subject: joint.name,
        found: sentence("found.outside", { out }),
        allowed: sentence("found.within-wood"),
        badness: -wall,
      });
    });
  },
};
