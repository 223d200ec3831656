/**
 * The language's own rows, which reading and the design stage report, as rules of the one table.
 */
import { codes } from "../../../grammar/codes.ts";
import { designCodes } from "../../design/codes.ts";
import type { Rule } from "../machinery/rule.ts";

const SOURCE = "The language.";

export const languageRules: readonly Rule[] = [...codes, ...designCodes].map((row) => ({
  code: row.code,
  severity: row.severity,
  title: row.title,
  // Read when asked for: a bundle keeps explanations in a file of their own.
  get explanation() {
    return row.explanation;
  },
  source: SOURCE,
}));

const languageCodes = new Set(languageRules.map(({ code }) => code));

/** Whether a finding is about the text itself, found before any chair was built. */
export const isOfReading = ({ code }: { code: string }): boolean => languageCodes.has(code);
