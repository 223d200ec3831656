import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Fault } from "../../chair/fault.ts";
import type { LengthUnit } from "../../design/design.ts";
import { stemOf } from "../../design/identity.ts";
import { printAngle } from "../../design/units.ts";
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
        message: sentence("cannot-be-built.fact", {
          Part: named(chair, fault.part),
          joint: sentence(`joint-called.${fault.kind}`),
          fact: fault.fact,
        }),
        subject: fault.part,
      }),
    );
    const unbuilt = faultsOf(chair, "not-buildable").flatMap(({ fault, place }) => {
      // A corner block depends on two rails, which an error may have left out.
      if (broken && chair.design.blocks.has(stemOf(fault.part))) return [];
      return tell(cannotBeBuilt, place, {
        message:
          fault.part === ""
            ? sentence("chair-fault", { fault: fault.message })
            : sentence("part-fault", { Part: named(chair, fault.part), fault: fault.message }),
        subject: fault.part,
      });
    });
    const apart = faultsOf(chair, "not-halved").map(({ fault, place }) =>
      tell(cannotBeBuilt, place, {
        message: sentence("cannot-be-built.halving", {
          Part: named(chair, fault.part),
          other: plain(fault.over),
          why: whyNot(fault, design.units),
        }),
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
      return sentence("halving.already");
    case "side-by-side":
      return sentence("halving.angle", { found: printAngle(fault.found), least: printAngle(fault.allowed) });
    case "does-not-reach":
      return sentence("halving.short", { gap: length(fault.found, unit) });
    case "misses":
      return sentence("halving.apart", {
        apart: length(fault.found, unit),
        most: length(fault.allowed, unit),
        by: lengthOrMore(fault.found - fault.allowed, unit),
      });
    case "no-shared-height":
      return sentence("halving.above", { apart: length(fault.found, unit) });
    default:
      return fault satisfies never;
  }
}
