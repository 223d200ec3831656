import { beyondAssumed } from "../../floor/beyond.ts";
import type { Rule } from "../machinery/rule.ts";
import { tellTipping, tippingCaution, tippingLimit } from "./tipping.ts";

export const tipsUnderChild: Rule = {
  code: "tips-under-child",
  severity: "warning",
  title: "Tips over under a child",
  explanation: `Children kneel on a seat and lean over its back. The margin is what holds the chair down over what lifts it, and it goes over at 1; it is told once the timber is known. What helps is feet further back (a kick), a lower back, or one that leans less. \`stability child 6\` says how old the child is, \`limit tips-under-child to 1.2\` asks for more. ${tippingCaution}`,
  source: `No standard asks for it. ${beyondAssumed.child} Weights of children: CDC 2000 growth charts, boys, worked from its tables.`,
  limit: tippingLimit,
  asksForMissing: true,
  find: ({ chair, limit }) => tellTipping(tipsUnderChild, chair, "child", limit.low),
};
