import type { Rule } from "../machinery/rule.ts";
import { tellTipping, tippingCaution, tippingLimit, tippingSource } from "./tipping.ts";

export const tipsSideways: Rule = {
  code: "tips-sideways",
  severity: "warning",
  title: "Tips over sideways",
  explanation: `Somebody who sits down near the side, or leans on an arm, must not take the chair over: the standard loads both. What helps is feet further out (more splay), or a seat or arms that overhang them less. The margin is what holds the chair down over what lifts it; it is told once the timber is known. \`limit tips-sideways to 1.2\` asks for more. ${tippingCaution}`,
  source: tippingSource,
  limit: tippingLimit,
  asksForMissing: true,
  find: ({ chair, limit }) => tellTipping(tipsSideways, chair, "side", limit.low),
};
