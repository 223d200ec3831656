import { sentence } from "../../../grammar/sentences/sentence.ts";
import { goesBy, type Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

export const acceptWithoutReason: Rule = {
  code: "accept-without-reason",
  severity: "error",
  title: "Accept without a reason",
  explanation:
    "What is accepted stays in the file and in the reports with its reason, so that whoever builds the chair knows why. `because` must say something.",
  source: "The language.",
  find({ chair, rules }) {
    return chair.design.accepts.flatMap((line) => {
      if (line.because?.value.trim() || !rules.some((rule) => goesBy(rule, line.rule))) return [];
      // One whose line breaks off is reported by reading.
      const at = line.because?.at;
      if (!at) return [];
      return tell(
        acceptWithoutReason,
        { start: at.start, end: at.end, own: true },
        {
          message: sentence("accept-without-reason", {}),
          subject: line.on?.value ?? line.rule,
        },
      );
    });
  },
};
