/**
 * The language's own rows, which reading and the design stage report, as rules of the one table.
 */
import { codes } from "../../../grammar/codes.ts";
import { designCodes } from "../../design/codes.ts";
import type { Rule } from "../machinery/rule.ts";

const SOURCE = "The language.";

export const languageRules: readonly Rule[] = [...codes, ...designCodes].map(
  ({ code, severity, title, explanation }) => ({
    code,
    severity,
    title,
    explanation,
    source: SOURCE,
  }),
);
