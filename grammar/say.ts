import type { Edit, Fix, Problem, Severity, Span } from "./problem.ts";
import { sentence } from "./sentences/sentence.ts";

/** Makes a problem of reading; an error unless said otherwise. */
export function say(
  code: string,
  at: Span,
  message: string,
  fixes?: Fix[],
  severity: Severity = "error",
): Problem {
  const problem: Problem = { code, severity, message, start: at.start, end: at.end };
  if (fixes && fixes.length > 0) problem.fixes = fixes;
  return problem;
}

/** A fix that puts other text in one place. */
export function replaceFix(at: Span, text: string, certain = false): Fix {
  return fix(sentence("fix.write", { text: text.trim() }), [{ start: at.start, end: at.end, text }], certain);
}

export function fix(title: string, edits: Edit[], certain = false): Fix {
  return certain ? { title, edits, certain } : { title, edits };
}
