import type { Problem } from "../../grammar/problem.ts";
import { valueRow } from "../../grammar/vocabulary/values.ts";
import { ruleOf } from "./index.ts";

/** Whether a finding comes of what is worked out after the others: of a rule that asks for that alone, or of a requirement of such a value. */
export const isLateFinding = ({ code, subject = "" }: Pick<Problem, "code" | "subject">): boolean =>
  ruleOf(code)?.late === "only" || (ruleOf(code)?.late === "too" && valueRow(subject)?.late === true);
