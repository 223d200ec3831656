import type { Fault } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { stemOf } from "../../design/identity.ts";
import { printAngle } from "../../design/units.ts";
import { tellings } from "../joints/tellings.ts";
import { faultsOf } from "../machinery/faults.ts";
import { plain } from "../machinery/names.ts";
import { named } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, tell } from "../machinery/say.ts";

export const cannotBeBuilt: Rule = {
  code: "cannot-be-built",
  severity: "error",
  title: "Cannot be built as described",
  explanation:
    "The lines can be read, but no part follows from them: two parts depend on each other, a tenon has no thickness or length, a rail has nowhere to run. The message says what is missing; until then the part, or its joint, is left out of the drawing.",
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
      // A corner block depends on two rails, which an error may have left out.
      if (broken && chair.design.blocks.has(stemOf(fault.part))) return [];
      return tell(cannotBeBuilt, place, {
        message: `${fault.part === "" ? "The chair" : named(chair, fault.part)}: ${fault.message}.`,
        subject: fault.part,
      });
    });
    const apart = faultsOf(chair, "not-halved").map(({ fault, place }) =>
      tell(cannotBeBuilt, place, {
        message: `${named(chair, fault.part)} cannot be halved over ${plain(fault.over)}: ${whyNot(fault, design.units)}.`,
        subject: fault.part,
      }),
    );
    return [...refused, ...apart, ...unbuilt];
  },
};

type NotHalved = Extract<Fault, { is: "not-halved" }>;

/** Why two rails cannot be halved, the figure found and the one allowed, and what would mend it. */
function whyNot(fault: NotHalved, unit: LengthUnit): string {
  switch (fault.why) {
    case "said-twice":
      return "that one is halved over it already; say it in one of the two";
    case "side-by-side":
      return `they cross at ${printAngle(fault.found)}, and at least ${printAngle(fault.allowed)} is needed`;
    case "does-not-reach":
      return `they do not cross: where they would, one of them ended ${length(fault.found, unit)} before`;
    case "misses":
      return `their centre lines pass ${length(fault.found, unit)} apart, and half a thickness, ${length(fault.allowed, unit)}, is allowed; bring their heights ${lengthOrMore(fault.found - fault.allowed, unit)} nearer together`;
    case "no-shared-height":
      return `one passes ${length(fault.found, unit)} clear above the other; bring their heights nearer together`;
    default:
      return fault satisfies never;
  }
}
