import { nearest } from "../../../grammar/nearest.ts";
import type { Span } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import type { AcceptDesign } from "../../design/design.ts";
import { partsNamed, SEAT, stemOf } from "../../design/identity.ts";
import { goesBy, type Rule } from "../machinery/rule.ts";
import { type Finding, tell } from "../machinery/say.ts";

export const acceptAcceptsNothing: Rule = {
  code: "accept-accepts-nothing",
  severity: "warning",
  title: "Accept that accepts nothing",
  explanation:
    "The rule finds nothing on what this line names, so the line and its reason mislead: the fault was mended, or the name is not the one at fault. Take the line out. While the text has errors, nothing is said of it.",
  source: "The language.",
};

/** Said of each line that set nothing aside. */
export function idleAccepts(
  chair: Chair,
  text: string,
  idle: readonly AcceptDesign[],
  rules: readonly Rule[],
): Finding[] {
  return idle.flatMap((line) => {
    const known = rules.some((rule) => goesBy(rule, line.rule));
    if (!known || !line.because?.value.trim()) return [];
    const at = line.on?.at ?? line.ruleAt;
    const missing = partsNamed(line.on?.value ?? "").find(
      (name) => name !== "" && name !== SEAT.stem && !chair.design.names.has(stemOf(name)),
    );
    const near = missing === undefined ? undefined : nearest(missing, chair.design.names.keys());
    return [
      tell(
        acceptAcceptsNothing,
        { start: at.start, end: at.end, own: true },
        {
          message: whyIdle(line, missing, near),
          subject: line.on?.value ?? line.rule,
          fixes: [
            {
              title: sentence("fix.take-line-out"),
              edits: [{ ...wholeLine(text, line.statement), text: "" }],
            },
          ],
        },
      ),
    ];
  });
}

function whyIdle({ rule, on }: AcceptDesign, missing: string | undefined, near: string | undefined): string {
  if (missing !== undefined)
    return near
      ? sentence("accept-accepts-nothing.near", { name: missing, near })
      : sentence("accept-accepts-nothing.name", { name: missing });
  return on
    ? sentence("accept-accepts-nothing.on", { rule, part: on.value })
    : sentence("accept-accepts-nothing", { rule });
}

/** The statement with the line end before or after it, when it stands on lines of its own. */
function wholeLine(text: string, { start, end }: Span): Span {
  const before = text.lastIndexOf("\n", start - 1) + 1;
  const lineEnd = text.indexOf("\n", end);
  const after = lineEnd < 0 ? text.length : lineEnd + 1;
  const alone = text.slice(before, start).trim() === "" && /^\s*$/.test(text.slice(end, after));
  return alone ? { start: before, end: after } : { start, end };
}
