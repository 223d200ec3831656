import { sentence } from "../../../grammar/sentences/sentence.ts";
import { jointName } from "../../design/identity.ts";
import { printAngle } from "../../design/units.ts";
import { faultsOf } from "../machinery/faults.ts";
import { plain } from "../machinery/names.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";
import { clearOf } from "./clear-of.ts";

export const shoulderOverKnee: Rule = {
  code: "shoulder-over-knee",
  severity: "warning",
  title: "Shoulder over a knee",
  explanation:
    "The face the rail meets changes direction within the shoulder, where the post bends sharply or its taper begins, so that the shoulder can touch only above or below. Set the rail clear of the knee, or move the knee.",
  source: "common practice.",
  find({ chair }) {
    const { units } = chair.design;
    return faultsOf(chair, "shoulder-over-knee").map(({ fault, place }) => {
      const knee = { from: fault.height, to: fault.height };
      return tell(shoulderOverKnee, place, {
        message: sentence("shoulder-over-knee", {
          part: plain(fault.part),
          post: plain(fault.towards),
          height: length(fault.height, units),
          turn: printAngle(fault.turn),
        }),
        otherwise: sentence("shoulder-over-knee.otherwise", { ways: clearOf(chair, fault, knee) }),
        subject: jointName(fault.part, fault.towards),
        found: printAngle(fault.turn),
        allowed: sentence("found.straight"),
        badness: fault.turn,
      });
    });
  },
};
