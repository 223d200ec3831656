import { capital } from "../../../grammar/wording.ts";
import type { Chair, Failure } from "../../chair/chair.ts";
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
  const sentences = [
    rules.length > 0 &&
      `The ${rules.length > 1 ? "rules" : "rule"} ${listed(rules)} could not judge this file because of an internal error, so what ${rules.length > 1 ? "they look" : "it looks"} for may be there untold.`,
    values.length > 0 &&
      `${listed(values)} could not be worked out because of an internal error, so rules that need ${values.length > 1 ? "them" : "it"} may keep quiet.`,
  ];
  const said = sentences.filter((sentence) => sentence !== false).map(capital);
  if (said.length === 0) return [];
  const place = { ...chair.design.titleAt, own: false };
  return [tell(internalError, place, { message: said.join(" "), subject: "" })];
}
