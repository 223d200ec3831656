import { sentence } from "../../../grammar/sentences/sentence.ts";
import { capital } from "../../../grammar/wording.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Failure } from "../../chair/fault.ts";
import type { Rule } from "../machinery/rule.ts";
import { type Finding, listed, tell } from "../machinery/say.ts";

export const internalError: Rule = {
  code: "internal-error",
  severity: "information",
  title: "Internal error",
  explanation:
    "A rule, or the working out of a value, failed on this file. The mistake is in Seatwright, not in the chair; please report it together with the file. Everything else was judged as usual. What the rule looks for may still be there: judge it yourself. While a rule fails, an `accept` of it is left alone.",
  source: "The program itself.",
};

/** One finding, on the chair's title, that names the rules and the values that failed. */
export function toldFailures(chair: Chair, failures: readonly Failure[]): Finding[] {
  const rules = failures.map(({ what }) => what);
  const values = chair.faults.flatMap((fault) => (fault.is === "failed" ? [fault.what] : []));
  const said: string[] = [];
  if (rules.length > 0)
    said.push(
      sentence(rules.length > 1 ? "internal-error.rules" : "internal-error.rule", { rules: listed(rules) }),
    );
  if (values.length > 0)
    said.push(
      sentence(values.length > 1 ? "internal-error.values" : "internal-error.value", {
        Values: capital(listed(values)),
      }),
    );
  if (said.length === 0) return [];
  const place = { ...chair.design.titleAt, own: false };
  return [tell(internalError, place, { message: said.join(" "), subject: "" })];
}
