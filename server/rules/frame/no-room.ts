import { sentence } from "../../../grammar/sentences/sentence.ts";
import { faultsOf } from "../machinery/faults.ts";
import { named } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

export const noRoom: Rule = {
  code: "no-room",
  severity: "error",
  title: "No room for it",
  explanation:
    "What the line asks for does not fit: slats side by side wider than the space between the posts, an arch deeper than its rail, a curve longer than the straight it joins. The message says what.",
  source: "It follows from the shape.",
  find({ chair }) {
    return faultsOf(chair, "no-room").map(({ fault, place }) =>
      tell(noRoom, place, {
        message: sentence("part-fault", { Part: named(chair, fault.part), fault: fault.message }),
        subject: fault.part,
      }),
    );
  },
};
