import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital, orList } from "../../../grammar/wording.ts";
import { leftName } from "../../design/identity.ts";
import { allowance, sourceOf } from "../../joinery/figures.ts";
import { lockedInSteps } from "../../joinery/order.ts";
import { type WayOut, waysOut } from "../../joinery/unlock.ts";
import { jointPlace } from "../joints/joint-places.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { degrees, length, lengthOrLess, lengthOrMore, listed, tell } from "../machinery/say.ts";

/** Lines further apart than this are not brought together by cutting tenons another way. */
const FAR = Math.PI / 6;

export const cannotBeAssembled: Rule = {
  code: "cannot-be-assembled",
  severity: "warning",
  title: "Cannot be put together",
  explanation: `Tenons that do not point the same way lock each other out. Frames are tried from every side, and a joint counts as free when over its length it strays from the line of closing by no more than its \`fit\`, ${allowance("tenon-yields")} mm that the wood gives, and the spring of its rail under a hand. The finding names the joints in the way, by how many degrees and how far over the tenon's length, and what would free them, each tried on this chair. It is calculated for the tenon's own length; try the frames dry before any glue.`,
  source: sourceOf("tenon-yields", "hand-force", "stiffness", "springs-at-most", "loosest-fit"),
  *find({ chair }) {
    const { units } = chair.design;
    const all = yield* lockedInSteps(chair);
    return all.flatMap((locked) => {
      const [worst] = [...locked.joints].sort((a, b) => b.strays - b.slack - (a.strays - a.slack));
      const joint = worst && chair.joints.get(worst.name);
      if (!worst || !joint) return [];
      const ways = waysOut(chair, locked).map((way) => wayIn(way, units));
      const names = [...new Set(locked.joints.map(({ name }) => plain(name)))];
      return tell(cannotBeAssembled, jointPlace(chair, joint, joint.facts.line, joint.facts.tenonLong), {
        message: sentence("cannot-be-assembled", {
          joints: listed(names),
          strays: length(worst.strays, units),
          angle: degrees(worst.angle),
          slack: lengthOrLess(worst.slack, units),
        }),
        otherwise: ways.length
          ? sentence(names.length > 1 ? "cannot-be-assembled.ways" : "cannot-be-assembled.one-way", {
              Ways: capital(orList(ways)),
            })
          : sentence(worst.angle > FAR ? "cannot-be-assembled.left-out" : "cannot-be-assembled.directions"),
        // Which of two twins locks is a matter of rounding.
        subject: chair.joints.has(leftName(worst.name)) ? leftName(worst.name) : worst.name,
        found: length(worst.strays, units),
        allowed: sentence("figure.or-less", { figure: lengthOrLess(worst.slack, units) }),
        badness: worst.strays - worst.slack,
      });
    });
  },
};

function wayIn(way: WayOut, units: Parameters<typeof length>[1]): string {
  if (way.square) return sentence("way-in.square", { joints: listed([...new Set(way.joints.map(plain))]) });
  if (way.long !== undefined) return sentence("way-in.long", { long: lengthOrLess(way.long, units) });
  return sentence("way-in.fit", { fit: lengthOrMore(way.fit ?? 0, units) });
}
