import { acceptAcceptsNothing } from "./accept-accepts-nothing.ts";
import { acceptWithoutReason } from "./accept-without-reason.ts";
import { renamedRule } from "./renamed-rule.ts";
import { unknownRule } from "./unknown-rule.ts";

/**
 * Codes of what is found in the lines that speak of rules themselves. The line is what has to change: it is not accepted in its turn,
 * and no figure of the chair is moved until it accepts something.
 */
export const aboutRules: ReadonlySet<string> = new Set(
  [acceptAcceptsNothing, acceptWithoutReason, renamedRule, unknownRule].map(({ code }) => code),
);
