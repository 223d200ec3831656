import { beyondAssumed } from "../../floor/beyond.ts";
import type { Rule } from "../machinery/rule.ts";
import { tellTipping, tippingCaution, tippingLimit } from "./tipping.ts";

export const tipsWhenLeantBack: Rule = {
  code: "tips-when-leant-back",
  severity: "warning",
  title: "Tips over when leant back",
  explanation: `People rock on the back legs, whatever they are told. The margin is how far chair and sitter together can be tilted before they go over, against how far people tilt; at 1 they are over. It is told once the timber is known. What helps is feet further back (a kick). \`limit tips-when-leant-back to 1.5\` asks for more. ${tippingCaution}`,
  source: `No standard asks for it. ${beyondAssumed.leaning}`,
  limit: tippingLimit,
  asksForMissing: true,
  find: ({ chair, limit }) => tellTipping(tipsWhenLeantBack, chair, "leaning", limit.low),
};
