import type { Rule } from "../machinery/rule.ts";
import { tellTipping, tippingCaution, tippingLimit, tippingSource } from "./tipping.ts";

export const tipsBackwards: Rule = {
  code: "tips-backwards",
  severity: "warning",
  title: "Tips over backwards",
  explanation: `A sitter who leans back must not take the chair over: the standard loads the seat some way ahead of the back and pushes the back. What helps is feet further back (a kick), a back that leans less, or a back that meets the seat further forward. The margin is what holds the chair down over what lifts it; it is told once the timber is known. \`limit tips-backwards to 1.2\` asks for more. ${tippingCaution}`,
  source: tippingSource,
  limit: tippingLimit,
  asksForMissing: true,
  find: ({ chair, limit }) => tellTipping(tipsBackwards, chair, "back", limit.low),
};
