/**
 * Findings that are worked out late, carried over from an earlier version of a text until they are worked out anew: so that they do not
 * come and go with every keystroke.
 */
import type { Problem } from "../../grammar/problem.ts";
import { isLateFinding } from "../rules/late-findings.ts";
import type { Study } from "../study.ts";

/** A study with the late findings of an earlier one whose text still stands, moved to where it stands now. */
export function withCarried(now: Study, earlier: Study | undefined): Study {
  if (now.late || !earlier) return now;
  // While the text has errors nobody asks how strong the chair is.
  if (now.problems.some(({ severity }) => severity === "error")) return now;
  const before = earlier.problems.filter(isLateFinding);
  if (before.length === 0) return now;
  const head = alikeFrom(earlier.text, now.text, (text, k) => text.charCodeAt(k));
  const tail = Math.min(
    alikeFrom(earlier.text, now.text, (text, k) => text.charCodeAt(text.length - 1 - k)),
    Math.min(earlier.text.length, now.text.length) - head,
  );
  const by = now.text.length - earlier.text.length;
  const carried = before.flatMap((problem): Problem[] => {
    const { code, severity, message, start, end, subject, found, allowed } = problem;
    const moved = start >= earlier.text.length - tail ? by : end <= head ? 0 : undefined;
    if (moved === undefined) return [];
    // What would mend it stands elsewhere now.
    return [
      {
        code,
        severity,
        message,
        start: start + moved,
        end: end + moved,
        mends: [],
        ...(subject !== undefined && { subject }),
        ...(found !== undefined && { found }),
        ...(allowed !== undefined && { allowed }),
      },
    ];
  });
  return {
    ...now,
    problems: [...now.problems, ...carried].sort((a, b) => a.start - b.start || a.end - b.end),
  };
}

/** How many characters two texts have alike from one end. */
function alikeFrom(a: string, b: string, at: (text: string, k: number) => number): number {
  const most = Math.min(a.length, b.length);
  let k = 0;
  while (k < most && at(a, k) === at(b, k)) k++;
  return k;
}
