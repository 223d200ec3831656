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
      const how = gap === undefined ? "" : `: there are ${gap} between them`;
      return tell(endReachesNothing, place, {
        message: `${named(chair, fault.part)} reaches nothing at its end towards ${plain(fault.towards)}${how}; move it, or make ${plain(fault.towards)} longer${gap === undefined ? "" : " by at least that"}.`,
        subject: jointName(fault.part, fault.towards),
        ...(gap === undefined ? {} : { found: `${gap} short`, allowed: "touching" }),
        badness: fault.gap ?? 0,
      });
    });
  },
};
