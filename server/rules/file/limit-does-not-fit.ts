import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Bound, Dimension } from "../../design/design.ts";
import { appliedTo } from "../machinery/limits.ts";
import { goesBy, type Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

export const limitDoesNotFit: Rule = {
  code: "limit-does-not-fit",
  severity: "error",
  title: "Limit that the rule cannot take",
  explanation:
    "A `limit` line changes a rule's own figure, so it must be of the same kind: an angle for a lean, a length for what is measured in length, a share for what is measured against a rail or post; and of the side that the rule has, a most or a least. Some rules have no figure at all.",
  source: "The rule table.",
  find({ chair, rules }) {
    return chair.design.limits.flatMap((line) => {
      const rule = rules.find((each) => goesBy(each, line.rule));
      if (!rule || !line.bound || line.file !== undefined || appliedTo(rule, line)) return [];
      const takes = [rule.limit, rule.also].flatMap((figure) => (figure ? [kindOf(figure)] : []));
      const whole = takes.length === 0;
      const place = whole ? line.ruleAt : line.bound.at;
      return tell(
        limitDoesNotFit,
        { start: place.start, end: place.end, own: true },
        {
          message: whole
            ? sentence("limit-does-not-fit.no-figure", { rule: rule.code, code: rule.code })
            : sentence("limit-does-not-fit", {
                rule: rule.code,
                takes: takes.reduce((one, other) => sentence("limit-takes.either", { one, other })),
              }),
          subject: rule.code,
        },
      );
    });
  },
};

const kinds = ["angle", "length", "share", "volume", "number"] as const;

function kindOf(figure: Bound & { dimension: Dimension }): string {
  const kind = kinds.find((each) => each === figure.dimension) ?? "other";
  const what = sentence(`limit-takes.${kind}`);
  if (figure.low !== undefined && figure.high !== undefined) return what;
  return sentence(figure.low === undefined ? "limit-takes.most" : "limit-takes.least", { what });
}
