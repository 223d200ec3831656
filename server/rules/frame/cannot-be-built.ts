import { tellings } from "../joints/tellings.ts";
import { faultsOf } from "../machinery/faults.ts";
import { named, stemOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

export const cannotBeBuilt: Rule = {
  code: "cannot-be-built",
  severity: "error",
  title: "Cannot be built as described",
  explanation:
    "The lines can be read, but no part follows from them: two parts hang on each other, a tenon has no thickness or length, a rail has nowhere to run. The message says what is missing; until then the part, or its joint, is left out of the drawing.",
  source: "It follows from the shape.",
  find({ tree, design, chair }) {
    const broken = [...tree.problems, ...design.problems].some(({ severity }) => severity === "error");
    const refused = faultsOf(chair, "fact-refused").map(({ fault, place }) =>
      tell(cannotBeBuilt, place, {
        message: `${named(chair, fault.part)}: ${tellings[fault.kind].called} has no ${fault.fact}; take that line out of its joint.`,
        subject: fault.part,
      }),
    );
    const unbuilt = faultsOf(chair, "not-buildable").flatMap(({ fault, place }) => {
      // A corner block hangs on two rails, which an error may have left out.
      if (broken && chair.design.blocks.has(stemOf(fault.part))) return [];
      return tell(cannotBeBuilt, place, {
        message: `${fault.part === "" ? "The chair" : named(chair, fault.part)}: ${fault.message}.`,
        subject: fault.part,
      });
    });
    return [...refused, ...unbuilt];
  },
};
