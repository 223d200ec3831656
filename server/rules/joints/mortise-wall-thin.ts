import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import type { Chair, Joint } from "../../chair/chair.ts";
import { mayHave } from "../../chair/joints/kinds/index.ts";
import { isCarried } from "../../chair/rails/carried.ts";
import { meetingsWithin } from "../../joinery/inside.ts";
import { setInstead } from "../../joinery/set-instead.ts";
import { longWithWood } from "../../joinery/ways-apart.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import { plain, plainBoth } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrLess, lengthOrMore, SAME_LENGTH, tell, written } from "../machinery/say.ts";
import { bothLong, jointPlace, judgedJoints, sizesOf, tenonOf } from "./joint-places.ts";

/** Mortises nearer than this run into each other, which is another fault, mm. */
const OPEN = 0.05;

export const mortiseWallThin: Rule = {
  code: "mortise-wall-thin",
  severity: "warning",
  title: "Little wood beside a mortise",
  explanation:
    "A thin web of wood between two mortises, or between a mortise and the face beside it, breaks out under the chisel or splits when the joint is loaded. Shorten or set the tenon, move a rail, or mitre tenons that come so near each other: mitred ends are let into one hole and left alone here. `limit mortise-wall-thin to 5mm` changes the figure.",
  source: sourcesOf("wood-between-mortises"),
  limit: { low: least("wood-between-mortises"), dimension: "length" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.low ?? 0;
    const good = judgedJoints(chair, "mortise-wall-thin");
    const known = new Set(good);
    const isSolid = (member: string) => member === chair.seat?.name && chair.seat.plan !== undefined;
    const between = meetingsWithin(chair, allowed).flatMap(({ a, b, wall, overlap, member }) => {
      const mitred = a.facts.mitre && b.facts.mitre;
      // Sockets of a solid seat ask for more, in a rule of their own.
      if (mitred || overlap > 0 || wall < OPEN || wall >= allowed - SAME_LENGTH || isSolid(member)) return [];
      if (!known.has(a) || !known.has(b)) return [];
      const long = longWithWood(chair, a, b, allowed);
      const shorter =
        long === undefined
          ? sentence("make-both-shorter")
          : bothLong(a, b, long, (mm) => lengthOrLess(mm, units));
      const mitre = mayHave(a.kind, "mitre") && mayHave(b.kind, "mitre");
      return tell(mortiseWallThin, jointPlace(chair, a, sizesOf(a).long), {
        message: sentence("mortise-wall-thin.between", {
          ...plainBoth(a.part, b.part),
          host: plain(member),
          wall: length(wall, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence(
          mitre ? "mortise-wall-thin.otherwise-mitre" : "mortise-wall-thin.otherwise-between",
          { shorter },
        ),
        subject: a.name,
        found: length(wall, units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
        badness: allowed - wall,
      });
    });
    const beside = good.flatMap((joint) => {
      const wall = joint.mortiseWall;
      if (!isHeldBeside(chair, joint) || wall < 0 || wall >= allowed - SAME_LENGTH) return [];
      const { set, tenonThick, round } = joint.facts;
      const instead = setInstead(chair, joint, allowed);
      const print = instead?.way === "further in" ? lengthOrMore : lengthOrLess;
      const figure = instead && written(print(instead.distance, units));
      const place = jointPlace(chair, joint, set?.value.from === "outside" ? set : (tenonThick ?? round));
      return tell(mortiseWallThin, place, {
        message: sentence("mortise-wall-thin.beside", {
          tenon: tenonOf(joint),
          wall: length(wall, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: sentence("mortise-wall-thin.otherwise"),
        subject: joint.name,
        found: length(wall, units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
        badness: allowed - wall,
        ...(figure && set?.value.from === "outside"
          ? {
              fixes: [
                {
                  title: sentence("fix.set-from-outside", { figure }),
                  edits: [{ start: place.start, end: place.end, text: figure }],
                },
              ],
            }
          : {}),
      });
    });
    const within = good.flatMap((joint) => {
      const gap = gapWithin(joint);
      if (gap >= allowed - SAME_LENGTH) return [];
      const { dowels, twin } = joint.facts;
      return tell(mortiseWallThin, jointPlace(chair, joint, dowels ?? twin), {
        message: sentence(dowels ? "mortise-wall-thin.dowels" : "mortise-wall-thin.twins", {
          part: plain(joint.part),
          host: plain(joint.entered.name),
          wall: length(gap, units),
          least: lengthOrMore(allowed, units),
        }),
        otherwise: dowels
          ? sentence("mortise-wall-thin.otherwise-dowels")
          : sentence("mortise-wall-thin.otherwise-twins"),
        subject: joint.name,
        found: length(gap, units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(allowed, units) }),
        badness: allowed - gap,
      });
    });
    return [...between, ...beside, ...within].map((each) => ({ ...each, message: capital(each.message) }));
  },
};

/** Posts, and crests round the heads of their sticks. */
function isHeldBeside({ posts, rails }: Chair, { entered: { name } }: Joint): boolean {
  const rail = rails.get(name);
  return posts.has(name) || (rail !== undefined && isCarried(rail));
}

/** The least wood between the tenons or dowels of one joint, mm. */
function gapWithin({ sections }: Joint): number {
  const spans = sections.map(({ wide }) => wide).sort((a, b) => a[0] - b[0]);
  return Math.min(...spans.slice(1).map(([low], k) => low - spans[k]![1]));
}
