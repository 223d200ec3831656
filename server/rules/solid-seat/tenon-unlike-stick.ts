import { sentence } from "../../../grammar/sentences/sentence.ts";
import { isRail } from "../../chair/member.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import type { Socket } from "../../joinery/sockets.ts";
import { socketsIn } from "../../joinery/sockets.ts";
import { figure, sourcesOf } from "../machinery/figures.ts";
import { plain } from "../machinery/names.ts";
import { candidateOf, designOf, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { isOwn } from "./seated.ts";

const { low = 0, high = 1 } = figure("tenon-of-leg");

export const tenonUnlikeStick: Rule = {
  code: "tenon-unlike-stick",
  severity: "warning",
  title: "Tenon too stout or too thin for its leg or stick",
  explanation:
    "What stands in a solid seat breaks at the socket's mouth. A tenon much thinner than the leg or the stick is the weak place of a stout part; one as thick as the whole stick or thicker than the leg's stoutest leaves nothing to shape. Its diameter at the mouth is compared with the part's greatest. `limit tenon-unlike-stick from 0.4 to 1` changes the shares.",
  source: sourcesOf("tenon-of-leg"),
  limit: { low, high, dimension: "share" },
  find({ chair, limit }) {
    const { units } = chair.design;
    return socketsIn(chair).flatMap((socket) => {
      const { joint, part } = socket;
      const whole = stoutestOf(socket);
      if (!isOwn(part) || whole === undefined || joint.shape !== "round") return [];
      const [least, most] = [(limit.low ?? low) * whole, (limit.high ?? high) * whole];
      const thin = joint.thick < least - SAME_LENGTH;
      if (!thin && joint.thick <= most + SAME_LENGTH) return [];
      const own = designOf(chair, part.name);
      const place = placeOf(chair.design, [joint.facts.round, own && candidateOf(own, joint.at), own]);
      const allowed = thin ? lengthOrMore(least, units) : lengthOrLess(most, units);
      return tell(tenonUnlikeStick, place, {
        message: sentence(thin ? "tenon-unlike-stick.thin" : "tenon-unlike-stick.stout", {
          part: plain(part.name),
          thick: length(joint.thick, units),
          whole: length(whole, units),
          allowed,
        }),
        otherwise: sentence("tenon-unlike-stick.otherwise"),
        subject: joint.name,
        found: length(joint.thick, units),
        allowed: `${allowed} or ${thin ? "more" : "less"}`,
        badness: thin ? least - joint.thick : joint.thick - most,
      });
    });
  },
};

/** The greatest diameter of a turned part, mm; undefined of squared stuff. */
function stoutestOf({ part }: Socket): number | undefined {
  if (part.is === "post") {
    const radii = part.pieces.flatMap((piece) => piece.radii ?? []);
    return radii.length > 0 ? 2 * Math.max(...radii) : undefined;
  }
  if (part.is === "bow") return part.round;
  if (!isRail(part) || part.round === undefined) return undefined;
  const shape = shapeOf(part);
  return Math.max(...[0, ...shape.bends, part.length].map((x) => shape.outside(x) - shape.inside(x)));
}
