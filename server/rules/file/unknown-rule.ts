import { isOnlyNearest, nearest } from "../../../grammar/nearest.ts";
import type { Span } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import { goesBy, type Rule, type RuleContext } from "../machinery/rule.ts";
import { type Finding, tell } from "../machinery/say.ts";

export const unknownRule: Rule = {
  code: "unknown-rule",
  severity: "error",
  title: "Unknown rule",
  explanation:
    "`limit` and `accept` speak of a rule by its code, as it stands behind every finding. There is none of this name; the nearest is offered.",
  source: "The rule table.",
  find(context) {
    const { limits, accepts } = context.chair.design;
    return [
      ...limits
        .filter((line) => line.file === undefined)
        .flatMap((line) => judged(context, line.rule, line.ruleAt)),
      ...accepts.flatMap((line) => judged(context, line.rule, line.ruleAt)),
    ];
  },
};

function judged({ rules }: RuleContext, code: string, at: Span): Finding[] {
  if (rules.some((rule) => goesBy(rule, code))) return [];
  const codes = rules.map((rule) => rule.code);
  const near = nearest(code, codes);
  const place = { start: at.start, end: at.end, own: true };
  return [
    tell(unknownRule, place, {
      message: near
        ? sentence("unknown-rule.near", { name: code, near })
        : sentence("unknown-rule", { name: code }),
      subject: code,
      ...(near
        ? {
            fixes: [
              {
                title: sentence("fix.change-to", { text: near }),
                edits: [{ ...at, text: near }],
                certain: isOnlyNearest(code, near, codes),
              },
            ],
          }
        : {}),
    }),
  ];
}
