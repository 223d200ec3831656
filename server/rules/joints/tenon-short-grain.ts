import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Joint } from "../../chair/chair.ts";
import { railNamed } from "../../chair/member.ts";
import { printSlope } from "../../design/units.ts";
import { dot } from "../../geometry/vec.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { degrees, tell } from "../machinery/say.ts";
import { jointPlace, judgedJoints, tenonOf } from "./joint-places.ts";

/** Slopes nearer than this are on the limit. */
const SAME_SLOPE = 0.001;

export const tenonShortGrain: Rule = {
  code: "tenon-short-grain",
  severity: "warning",
  title: "Short grain in a tenon",
  explanation:
    "The grain of a straight rail runs along it. A tenon cut square to the post on a rail that comes in at an angle has its grain running out at the cheeks, and breaks there: at 1 in 10 it has lost a good part of its strength, beyond 1 in 5 it is not to be trusted and the finding is an error. Cut the tenon in line with the rail and the mortise at the angle instead, or turn the post. `limit tenon-short-grain to 0.12` changes the slope at which it is told. Bowed rails are left alone.",
  source: sourcesOf("grain-slope", "grain-slope-fails"),
  limit: { high: most("grain-slope"), dimension: "number", of: "slope" },
  find({ chair, limit }) {
    const allowed = limit.high ?? 1;
    return judgedJoints(chair, "tenon-short-grain").flatMap((joint) => {
      const angle = runsOut(chair, joint);
      if (angle === undefined || Math.tan(angle) <= allowed + SAME_SLOPE) return [];
      const fails = Math.tan(angle) > most("grain-slope-fails") + SAME_SLOPE;
      const place = jointPlace(chair, joint, joint.facts.line);
      const slope = (rise: number) => printSlope(Math.atan(rise));
      return tell({ code: tenonShortGrain.code, severity: fails ? "error" : "warning" }, place, {
        message: sentence("tenon-short-grain", {
          tenon: tenonOf(joint),
          slope: slope(Math.tan(angle)),
          angle: degrees(angle),
          most: slope(allowed),
        }),
        otherwise: sentence("tenon-short-grain.otherwise"),
        subject: joint.name,
        found: slope(Math.tan(angle)),
        allowed: sentence("figure.or-less", { figure: slope(allowed) }),
        badness: angle,
        ...(joint.facts.line
          ? {
              fixes: [
                {
                  title: sentence("fix.cut-in-line"),
                  edits: [{ start: place.start, end: place.end, text: "in-line" }],
                },
              ],
            }
          : {}),
      });
    });
  },
};

/** The angle between a straight rail's grain and its tenon. */
function runsOut(chair: Chair, joint: Joint): number | undefined {
  const rail = railNamed(chair, joint.part);
  if (!rail || rail.bow || joint.facts.line?.value !== "square") return undefined;
  return Math.acos(Math.min(1, Math.abs(dot(rail.along, joint.direction))));
}
