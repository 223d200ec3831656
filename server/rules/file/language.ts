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

const languageCodes = new Set(languageRules.map(({ code }) => code));

/** Whether a finding is about the text itself, found before any chair was built. */
export const isOfReading = ({ code }: { code: string }): boolean => languageCodes.has(code);
