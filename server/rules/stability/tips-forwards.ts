import type { Rule } from "../machinery/rule.ts";
import { tellTipping, tippingCaution, tippingLimit, tippingSource } from "./tipping.ts";

export const tipsForwards: Rule = {
  code: "tips-forwards",
  severity: "warning",
  title: "Tips over forwards",
  explanation: `Somebody who sits down on the very edge must not take the chair over: the standard loads the seat near its front edge. What helps is front feet further forward, or a seat that overhangs them less. The margin is what holds the chair down over what lifts it; it is told once the timber is known. \`limit tips-forwards to 1.2\` asks for more. ${tippingCaution}`,
  source: tippingSource,
  limit: tippingLimit,
  asksForMissing: true,
  find: ({ chair, limit }) => tellTipping(tipsForwards, chair, "front", limit.low),
};
