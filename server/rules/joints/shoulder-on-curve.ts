import { sentence } from "../../../grammar/sentences/sentence.ts";
import { jointName } from "../../design/identity.ts";
import { faultsOf } from "../machinery/faults.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
import { clearOf } from "./clear-of.ts";

export const shoulderOnCurve: Rule = {
  code: "shoulder-on-curve",
  severity: "warning",
  title: "Shoulder or mortise on a curve",
  explanation:
    "Where a post is a fair curve its face is not flat, so a straight shoulder shows a gap there and has to be scribed and carved by hand; a mortise there cannot be gauged from the face, and its walls are as deep as the curve makes them. Set the rail clear of the curve, or move the curve: `over` says how long it is.",
  source: "common practice.",
  find({ chair }) {
    const { units } = chair.design;
    return faultsOf(chair, "shoulder-on-curve").map(({ fault, place }) => {
      const post = plain(fault.towards);
      const subject = jointName(fault.part, fault.towards);
      const heights = chair.joints.get(subject)?.tenon.flatMap(({ points }) => points.map((p) => p[2])) ?? [];
      const mortise = Math.min(...heights) < fault.to && Math.max(...heights) > fault.from;
      return tell(shoulderOnCurve, place, {
        message: sentence(mortise ? "shoulder-on-curve.mortise" : "shoulder-on-curve", {
          part: plain(fault.part),
          post,
          low: length(fault.from, units),
          high: length(fault.to, units),
        }),
        otherwise: sentence("shoulder-on-curve.otherwise", { ways: clearOf(chair, fault, fault) }),
        subject,
        allowed: sentence("found.straight"),
      });
    });
  },
};
