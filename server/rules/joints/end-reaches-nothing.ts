import { sentence } from "../../../grammar/sentences/sentence.ts";
import { jointName } from "../../design/identity.ts";
import { faultsOf } from "../machinery/faults.ts";
import { plain } from "../machinery/names.ts";
import { named } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";

export const endReachesNothing: Rule = {
  code: "end-reaches-nothing",
  severity: "error",
  title: "Rail end that reaches nothing",
  explanation:
    "The rail is said to enter a post or rail that is not there at its height or station: it would end in the air. Make the post taller, or set the rail lower or nearer.",
  source: "It follows from the shape.",
  find({ chair }) {
    const { units } = chair.design;
    return faultsOf(chair, "end-reaches-nothing").map(({ fault, place }) => {
      const gap = fault.gap === undefined ? undefined : length(fault.gap, units);
      const values = { Part: named(chair, fault.part), host: plain(fault.towards) };
      return tell(endReachesNothing, place, {
        message:
          gap === undefined
            ? sentence("end-reaches-nothing", values)
            : sentence("end-reaches-nothing.gap", { ...values, gap }),
        subject: jointName(fault.part, fault.towards),
        ...(gap === undefined ? {} : { found: sentence("found.short", { gap }), allowed: "touching" }),
        badness: fault.gap ?? 0,
      });
    });
  },
};
