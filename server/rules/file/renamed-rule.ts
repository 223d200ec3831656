import type { Span } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Rule, RuleContext } from "../machinery/rule.ts";
import { type Finding, tell } from "../machinery/say.ts";

export const renamedRule: Rule = {
  code: "renamed-rule",
  severity: "information",
  title: "Rule that has a new code",
  explanation:
    "The line speaks of a rule by a code that it had in an earlier version. It still works, in `accept`, `limit`, settings and `explain`; the code of today is offered.",
  source: "The rule table.",
  find(context) {
    const { limits, accepts } = context.chair.design;
    return [...limits.filter((line) => line.file === undefined), ...accepts].flatMap((line) =>
      renamed(context, line.rule, line.ruleAt),
    );
  },
};

function renamed({ rules }: RuleContext, code: string, at: Span): Finding[] {
  const rule = rules.find(({ was }) => was?.includes(code));
  if (!rule) return [];
  const place = { start: at.start, end: at.end, own: true };
  return [
    tell(renamedRule, place, {
      message: sentence("renamed-rule", { old: code, rule: rule.code }),
      subject: code,
      fixes: [
        {
          title: sentence("fix.change-to", { text: rule.code }),
          edits: [{ start: at.start, end: at.end, text: rule.code }],
          certain: true,
        },
      ],
    }),
  ];
}
